package org.ouzelbook.tracker.exchange.cell;

import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.Month;
import java.time.MonthDay;
import java.time.Year;
import java.time.YearMonth;
import java.time.format.TextStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.cell.WrittenDate.Day;
import org.ouzelbook.tracker.exchange.cell.WrittenDate.EitherOrder;
import org.ouzelbook.tracker.exchange.cell.WrittenDate.NoYear;
import org.ouzelbook.tracker.exchange.cell.WrittenDate.Refused;
import org.ouzelbook.tracker.exchange.cell.WrittenDate.Serial;

/**
 * Takes one written date apart.
 *
 * <p>A year that stands first needs four digits. A year of two digits stands last; {@link ShortYear} says which it is.
 */
final class DateParser {
    private static final Pattern VAGUE = Pattern.compile(
            "\\b(early|mid|middle|late|end|about|around|circa|ca|c|before|after|spring|summer|autumn|winter)\\b|[?~]");
    private static final Pattern ORDINAL = Pattern.compile("\\b(\\d{1,2})(st|nd|rd|th)\\b");
    private static final Pattern COMPACT = Pattern.compile("(1[89]|20)\\d{6}");
    private static final Pattern SERIAL = Pattern.compile("[2-6]\\d{4}");
    private static final Pattern NUMBERS = Pattern.compile("(\\d{1,4})([-./ ])\\s*(\\d{1,2})([-./ ])\\s*(\\d{1,4})");
    private static final int EARLIEST_YEAR = 1800;

    private final String written;
    private final String text;
    private Optional<DayOfWeek> weekday = Optional.empty();

    DateParser(String written) {
        this.written = written.strip();
        this.text = Blank.plainSpaces(written)
                .toLowerCase(Locale.ROOT)
                .replace('–', '-')
                .replace('—', '-')
                .replace(",", " ")
                .replaceAll("\\s+", " ")
                .strip();
    }

    WrittenDate read() {
        String rest = ORDINAL.matcher(withoutWeekday()).replaceAll("$1");
        if (COMPACT.matcher(rest).matches()) {
            return day(
                    Integer.parseInt(rest.substring(0, 4)),
                    Integer.parseInt(rest.substring(4, 6)),
                    Integer.parseInt(rest.substring(6)),
                    Optional.empty(),
                    false);
        }
        if (SERIAL.matcher(rest).matches()) {
            return new Serial(Integer.parseInt(rest));
        }
        Matcher numbers = NUMBERS.matcher(rest);
        if (numbers.matches() && numbers.group(2).equals(numbers.group(4))) {
            return ofNumbers(numbers.group(1), Integer.parseInt(numbers.group(3)), numbers.group(5));
        }
        if (rest.chars().anyMatch(Character::isLetter)) {
            Optional<WrittenDate> named = withMonthName(rest);
            if (named.isPresent()) {
                return named.get();
            }
        }
        return new Refused(whyNot(rest));
    }

    private Message whyNot(String rest) {
        if (VAGUE.matcher(rest).find()) {
            return Message.of("import.date.vague");
        }
        long numbers = Pattern.compile("\\d+").matcher(rest).results().count();
        boolean mixedSigns = rest.matches("\\d{1,2}\\s*[-/&+]\\s*\\d{1,2}\\s*[./ ]\\s*\\d{1,2}");
        if (numbers > 3 || mixedSigns || rest.matches(".*\\d\\s*(-|/|&|\\+|to|or|and)\\s*\\d{1,2}\\s+[a-z]{3}.*")) {
            return Message.of("import.date.severalDays");
        }
        if (rest.matches("\\d{1,2}[-./ ]\\d{1,2}[./]?")) {
            return Message.of("import.date.noYear");
        }
        if (rest.matches("\\d{4}") || rest.matches("\\d{1,2}[-./]\\d{4}") || rest.matches("\\d{4}[-./]\\d{1,2}")) {
            return Message.of("import.date.noDay");
        }
        return Message.of("import.date.unknownForm");
    }

    private String withoutWeekday() {
        for (DayOfWeek day : DayOfWeek.values()) {
            String name = day.getDisplayName(TextStyle.FULL, Locale.ENGLISH).toLowerCase(Locale.ROOT);
            Matcher start = Pattern.compile("^(" + name + "|" + name.substring(0, 3) + "|" + name.substring(0, 2)
                            + (day == DayOfWeek.TUESDAY ? "|tues" : "")
                            + (day == DayOfWeek.THURSDAY ? "|thur|thurs" : "") + ")\\b\\.? ?")
                    .matcher(text);
            if (start.find() && start.end() < text.length()) {
                weekday = Optional.of(day);
                return text.substring(start.end());
            }
        }
        return text;
    }

    private WrittenDate ofNumbers(String first, int second, String third) {
        if (first.length() == 4 && third.length() <= 2) {
            return day(Integer.parseInt(first), second, Integer.parseInt(third), Optional.empty(), false);
        }
        if (first.length() > 2 || (third.length() != 2 && third.length() != 4)) {
            return new Refused(Message.of("import.date.unknownForm"));
        }
        boolean shortYear = third.length() == 2;
        Optional<Year> year = shortYear ? ShortYear.of(third) : Optional.of(Year.of(Integer.parseInt(third)));
        if (year.isEmpty()) {
            return new Refused(Message.of("import.date.shortYear", third));
        }
        int one = Integer.parseInt(first);
        int inYear = year.get().getValue();
        if (one > 12 && second > 12) {
            return new Refused(Message.of("import.date.noMonth", one, second));
        }
        if (one > 12 || second > 12) {
            boolean dayFirst = one > 12;
            return day(
                    inYear,
                    dayFirst ? second : one,
                    dayFirst ? one : second,
                    Optional.of(dayFirst ? DateOrder.DAY_FIRST : DateOrder.MONTH_FIRST),
                    shortYear);
        }
        WrittenDate dayFirst = day(inYear, second, one, Optional.empty(), shortYear);
        WrittenDate monthFirst = day(inYear, one, second, Optional.empty(), shortYear);
        if (one == second || !(dayFirst instanceof Day dayOne)) {
            return monthFirst instanceof Day dayTwo && one != second
                    ? showing(dayTwo, DateOrder.MONTH_FIRST)
                    : dayFirst;
        }
        return monthFirst instanceof Day dayTwo
                ? new EitherOrder(dayOne.date(), dayTwo.date(), shortYear)
                : showing(dayOne, DateOrder.DAY_FIRST);
    }

    /** Both numbers may be the month, but the day of the week allows only one order. */
    private static Day showing(Day day, DateOrder order) {
        return new Day(day.date(), Optional.of(order), day.shortYear());
    }

    private Optional<WrittenDate> withMonthName(String rest) {
        List<String> tokens = new ArrayList<>(List.of(rest.split("[-./ ]+", -1)));
        tokens.remove("of");
        List<String> names = tokens.stream()
                .filter(token -> token.chars().anyMatch(Character::isLetter))
                .toList();
        if (names.size() != 1 || tokens.size() > 3 || tokens.size() < 2) {
            return Optional.empty();
        }
        Optional<Month> month = month(names.get(0));
        int place = tokens.indexOf(names.get(0));
        tokens.remove(place);
        if (month.isEmpty() || tokens.stream().anyMatch(token -> !token.matches("\\d{1,4}"))) {
            return Optional.empty();
        }
        return Optional.of(ofName(month.get(), tokens));
    }

    private WrittenDate ofName(Month month, List<String> numbers) {
        String first = numbers.get(0);
        if (numbers.size() == 1) {
            return first.length() <= 2 ? withoutYear(month, first) : new Refused(Message.of("import.date.noDay"));
        }
        String last = numbers.get(1);
        if (first.length() == 4 && last.length() <= 2) {
            return day(Integer.parseInt(first), month.getValue(), Integer.parseInt(last), Optional.empty(), false);
        }
        if (first.length() > 2 || last.length() == 3) {
            return new Refused(Message.of("import.date.unknownForm"));
        }
        boolean shortYear = last.length() <= 2;
        Optional<Year> year = shortYear ? ShortYear.of(last) : Optional.of(Year.of(Integer.parseInt(last)));
        if (year.isEmpty()) {
            return new Refused(Message.of("import.date.shortYear", last));
        }
        return day(year.get().getValue(), month.getValue(), Integer.parseInt(first), Optional.empty(), shortYear);
    }

    private static WrittenDate withoutYear(Month month, String day) {
        int number = Integer.parseInt(day);
        return number >= 1 && number <= month.maxLength()
                ? new NoYear(MonthDay.of(month, number))
                : new Refused(Message.of("import.date.monthTooShort", monthName(month), month.maxLength()));
    }

    /** {@return the month with this English name, or the first three or more letters of it} */
    private static Optional<Month> month(String word) {
        if (word.length() < 3) {
            return Optional.empty();
        }
        for (Month month : Month.values()) {
            if (monthName(month).toLowerCase(Locale.ROOT).startsWith(word)) {
                return Optional.of(month);
            }
        }
        return Optional.empty();
    }

    private static String monthName(Month month) {
        return month.getDisplayName(TextStyle.FULL, Locale.ENGLISH);
    }

    private WrittenDate day(int year, int month, int day, Optional<DateOrder> shows, boolean shortYear) {
        if (year < EARLIEST_YEAR) {
            return new Refused(Message.of("import.date.tooOld", Year.of(year)));
        }
        if (month < 1 || month > 12) {
            return new Refused(Message.of("import.date.noMonth", month, day));
        }
        int length = YearMonth.of(year, month).lengthOfMonth();
        if (day < 1 || day > length) {
            return new Refused(
                    day >= 1 && month == 2 && day == 29
                            ? Message.of("import.date.noLeapYear", Year.of(year))
                            : Message.of("import.date.monthTooShort", monthName(Month.of(month)), length));
        }
        try {
            LocalDate date = LocalDate.of(year, month, day);
            if (weekday.isPresent() && weekday.get() != date.getDayOfWeek()) {
                return new Refused(Message.of(
                        "import.date.otherWeekday",
                        date,
                        date.getDayOfWeek().getDisplayName(TextStyle.FULL, Locale.ENGLISH)));
            }
            return new Day(date, shows, shortYear);
        } catch (DateTimeException e) {
            throw new IllegalStateException("Checked before, but no date: " + written, e);
        }
    }
}

package org.ouzelbook.tracker.exchange.cell;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Message;

/** A day, with times if the cell holds them, as far as what is known of the file settles it. */
public sealed interface When {
    /**
     * A settled day.
     *
     * @param date the local date
     * @param time the local time, or the start of a span within the day
     * @param end the end of a span within the day
     */
    record Read(LocalDate date, Optional<LocalTime> time, Optional<LocalTime> end) implements When {}

    /**
     * A day that waits for an answer.
     *
     * @param question what has to be answered
     */
    record Open(Message question) implements When {}

    /**
     * No day.
     *
     * @param why the reason, to be shown beside the cell
     */
    record Refused(Message why) implements When {}

    /** A date of the ISO form and the rest of the cell. */
    Pattern ISO = Pattern.compile("(\\d{4}-\\d{1,2}-\\d{1,2})(?:[Tt ]([^/]+?))?(?:/(.+))?");

    /** Any date with a time of the form 07:10 behind it. */
    Pattern WITH_TIME = Pattern.compile("(.*\\S)[ ,]+(\\d{1,2}:\\d{2}(?::\\d{2})?(?: ?[AaPp]\\.?[Mm]\\.?)?)");

    /** A time as spreadsheets add it to a day that has none. */
    Pattern ADDED_MIDNIGHT = Pattern.compile("0{1,2}:00:00(\\.0+)?");

    /**
     * {@return what the cell says}
     *
     * @param text the cell; not blank
     * @param choices what is known of the dates of its file
     */
    static When of(String text, DateChoices choices) {
        String plain = Blank.plainSpaces(text);
        Matcher iso = ISO.matcher(plain);
        if (iso.matches()) {
            return span(iso.group(1), Optional.ofNullable(iso.group(2)), Optional.ofNullable(iso.group(3)), choices);
        }
        Matcher timed = WITH_TIME.matcher(plain);
        return timed.matches()
                ? span(timed.group(1), Optional.of(timed.group(2)), Optional.empty(), choices)
                : span(plain, Optional.empty(), Optional.empty(), choices);
    }

    /**
     * {@return the part of a cell that tells the day, without times}
     *
     * @param text the cell
     */
    static String dayPart(String text) {
        String plain = Blank.plainSpaces(text);
        Matcher iso = ISO.matcher(plain);
        if (iso.matches()) {
            return iso.group(1);
        }
        Matcher timed = WITH_TIME.matcher(plain);
        return timed.matches() ? timed.group(1) : plain;
    }

    private static When span(String day, Optional<String> time, Optional<String> end, DateChoices choices) {
        When date = day(WrittenDate.of(day), choices);
        if (!(date instanceof Read read)) {
            return date;
        }
        Optional<String> start =
                time.filter(text -> !ADDED_MIDNIGHT.matcher(text).matches());
        String endText = end.orElse("");
        Matcher secondDay = ISO.matcher(endText);
        if (secondDay.matches()) {
            if (!WrittenDate.of(secondDay.group(1)).equals(WrittenDate.of(day))) {
                return new Refused(Message.of("import.date.severalDays"));
            }
            endText = secondDay.group(2) == null ? "" : secondDay.group(2);
        }
        return timed(read.date(), start, Optional.of(endText).filter(text -> !text.isBlank()), choices);
    }

    private static When timed(LocalDate date, Optional<String> start, Optional<String> end, DateChoices choices) {
        boolean utc = start.isPresent() && start.get().matches(".*[Zz]");
        if (utc && choices.zone().isEmpty()) {
            return new Open(Message.of("import.ask.zone"));
        }
        LocalTime[] times = new LocalTime[2];
        LocalDate local = date;
        for (int i = 0; i < 2; i++) {
            Optional<String> text = i == 0 ? start : end;
            if (text.isEmpty()) {
                continue;
            }
            if (!(WrittenTime.of(text.get()) instanceof WrittenTime.Read read)) {
                return new Refused(Message.of("import.time.unknownForm"));
            }
            times[i] = read.time();
            if (utc) {
                LocalDateTime there = LocalDateTime.of(date, read.time())
                        .atZone(ZoneOffset.UTC)
                        .withZoneSameInstant(choices.zone().orElseThrow())
                        .toLocalDateTime();
                times[i] = there.toLocalTime();
                local = i == 0 ? there.toLocalDate() : local;
            }
        }
        return new Read(local, Optional.ofNullable(times[0]), Optional.ofNullable(times[1]));
    }

    private static When day(WrittenDate written, DateChoices choices) {
        if (written instanceof WrittenDate.Day day) {
            boolean otherOrder = day.shows().isPresent()
                    && choices.order().isPresent()
                    && !day.shows().equals(choices.order());
            return otherOrder
                    ? new Refused(
                            Message.of("import.date.otherOrder", choices.order().get()))
                    : notInFuture(day.date(), choices);
        }
        if (written instanceof WrittenDate.EitherOrder either) {
            if (choices.order().isEmpty()) {
                return new Open(Message.of("import.ask.dateOrder", either.dayFirst(), either.monthFirst()));
            }
            boolean dayFirst = choices.order().get() == DateOrder.DAY_FIRST;
            return notInFuture(dayFirst ? either.dayFirst() : either.monthFirst(), choices);
        }
        if (written instanceof WrittenDate.Serial serial) {
            return choices.serials().isPresent()
                    ? notInFuture(choices.serials().get().date(serial.number()), choices)
                    : new Open(Message.of(
                            "import.ask.serialDates",
                            SerialDates.EXCEL_1900.date(serial.number()),
                            SerialDates.EXCEL_1904.date(serial.number())));
        }
        if (written instanceof WrittenDate.NoYear noYear) {
            if (choices.year().isEmpty()) {
                return new Open(Message.of("import.ask.year"));
            }
            return noYear.monthDay().isValidYear(choices.year().get().getValue())
                    ? notInFuture(noYear.monthDay().atYear(choices.year().get().getValue()), choices)
                    : new Refused(
                            Message.of("import.date.noLeapYear", choices.year().get()));
        }
        return new Refused(((WrittenDate.Refused) written).why());
    }

    private static When notInFuture(LocalDate date, DateChoices choices) {
        return date.isAfter(choices.today())
                ? new Refused(Message.of("import.date.future", date, choices.today()))
                : new Read(date, Optional.empty(), Optional.empty());
    }
}

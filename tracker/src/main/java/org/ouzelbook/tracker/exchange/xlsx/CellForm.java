package org.ouzelbook.tracker.exchange.xlsx;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Locale;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.exchange.cell.SerialDates;

/**
 * What a number in a cell stands for, as its format tells: a number, a day, a time of the day, or both.
 *
 * <p>Source: ECMA-376 (5th edition, 2016), part 1, 18.8.30 (number formats) and 18.17.4.1 (dates as serial numbers).
 */
enum CellForm {
    /** A number. */
    NUMBER,
    /** A day. */
    DAY,
    /** A time of the day. */
    TIME,
    /** A day and a time. */
    DAY_AND_TIME;

    private static final Pattern NO_PLACEHOLDER = Pattern.compile("\"[^\"]*\"|\\\\.|_.|\\*.|\\[(?!h+]|m+]|s+])[^]]*]");
    private static final MathContext AS_SHOWN = new MathContext(15);
    private static final double LAST_DAY = 2_958_465;
    private static final int SECONDS_A_DAY = 86_400;

    /** {@return what numbers of a format stand for} */
    static CellForm of(int id, String code) {
        if (code.isEmpty()) {
            return builtIn(id);
        }
        String placeholders = NO_PLACEHOLDER
                .matcher(code.split(";", -1)[0])
                .replaceAll("")
                .toLowerCase(Locale.ROOT)
                .replace("general", "");
        boolean time = placeholders.matches("(?s).*[hs].*");
        boolean day = placeholders.matches("(?s).*[dy].*") || (!time && placeholders.contains("m"));
        return day ? time ? DAY_AND_TIME : DAY : time ? TIME : NUMBER;
    }

    private static CellForm builtIn(int id) {
        if (id == 22) {
            return DAY_AND_TIME;
        }
        if ((id >= 18 && id <= 21) || (id >= 45 && id <= 47)) {
            return TIME;
        }
        return (id >= 14 && id <= 17) || (id >= 27 && id <= 36) || (id >= 50 && id <= 58) ? DAY : NUMBER;
    }

    /** {@return the number as people read it: without the noise of its binary form, or as a day or time} */
    String written(String number, SerialDates days) {
        double value;
        try {
            value = Double.parseDouble(number);
        } catch (NumberFormatException e) {
            return number;
        }
        if (!Double.isFinite(value) || (value != 0 && (Math.abs(value) > 1e15 || Math.abs(value) < 1e-9))) {
            return number;
        }
        if (this == NUMBER || value < 0 || value > LAST_DAY) {
            return new BigDecimal(value).round(AS_SHOWN).stripTrailingZeros().toPlainString();
        }
        long seconds = Math.round(value * SECONDS_A_DAY);
        LocalTime time = LocalTime.ofSecondOfDay(seconds % SECONDS_A_DAY);
        if (this == TIME || seconds < SECONDS_A_DAY) {
            return time.toString();
        }
        LocalDate day = days.date((int) (seconds / SECONDS_A_DAY));
        return time.equals(LocalTime.MIDNIGHT) ? day.toString() : day + "T" + time;
    }
}

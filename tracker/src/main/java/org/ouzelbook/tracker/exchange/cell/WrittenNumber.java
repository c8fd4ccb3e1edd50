package org.ouzelbook.tracker.exchange.cell;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.Message;

/** What one cell says of a number, given the decimal sign of its file. */
public sealed interface WrittenNumber {
    /** Digits with at most one decimal sign. */
    Pattern SIMPLE = Pattern.compile("([+-]?)(\\d{0,15})(?:([.,])(\\d{1,15}))?");

    /** Digits in groups of three. */
    Pattern GROUPED = Pattern.compile("([+-]?)(\\d{1,3}(?:([ '.,])\\d{3})(?:\\3\\d{3}){0,3})(?:([.,])(\\d{1,15}))?");

    /**
     * A number.
     *
     * @param value its value
     * @param decimals how many digits stood after the decimal sign
     */
    record Read(double value, int decimals) implements WrittenNumber {}

    /**
     * A comma or point that may separate decimals or thousands.
     *
     * @param why the reason, to be shown beside the cell
     */
    record Open(Message why) implements WrittenNumber {}

    /**
     * No number.
     *
     * @param why the reason, to be shown beside the cell
     */
    record Refused(Message why) implements WrittenNumber {}

    /**
     * {@return what the cell says}
     *
     * @param text the cell; not blank
     * @param sign the decimal sign of the file; empty if nothing shows it
     */
    static WrittenNumber of(String text, Optional<DecimalSign> sign) {
        String plain = plain(text);
        Matcher simple = SIMPLE.matcher(plain);
        if (simple.matches() && plain.chars().anyMatch(Character::isDigit)) {
            return simple(simple, sign);
        }
        Matcher grouped = GROUPED.matcher(plain);
        if (grouped.matches()) {
            return grouped(grouped, sign);
        }
        return new Refused(Message.of("import.number.unknownForm"));
    }

    /**
     * {@return the sign before the decimals that the cell shows for its whole file; empty if it shows none}
     *
     * @param text the cell
     * @param neverThousands whether the column holds no numbers of a thousand or more, so that 8,350 can only be 8.35
     */
    static Optional<DecimalSign> shows(String text, boolean neverThousands) {
        if (text.indexOf('.') < 0 && text.indexOf(',') < 0) {
            return Optional.empty();
        }
        String plain = plain(text);
        Matcher simple = SIMPLE.matcher(plain);
        if (simple.matches()) {
            String sign = simple.group(3);
            boolean telling = sign != null && (neverThousands || !mayBeThousands(simple));
            return telling ? Optional.of(sign.equals(",") ? DecimalSign.COMMA : DecimalSign.POINT) : Optional.empty();
        }
        Matcher grouped = GROUPED.matcher(plain);
        if (grouped.matches() && grouped.group(4) != null) {
            return Optional.of(grouped.group(4).equals(",") ? DecimalSign.COMMA : DecimalSign.POINT);
        }
        return Optional.empty();
    }

    private static String plain(String text) {
        return Blank.plainSpaces(text)
                .toLowerCase(Locale.ROOT)
                .replace('−', '-')
                .replace('’', '\'');
    }

    private static boolean mayBeThousands(Matcher simple) {
        String whole = simple.group(2);
        return simple.group(4).length() == 3 && !whole.isEmpty() && !whole.startsWith("0") && whole.length() <= 3;
    }

    private static WrittenNumber simple(Matcher simple, Optional<DecimalSign> sign) {
        String decimals = simple.group(4);
        if (decimals == null) {
            return read(simple.group(1) + simple.group(2), "");
        }
        DecimalSign here = simple.group(3).equals(",") ? DecimalSign.COMMA : DecimalSign.POINT;
        boolean agrees = sign.isPresent() && (sign.get() == here || sign.get() == DecimalSign.EITHER);
        if (agrees || (sign.isEmpty() && !mayBeThousands(simple))) {
            return read(simple.group(1) + simple.group(2), decimals);
        }
        return new Open(Message.of(sign.isEmpty() ? "import.number.thousandsOrDecimals" : "import.number.otherSign"));
    }

    private static WrittenNumber grouped(Matcher grouped, Optional<DecimalSign> sign) {
        String groups = grouped.group(3);
        String decimalSign = grouped.group(4);
        if (groups.equals(decimalSign)) {
            return new Refused(Message.of("import.number.unknownForm"));
        }
        boolean commaGroups = groups.equals(",") || ".".equals(decimalSign);
        boolean pointGroups = groups.equals(".") || ",".equals(decimalSign);
        boolean clashes = sign.isPresent()
                && ((commaGroups && sign.get() == DecimalSign.COMMA)
                        || (pointGroups && sign.get() == DecimalSign.POINT));
        if (clashes) {
            return new Open(Message.of("import.number.otherSign"));
        }
        String whole = grouped.group(1) + grouped.group(2).replaceAll("[ '.,]", "");
        return read(whole, decimalSign == null ? "" : grouped.group(5));
    }

    private static WrittenNumber read(String whole, String decimals) {
        return new Read(Double.parseDouble(whole + "." + (decimals.isEmpty() ? "0" : decimals)), decimals.length());
    }
}

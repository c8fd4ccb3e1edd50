package org.ouzelbook.ui.app.leak;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds numbers that may be a latitude or a longitude: degrees, also with a power of ten or with minutes and seconds, with a letter for the side of the earth or without. */
final class Angles {
    private static final String SIDE = "[NSEWnsew]";
    private static final String BEFORE = "(?<![\\w.,])(?:(?<before>" + SIDE + ")\\s?)?";
    private static final String AFTER = "\\s?[°º]?(?:\\s?(?<after>" + SIDE + ")(?!\\w))?(?!\\w|[.,]\\d)";
    private static final Pattern NUMBER = Pattern.compile("(?<![\\w.])(?:(?<before>" + SIDE
            + ")\\s?)?(?<degrees>[-−+]?\\d{1,3}(?:\\.\\d+)?(?:[eE]-\\d{1,2})?)\\s?[°º]?(?:\\s?(?<after>" + SIDE
            + ")(?!\\w))?(?!\\w|\\.\\d)");
    private static final Pattern WITH_COMMA = Pattern.compile(BEFORE + "(?<degrees>[-−+]?\\d{1,3},\\d{3,})" + AFTER);

    private static final String DEGREES = "(?<degrees>\\d{1,3})\\s*(?:[°º:d]|deg\\.?|\\s)\\s*";
    private static final String MINUTES = "(?<minutes>\\d{1,2}(?:[.,]\\d+)?)\\s*(?:['′’´m:]|\\s)?\\s*";
    private static final String SECONDS = "(?:(?<seconds>\\d{1,2}(?:[.,]\\d+)?)\\s*(?:[\"″”s]|''|′′|’’)?\\s*)?";
    private static final Pattern SIDE_BEHIND =
            Pattern.compile("(?<![\\w.,])" + DEGREES + MINUTES + SECONDS + "(?<side>" + SIDE + ")(?!\\p{L})");
    private static final Pattern SIDE_BEFORE =
            Pattern.compile("(?<!\\p{L})(?<side>" + SIDE + ")\\s*" + DEGREES + MINUTES + SECONDS);

    /** Whole minutes are 1.9 km; a second of arc is 31 m, between three and four decimals of a degree. */
    private static final int DECIMALS_OF_MINUTES = 2;

    private static final int DECIMALS_OF_SECONDS = 4;

    private Angles() {}

    /**
     * An angle in a text.
     *
     * @param value in degrees
     * @param hasSide whether a letter stands beside it, so that its sign is not to be relied on
     * @param decimals how many decimals of a degree were written, or how many would be as fine
     * @param at where it begins
     * @param end behind its last sign
     */
    record Angle(double value, boolean hasSide, int decimals, int at, int end) {}

    /** One way to write an angle. */
    record Way(Pattern pattern, Function<Matcher, Angle> read) {}

    /** Each way is looked for by itself: the two angles of a point are written alike. */
    static final List<Way> WAYS = List.of(
            new Way(NUMBER, Angles::number),
            new Way(WITH_COMMA, Angles::number),
            new Way(SIDE_BEHIND, Angles::sexagesimal),
            new Way(SIDE_BEFORE, Angles::sexagesimal));

    private static Angle number(Matcher number) {
        String written = number.group("degrees").replace(',', '.').replace('−', '-');
        int decimals = Math.max(0, new BigDecimal(written).scale());
        boolean hasSide = number.group("before") != null || number.group("after") != null;
        return new Angle(Double.parseDouble(written), hasSide, decimals, number.start(), number.end());
    }

    private static Angle sexagesimal(Matcher angle) {
        String minutes = angle.group("minutes");
        String seconds = angle.group("seconds");
        double degrees =
                number(angle.group("degrees")) + number(minutes) / 60 + (seconds == null ? 0 : number(seconds) / 3600);
        int decimals = seconds != null || minutes.length() > 2 ? DECIMALS_OF_SECONDS : DECIMALS_OF_MINUTES;
        return new Angle(degrees, true, decimals, angle.start(), angle.end());
    }

    private static double number(String text) {
        return Double.parseDouble(text.replace(',', '.'));
    }
}

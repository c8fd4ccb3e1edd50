package org.ouzelbook.stats.simulate.skerra;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * How one person's program writes a table.
 *
 * @param separator between cells
 * @param decimal the decimal sign
 * @param charset how letters become bytes
 * @param marked whether the file begins with a byte order mark
 * @param lineEnd what ends a line
 * @param date how dates are written
 * @param time how times are written
 */
record Style(
        char separator,
        char decimal,
        Charset charset,
        boolean marked,
        String lineEnd,
        DateTimeFormatter date,
        DateTimeFormatter time) {

    /** As our own field sheet asks for it. */
    static final Style SHEET = of(',', '.', StandardCharsets.UTF_8, false, "\n", "uuuu-MM-dd", "HH:mm");

    /** An office program with the settings of a country of decimal commas, years ago. */
    static final Style OLD_OFFICE = of(';', ',', Charset.forName("windows-1252"), false, "\r\n", "d.M.yy", "H.mm");

    /** An office program of today. */
    static final Style OFFICE = of(',', '.', StandardCharsets.UTF_8, true, "\r\n", "d/M/uuuu", "HH:mm");

    /** A typist who likes tabs. */
    static final Style TABS = of('\t', '.', StandardCharsets.UTF_8, false, "\n", "d MMMM uuuu", "HHmm");

    private static Style of(
            char separator,
            char decimal,
            Charset charset,
            boolean marked,
            String lineEnd,
            String datePattern,
            String timePattern) {
        return new Style(
                separator,
                decimal,
                charset,
                marked,
                lineEnd,
                DateTimeFormatter.ofPattern(datePattern, Locale.ENGLISH),
                DateTimeFormatter.ofPattern(timePattern, Locale.ROOT));
    }

    String day(LocalDate day) {
        return date.format(day);
    }

    String clock(LocalTime clock) {
        return time.format(clock);
    }

    /** A number with this many decimals. */
    String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value).replace('.', decimal);
    }
}

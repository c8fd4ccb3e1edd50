package org.ouzelbook.ui.strip;

import java.time.LocalDate;
import java.time.Month;
import java.time.format.DateTimeFormatter;
import java.time.format.TextStyle;
import java.util.Locale;

/** The days of the year as an axis across the paper: the same day of every year stands at the same place, leap days included. */
final class YearDays {
    private static final int LEAP_YEAR = 2024;
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.ENGLISH);
    private static final double WEEKS_UP_TO_DAYS = 75;

    private YearDays() {}

    static double of(LocalDate date) {
        return LocalDate.of(LEAP_YEAR, date.getMonth(), date.getDayOfMonth()).getDayOfYear();
    }

    static double firstOf(Month month) {
        return month.firstDayOfYear(true);
    }

    static double endOf(Month month) {
        return month.firstDayOfYear(true) + month.length(true);
    }

    /** Draws the names of the months, or days where few are in view, and a thin line below each. */
    static void axis(Sheet sheet, Across across, double y, double top, double bottom) {
        if (across.to() - across.from() <= WEEKS_UP_TO_DAYS) {
            for (double day = Math.ceil(across.from() / 7) * 7; day <= across.to(); day += 7) {
                LocalDate date = LocalDate.ofYearDay(LEAP_YEAR, (int) Math.max(1, Math.min(366, day)));
                tick(sheet, across.x(day), DAY.format(date), y, top, bottom);
            }
            return;
        }
        for (Month month : Month.values()) {
            double first = firstOf(month);
            if (across.shows(first)) {
                double x = across.x(first);
                sheet.draw(new Shape.Line(new Point(x, top), new Point(x, bottom), Pencil.solid(Ink.GRID, 1)));
            }
            double middle = (first + endOf(month)) / 2;
            if (across.shows(middle)) {
                sheet.write(new Shape.Label(
                        new Point(across.x(middle), y),
                        month.getDisplayName(TextStyle.SHORT, Locale.ENGLISH),
                        Shape.Anchor.MIDDLE,
                        Shape.Lettering.SMALL,
                        Ink.MUTED));
            }
        }
    }

    private static void tick(Sheet sheet, double x, String words, double y, double top, double bottom) {
        sheet.write(new Shape.Label(new Point(x, y), words, Shape.Anchor.MIDDLE, Shape.Lettering.SMALL, Ink.MUTED));
        sheet.draw(new Shape.Line(new Point(x, top), new Point(x, bottom), Pencil.solid(Ink.GRID, 1)));
    }
}

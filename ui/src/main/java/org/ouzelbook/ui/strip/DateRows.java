package org.ouzelbook.ui.strip;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.SortedSet;
import java.util.TreeMap;

/**
 * Dates going down the paper, farther apart where more days lie between them; long empty times are shortened, so that a
 * winter visit does not squeeze the spring.
 */
final class DateRows {
    private static final double MARGIN = 22;
    private static final double CLOSEST = 22;
    private static final double MOST_ROOM = 1600;
    private static final long FEWEST_DAYS = 8;
    private static final long MOST_DAYS = 28;

    private final NavigableMap<LocalDate, Double> ys = new TreeMap<>();

    private DateRows() {}

    /** {@return the room that so many rows need, in pixels} */
    static double leastHeight(int rows) {
        return 2 * MARGIN + Math.min(MOST_ROOM, CLOSEST * Math.max(0, rows - 1));
    }

    /** {@return the room that the rows would like, in any unit: what one block of rows gets beside another} */
    static double weight(SortedSet<LocalDate> dates) {
        List<LocalDate> list = List.copyOf(dates);
        double weight = MOST_DAYS;
        for (int i = 1; i < list.size(); i++) {
            weight += days(list.get(i - 1), list.get(i));
        }
        return weight;
    }

    private static double days(LocalDate before, LocalDate date) {
        return Math.max(FEWEST_DAYS, Math.min(MOST_DAYS, ChronoUnit.DAYS.between(before, date)));
    }

    /**
     * {@return the dates as rows}
     *
     * @param dates the dates
     * @param top top of the room
     * @param height its height
     */
    static DateRows of(SortedSet<LocalDate> dates, double top, double height) {
        DateRows rows = new DateRows();
        if (dates.isEmpty()) {
            return rows;
        }
        List<LocalDate> list = List.copyOf(dates);
        double least = Math.min(CLOSEST, MOST_ROOM / Math.max(1, list.size() - 1));
        double spare = Math.max(0, height - 2 * MARGIN - least * (list.size() - 1));
        double y = list.size() == 1 ? top + height / 2 : top + MARGIN;
        for (int i = 0; i < list.size(); i++) {
            if (i > 0) {
                y += least + spare * days(list.get(i - 1), list.get(i)) / (weight(dates) - MOST_DAYS);
            }
            rows.ys.put(list.get(i), Math.round(y) + 0.5);
        }
        return rows;
    }

    /** {@return the rows by date} */
    NavigableMap<LocalDate, Double> byDate() {
        return ys;
    }

    /**
     * {@return the y of a date that has a row}
     *
     * @param date one of the dates
     */
    double y(LocalDate date) {
        Double y = ys.get(date);
        if (y == null) {
            throw new IllegalArgumentException("No row for " + date);
        }
        return y;
    }

    /**
     * {@return the y of any date: of its row, or between the rows before and after it}
     *
     * @param date a date
     */
    double near(LocalDate date) {
        Map.Entry<LocalDate, Double> before = ys.floorEntry(date);
        Map.Entry<LocalDate, Double> after = ys.ceilingEntry(date);
        if (before == null || after == null) {
            Map.Entry<LocalDate, Double> only = before == null ? after : before;
            return only == null ? 0 : only.getValue() + (before == null ? -CLOSEST : CLOSEST) / 2;
        }
        long days = ChronoUnit.DAYS.between(before.getKey(), after.getKey());
        double share = days == 0 ? 0 : (double) ChronoUnit.DAYS.between(before.getKey(), date) / days;
        return before.getValue() + share * (after.getValue() - before.getValue());
    }

    /** {@return the least distance between two rows, in pixels; much where there is only one} */
    double closest() {
        double closest = 200;
        double before = Double.NEGATIVE_INFINITY;
        for (double y : ys.values()) {
            closest = Math.min(closest, y - before);
            before = y;
        }
        return closest;
    }
}

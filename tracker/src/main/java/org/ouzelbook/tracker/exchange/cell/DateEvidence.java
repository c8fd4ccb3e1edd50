package org.ouzelbook.tracker.exchange.cell;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/** Gathers from all the dates of one file which of day and month stands first, and the cells that show it. */
public final class DateEvidence {
    private final Map<DateOrder, CellAt> firstShowing = new EnumMap<>(DateOrder.class);
    private long either;
    private Optional<CellAt> firstShortYear = Optional.empty();

    /**
     * Takes one date into account.
     *
     * @param text the cell; not blank
     * @param row its row
     * @param column the name of its column
     */
    public void add(String text, long row, String column) {
        WrittenDate written = WrittenDate.of(When.dayPart(text));
        if (written instanceof WrittenDate.Day day) {
            day.shows().ifPresent(order -> firstShowing.putIfAbsent(order, new CellAt(row, column, text)));
            noteShortYear(day.shortYear(), text, row, column);
        } else if (written instanceof WrittenDate.EitherOrder open) {
            either++;
            noteShortYear(open.shortYear(), text, row, column);
        }
    }

    private void noteShortYear(boolean shortYear, String text, long row, String column) {
        if (shortYear && firstShortYear.isEmpty()) {
            firstShortYear = Optional.of(new CellAt(row, column, text));
        }
    }

    /** {@return the order that the file shows; empty if no cell shows one, or cells contradict each other} */
    public Optional<DateOrder> order() {
        return firstShowing.size() == 1
                ? Optional.of(firstShowing.keySet().iterator().next())
                : Optional.empty();
    }

    /** {@return whether one cell shows day first and another month first} */
    public boolean contradicts() {
        return firstShowing.size() == DateOrder.values().length;
    }

    /**
     * {@return the first cell that shows this order}
     *
     * @param order an order
     */
    public Optional<CellAt> firstShowing(DateOrder order) {
        return Optional.ofNullable(firstShowing.get(order));
    }

    /** {@return how many dates need the order to be known} */
    public long either() {
        return either;
    }

    /** {@return the first date with a year of two digits} */
    public Optional<CellAt> firstShortYear() {
        return firstShortYear;
    }
}

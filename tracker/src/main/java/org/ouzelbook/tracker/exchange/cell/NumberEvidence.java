package org.ouzelbook.tracker.exchange.cell;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/** Gathers from all the numbers of one file the sign before the decimals, and the cells that show it. */
public final class NumberEvidence {
    private final Map<DecimalSign, CellAt> firstShowing = new EnumMap<>(DecimalSign.class);
    private final Map<DecimalSign, Long> counts = new EnumMap<>(DecimalSign.class);

    /**
     * Takes one number into account.
     *
     * @param text the cell
     * @param neverThousands whether the column holds no numbers of a thousand or more, such as km or degrees
     * @param row its row
     * @param column the name of its column
     */
    public void add(String text, boolean neverThousands, long row, String column) {
        WrittenNumber.shows(text, neverThousands).ifPresent(sign -> {
            firstShowing.putIfAbsent(sign, new CellAt(row, column, text));
            counts.merge(sign, 1L, Long::sum);
        });
    }

    /** {@return the sign that the file shows; empty if no cell shows one, or both are in use} */
    public Optional<DecimalSign> sign() {
        return firstShowing.size() == 1
                ? Optional.of(firstShowing.keySet().iterator().next())
                : Optional.empty();
    }

    /** {@return whether some numbers have a decimal point and others a decimal comma} */
    public boolean contradicts() {
        return firstShowing.size() > 1;
    }

    /**
     * {@return the first cell that shows this sign}
     *
     * @param sign a point or a comma
     */
    public Optional<CellAt> firstShowing(DecimalSign sign) {
        return Optional.ofNullable(firstShowing.get(sign));
    }

    /**
     * {@return how many cells show this sign}
     *
     * @param sign a point or a comma
     */
    public long count(DecimalSign sign) {
        return counts.getOrDefault(sign, 0L);
    }
}

package org.ouzelbook.stats.simulate.skerra;

import static org.ouzelbook.stats.simulate.skerra.FieldTable.column;

import java.util.function.Function;

/**
 * How one person lays out a table: a style, and a line for each column with its heading as this person writes it, a bar, and
 * what stands in it.
 */
record Layout(Style style, String columns) {
    /** The table, with each kind of cell filled as {@code cells} says. */
    <T> FieldTable<T> table(Function<String, Function<T, String>> cells) {
        return new FieldTable<>(columns.lines()
                .map(line -> line.split("\\|", 2))
                .map(parts -> column(parts[0].strip(), cells.apply(parts[1].strip())))
                .toList());
    }
}

package org.ouzelbook.stats.estimator.likelihood;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.stream.IntStream;

/** A column of a design: a number for each row, under the name of a term. */
public final class Column {
    private final String term;
    private final double[] values;

    private Column(String term, double[] values) {
        this.term = term;
        this.values = values;
    }

    /**
     * {@return a column of numbers}
     *
     * @param term its name
     * @param values one a row; finite
     * @throws IllegalArgumentException if a value is infinite or NaN
     */
    public static Column of(String term, double... values) {
        for (double value : values) {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("Column " + term + " holds " + value);
            }
        }
        return new Column(term, values.clone());
    }

    /**
     * {@return a column of 0 and 1 for each level but the first, which is the reference}
     *
     * @param name what the levels belong to; terms are {@code name=level}
     * @param levels one a row; the first in order of appearance is the reference
     */
    public static List<Column> ofLevels(String name, List<String> levels) {
        return List.copyOf(new LinkedHashSet<>(levels)).stream()
                .skip(1)
                .map(level -> new Column(
                        name + "=" + level,
                        levels.stream()
                                .mapToDouble(other -> other.equals(level) ? 1 : 0)
                                .toArray()))
                .toList();
    }

    /** {@return the name of its term} */
    public String term() {
        return term;
    }

    int rows() {
        return values.length;
    }

    double value(int row) {
        return values[row];
    }

    double mean() {
        return IntStream.range(0, values.length)
                .mapToDouble(this::value)
                .average()
                .orElse(0);
    }
}

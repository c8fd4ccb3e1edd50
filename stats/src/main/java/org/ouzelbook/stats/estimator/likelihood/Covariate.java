package org.ouzelbook.stats.estimator.likelihood;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Something that a part of a model may depend on: a value for each row, all of them numbers or all of them levels.
 *
 * @param name what it is called
 * @param values its values as written, one a row
 * @param numeric whether they are numbers
 */
public record Covariate(String name, List<String> values, boolean numeric) {
    /**
     * Copies the values.
     *
     * @throws NumberFormatException if they are said to be numbers, and one is none
     */
    public Covariate {
        values = List.copyOf(values);
        if (numeric) {
            values.forEach(Double::parseDouble);
        }
    }

    /** {@return levels, the first in order of appearance being the reference} */
    public static Covariate levels(String name, List<String> values) {
        return new Covariate(name, values, false);
    }

    /** {@return numbers} */
    public static Covariate numbers(String name, double... values) {
        return new Covariate(
                name,
                IntStream.range(0, values.length)
                        .mapToObj(row -> Double.toString(values[row]))
                        .toList(),
                true);
    }

    /** {@return its columns in a design} */
    public List<Column> columns() {
        return numeric
                ? List.of(Column.of(
                        name, values.stream().mapToDouble(Double::parseDouble).toArray()))
                : Column.ofLevels(name, values);
    }

    /**
     * {@return the columns of several}
     *
     * @param covariates of the same rows
     */
    public static List<Column> columns(List<Covariate> covariates) {
        return covariates.stream()
                .flatMap(covariate -> covariate.columns().stream())
                .toList();
    }

    /**
     * {@return what a row is called, such as {@code sex=M, occasion=2}; the name of the intercept without covariates}
     *
     * @param covariates what the part depends on
     * @param row from 0
     */
    public static String label(List<Covariate> covariates, int row) {
        return covariates.isEmpty()
                ? Design.INTERCEPT
                : covariates.stream()
                        .map(covariate -> covariate.name + "=" + covariate.values.get(row))
                        .collect(Collectors.joining(", "));
    }
}

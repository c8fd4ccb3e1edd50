package org.ouzelbook.stats.estimator;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/**
 * A table among the resources of the tests.
 *
 * @param header names of its columns
 * @param rows its rows
 */
public record TestTable(List<String> header, List<List<String>> rows) {
    /** {@return the table that lies beside a class} */
    public static TestTable beside(Class<?> test, String file) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                Objects.requireNonNull(test.getResourceAsStream(file)), StandardCharsets.UTF_8))) {
            List<List<String>> lines =
                    reader.lines().map(line -> List.of(line.split(",", -1))).toList();
            return new TestTable(lines.get(0), lines.subList(1, lines.size()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** {@return a column's cells} */
    public List<String> column(String name) {
        int place = header.indexOf(name);
        return rows.stream().map(row -> row.get(place)).toList();
    }

    /** {@return a column's numbers} */
    public double[] numbers(String name) {
        return column(name).stream().mapToDouble(Double::parseDouble).toArray();
    }
}

package org.ouzelbook.stats.estimator.markresight;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * Counts by two characters, tested for independence by Pearson's chi-square.
 *
 * @param counts the rows; all of the same length, none and no column all zero; at least two of each
 */
public record ContingencyTable(List<List<Long>> counts) {
    /** With smaller expected counts the chi-square law is a poor guide. Source: W. G. Cochran (1954), Biometrics 10:417–451. */
    public static final double SMALL = 1;

    private static final int POOLED_UP_TO = 2;

    /**
     * Copies the counts.
     *
     * @throws IllegalArgumentException if a row or column is all zero, or there are fewer than two
     */
    public ContingencyTable {
        counts = counts.stream().map(List::copyOf).toList();
        if (counts.size() < 2 || counts.get(0).size() < 2 || smallestExpected(counts) <= 0) {
            throw new IllegalArgumentException("No table to test: " + counts);
        }
    }

    /** The table without its empty rows and columns; empty if fewer than two of either are left. */
    static List<ContingencyTable> of(long[]... rows) {
        List<long[]> filled = IntStream.range(0, rows.length)
                .mapToObj(row -> rows[row])
                .filter(row -> sum(row) > 0)
                .toList();
        List<Integer> columns = IntStream.range(0, rows[0].length)
                .filter(column -> filled.stream().anyMatch(row -> row[column] > 0))
                .boxed()
                .toList();
        if (filled.size() < 2 || columns.size() < 2) {
            return List.of();
        }
        return List.of(new ContingencyTable(filled.stream()
                .map(row -> columns.stream().map(column -> row[column]).toList())
                .toList()));
    }

    /**
     * The table with neighbouring columns put together until every expected count is at least {@value #POOLED_UP_TO}, as Burnham and
     * others (1987) do; empty if only one column is left.
     */
    static List<ContingencyTable> pooled(long[] row, long[] other) {
        List<long[]> columns = new ArrayList<>();
        for (int column = 0; column < row.length; column++) {
            if (row[column] + other[column] > 0) {
                columns.add(new long[] {row[column], other[column]});
            }
        }
        while (columns.size() > 1) {
            List<ContingencyTable> table = of(rowOf(columns, 0), rowOf(columns, 1));
            if (table.isEmpty() || table.get(0).smallestExpected() >= POOLED_UP_TO) {
                return table;
            }
            int least = 0;
            for (int column = 1; column < columns.size(); column++) {
                least = sum(columns.get(column)) < sum(columns.get(least)) ? column : least;
            }
            long[] gone = columns.remove(least);
            long[] neighbour = columns.get(Math.max(0, least - 1));
            neighbour[0] += gone[0];
            neighbour[1] += gone[1];
        }
        return List.of();
    }

    private static long[] rowOf(List<long[]> columns, int row) {
        return columns.stream().mapToLong(column -> column[row]).toArray();
    }

    private static long sum(long[] numbers) {
        return IntStream.range(0, numbers.length).mapToLong(i -> numbers[i]).sum();
    }

    /** {@return the sum of (observed − expected)² / expected} */
    public double chiSquare() {
        double sum = 0;
        for (int row = 0; row < counts.size(); row++) {
            for (int column = 0; column < counts.get(0).size(); column++) {
                double expected = expected(counts, row, column);
                double off = counts.get(row).get(column) - expected;
                sum += off * off / expected;
            }
        }
        return sum;
    }

    /** {@return rows less one, times columns less one} */
    public int degreesOfFreedom() {
        return (counts.size() - 1) * (counts.get(0).size() - 1);
    }

    /** {@return the probability of a chi-square as large or larger, if rows and columns are independent} */
    public double p() {
        return p(chiSquare(), degreesOfFreedom());
    }

    /** {@return the smallest expected count} */
    public double smallestExpected() {
        return smallestExpected(counts);
    }

    static double p(double chiSquare, int degreesOfFreedom) {
        return 1 - new ChiSquaredDistribution(degreesOfFreedom).cumulativeProbability(chiSquare);
    }

    private static double smallestExpected(List<List<Long>> counts) {
        return IntStream.range(0, counts.size())
                .boxed()
                .flatMapToDouble(row ->
                        IntStream.range(0, counts.get(0).size()).mapToDouble(column -> expected(counts, row, column)))
                .min()
                .orElse(0);
    }

    private static double expected(List<List<Long>> counts, int row, int column) {
        double inRow = counts.get(row).stream().mapToLong(Long::longValue).sum();
        double inColumn = counts.stream().mapToLong(one -> one.get(column)).sum();
        double all =
                counts.stream().flatMap(List::stream).mapToLong(Long::longValue).sum();
        return all == 0 ? 0 : inRow * inColumn / all;
    }
}

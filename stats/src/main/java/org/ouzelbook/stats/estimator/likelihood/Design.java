package org.ouzelbook.stats.estimator.likelihood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;

/**
 * The linear predictor of one part of a model: an intercept and named columns.
 *
 * <p>Rows that are alike share a pattern, and likelihoods are worked out by pattern. Inside, columns are centred and scaled to
 * standard deviation 1, so that a year or a height in metres does no harm to the arithmetic; what leaves the package is on
 * the columns' own scale.
 */
public final class Design {
    /** The term that every design begins with. */
    public static final String INTERCEPT = "intercept";

    /** A column whose part that others do not explain is smaller than this share of it adds nothing but rounding. */
    private static final double NOTHING_OF_ITS_OWN = 1e-7;

    private final List<String> terms;
    private final double[] means;
    private final double[] scales;
    private final double[][] patterns;
    private final int[] patternOfRow;

    private Design(List<String> terms, double[] means, double[] scales, double[][] patterns, int[] patternOfRow) {
        this.terms = terms;
        this.means = means;
        this.scales = scales;
        this.patterns = patterns;
        this.patternOfRow = patternOfRow;
    }

    /**
     * {@return a design of nothing but the intercept}
     *
     * @param rows how many rows
     */
    public static Design constant(int rows) {
        return new Design(List.of(INTERCEPT), new double[] {0}, new double[] {1}, new double[][] {{1}}, new int[rows]);
    }

    /**
     * {@return the design, or which terms only repeat what terms before them say}
     *
     * @param rows how many rows
     * @param columns its columns after the intercept
     * @throws IllegalArgumentException if a column has another number of rows
     */
    public static Answer<Design> of(int rows, List<Column> columns) {
        for (Column column : columns) {
            if (column.rows() != rows) {
                throw new IllegalArgumentException(
                        "Column " + column.term() + " has " + column.rows() + " rows, not " + rows);
            }
        }
        int size = columns.size() + 1;
        double[] means = new double[size];
        double[] scales = new double[size];
        double[][] values = new double[size][rows];
        Arrays.fill(values[0], 1);
        scales[0] = 1;
        for (int j = 1; j < size; j++) {
            Column column = columns.get(j - 1);
            means[j] = column.mean();
            double squares = 0;
            for (int row = 0; row < rows; row++) {
                values[j][row] = column.value(row) - means[j];
                squares += values[j][row] * values[j][row];
            }
            boolean constant = Math.sqrt(squares / rows) <= 1e-12 * Math.abs(means[j]) || squares == 0;
            scales[j] = constant ? 1 : Math.sqrt(squares / rows);
            for (int row = 0; row < rows; row++) {
                values[j][row] = constant ? 0 : values[j][row] / scales[j];
            }
        }
        List<String> repeating = repeating(values, columns);
        if (!repeating.isEmpty()) {
            return Answer.notEstimable(Reason.TERMS_REPEAT_OTHERS, repeating);
        }
        List<String> terms = Stream.concat(
                        Stream.of(INTERCEPT), columns.stream().map(Column::term))
                .toList();
        return Answer.of(ofValues(terms, means, scales, values, rows));
    }

    /** Terms without a part of their own, by Gram and Schmidt's orthogonalisation. */
    private static List<String> repeating(double[][] values, List<Column> columns) {
        List<String> repeating = new ArrayList<>();
        List<double[]> basis = new ArrayList<>();
        for (int j = 0; j < values.length; j++) {
            double[] own = values[j].clone();
            double before = Math.sqrt(dot(own, own));
            for (int again = 0; again < 2; again++) {
                for (double[] direction : basis) {
                    double share = dot(own, direction);
                    for (int row = 0; row < own.length; row++) {
                        own[row] -= share * direction[row];
                    }
                }
            }
            double after = Math.sqrt(dot(own, own));
            if (!(after > NOTHING_OF_ITS_OWN * before)) {
                repeating.add(j == 0 ? INTERCEPT : columns.get(j - 1).term());
                continue;
            }
            for (int row = 0; row < own.length; row++) {
                own[row] /= after;
            }
            basis.add(own);
        }
        return repeating;
    }

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static Design ofValues(List<String> terms, double[] means, double[] scales, double[][] values, int rows) {
        Map<List<Double>, Integer> known = new HashMap<>();
        List<double[]> patterns = new ArrayList<>();
        int[] patternOfRow = new int[rows];
        for (int row = 0; row < rows; row++) {
            List<Double> key = new ArrayList<>(values.length);
            for (double[] column : values) {
                key.add(column[row]);
            }
            Integer before = known.putIfAbsent(key, patterns.size());
            patternOfRow[row] = before == null ? patterns.size() : before;
            if (before == null) {
                patterns.add(key.stream().mapToDouble(Double::doubleValue).toArray());
            }
        }
        return new Design(terms, means, scales, patterns.toArray(new double[0][]), patternOfRow);
    }

    /** {@return the names of its terms, the intercept first} */
    public List<String> terms() {
        return terms;
    }

    /** {@return how many rows it has} */
    public int rows() {
        return patternOfRow.length;
    }

    /** {@return how many different rows it has} */
    public int patterns() {
        return patterns.length;
    }

    /**
     * {@return the pattern of a row, from 0}
     *
     * @param row from 0
     */
    public int pattern(int row) {
        return patternOfRow[row];
    }

    /** The centred and scaled value of a term in a pattern. */
    double value(int pattern, int term) {
        return patterns[pattern][term];
    }

    /** The linear predictor of each pattern. */
    double[] predictors(double[] point, int offset) {
        double[] predictors = new double[patterns.length];
        for (int i = 0; i < predictors.length; i++) {
            double sum = 0;
            for (int j = 0; j < terms.size(); j++) {
                sum += patterns[i][j] * point[offset + j];
            }
            predictors[i] = sum;
        }
        return predictors;
    }

    /** Adds the row of a pattern: how its predictor follows from the coefficients. */
    void addRow(int pattern, double[] combination, int offset) {
        for (int j = 0; j < terms.size(); j++) {
            combination[offset + j] += patterns[pattern][j];
        }
    }

    /** Adds derivatives by pattern to those by coefficient: the chain rule. */
    void pullBack(double[] byPattern, double[] gradient, int offset) {
        for (int i = 0; i < patterns.length; i++) {
            for (int j = 0; j < terms.size(); j++) {
                gradient[offset + j] += byPattern[i] * patterns[i][j];
            }
        }
    }

    /** Fills the rows of the matrix that takes coefficients of centred and scaled columns to those of the columns as given. */
    void fillToGiven(double[][] toGiven, int offset) {
        toGiven[offset][offset] = 1;
        for (int j = 1; j < terms.size(); j++) {
            toGiven[offset + j][offset + j] = 1 / scales[j];
            toGiven[offset][offset + j] = -means[j] / scales[j];
        }
    }
}

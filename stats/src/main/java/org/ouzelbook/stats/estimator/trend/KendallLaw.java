package org.ouzelbook.stats.estimator.trend;

import java.util.List;

/**
 * The exact law of Kendall's S when every order of the values is equally likely.
 *
 * <p>With {@code u} untied pairs, {@code S = u − 2I}, where {@code I} is the number of inversions. Placing a group of {@code t}
 * equal values among {@code m} others adds inversions with the coefficients of the Gaussian binomial {@code [m + t, t]}; the
 * law of {@code I} is the product over the groups. Without ties it is Kendall's own recursion.
 *
 * <p>Source: M. G. Kendall (1975), Rank Correlation Methods, 4th edition, chapter 5; inversions of a multiset: D. E. Knuth
 * (1998), The Art of Computer Programming 3, section 5.1.2 (both cited from memory).
 */
final class KendallLaw {
    private KendallLaw() {}

    /**
     * {@return the probability of {@code s} or more}
     *
     * @param groups how often each distinct value occurs
     * @param s a value of S
     */
    static double upperTail(List<Integer> groups, long s) {
        double[] inversions = {1};
        int placed = 0;
        for (int size : groups) {
            placed += size;
            inversions = product(inversions, normalised(gaussianBinomial(placed, size)));
        }
        long untiedPairs = inversions.length - 1L;
        double tail = 0;
        for (int i = 0; i <= untiedPairs && untiedPairs - 2L * i >= s; i++) {
            tail += inversions[i];
        }
        return Math.min(1, tail);
    }

    /** By rows of the q-Pascal triangle: [n, k] = [n−1, k−1] + qᵏ [n−1, k]. */
    private static double[] gaussianBinomial(int n, int k) {
        double[][] row = new double[k + 1][];
        for (int m = 0; m <= n; m++) {
            for (int j = Math.min(k, m); j >= 0; j--) {
                if (j == 0 || j == m) {
                    row[j] = new double[] {1};
                    continue;
                }
                double[] next = new double[j * (m - j) + 1];
                add(row[j - 1], next, 0);
                add(row[j], next, j);
                row[j] = next;
            }
        }
        return row[k];
    }

    private static void add(double[] from, double[] to, int shift) {
        for (int i = 0; i < from.length; i++) {
            to[i + shift] += from[i];
        }
    }

    private static double[] normalised(double[] weights) {
        double total = 0;
        for (double weight : weights) {
            total += weight;
        }
        double[] result = new double[weights.length];
        for (int i = 0; i < weights.length; i++) {
            result[i] = weights[i] / total;
        }
        return result;
    }

    private static double[] product(double[] a, double[] b) {
        double[] result = new double[a.length + b.length - 1];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < b.length; j++) {
                result[i + j] += a[i] * b[j];
            }
        }
        return result;
    }
}

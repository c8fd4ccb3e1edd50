package org.ouzelbook.stats.estimator.trend;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * All pairs of a series: which rise, which fall, and by how much a unit of time.
 */
final class Pairs {
    private final long s;
    private final double[] slopes;
    private final List<Integer> timeGroups;
    private final List<Integer> valueGroups;

    private Pairs(long s, double[] slopes, List<Integer> timeGroups, List<Integer> valueGroups) {
        this.s = s;
        this.slopes = slopes;
        this.timeGroups = timeGroups;
        this.valueGroups = valueGroups;
    }

    /** {@return rising pairs less falling pairs} */
    long s() {
        return s;
    }

    /** {@return the slopes of the pairs at different times, in rising order} */
    double[] slopes() {
        return slopes;
    }

    /** {@return how often each distinct time occurs} */
    List<Integer> timeGroups() {
        return timeGroups;
    }

    /** {@return how often each distinct value occurs} */
    List<Integer> valueGroups() {
        return valueGroups;
    }

    static Pairs of(double[] times, double[] values) {
        int n = times.length;
        double[] slopes = new double[n * (n - 1) / 2];
        int used = 0;
        long s = 0;
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < n; j++) {
                if (times[i] != times[j]) {
                    slopes[used++] = (values[j] - values[i]) / (times[j] - times[i]);
                    s += (long) (Math.signum(times[j] - times[i]) * Math.signum(values[j] - values[i]));
                }
            }
        }
        double[] sorted = Arrays.copyOf(slopes, used);
        Arrays.sort(sorted);
        return new Pairs(s, sorted, groups(times), groups(values));
    }

    private static List<Integer> groups(double[] numbers) {
        double[] sorted = numbers.clone();
        Arrays.sort(sorted);
        List<Integer> sizes = new ArrayList<>();
        int from = 0;
        for (int i = 1; i <= sorted.length; i++) {
            if (i == sorted.length || sorted[i] != sorted[from]) {
                sizes.add(i - from);
                from = i;
            }
        }
        return sizes;
    }

    private long size() {
        return timeGroups.stream().mapToLong(Integer::longValue).sum();
    }

    /** The variance of S when times and values are unrelated, with ties in both: M. G. Kendall (1975), section 4.4. */
    double variance() {
        double n = size();
        double variance = (n * (n - 1) * (2 * n + 5) - sum(timeGroups, 2, 5) - sum(valueGroups, 2, 5)) / 18;
        variance += sum(timeGroups, 1, -2) * sum(valueGroups, 1, -2) / (9 * n * (n - 1) * (n - 2));
        return variance + sum(timeGroups, 0, 1) * sum(valueGroups, 0, 1) / (2 * n * (n - 1));
    }

    /** The sum of t(t − 1)(at + b) over the groups. */
    private static double sum(List<Integer> groups, double a, double b) {
        return groups.stream().mapToDouble(t -> t * (t - 1.0) * (a * t + b)).sum();
    }

    /** {@return S over the number of pairs} */
    double tau() {
        return s / all();
    }

    /** {@return S over the geometric mean of the numbers of pairs that are untied in time and in value} */
    double tauB() {
        return s / Math.sqrt((all() - tied(timeGroups)) * (all() - tied(valueGroups)));
    }

    private double all() {
        return size() * (size() - 1) / 2.0;
    }

    private static double tied(List<Integer> groups) {
        return sum(groups, 0, 1) / 2;
    }
}

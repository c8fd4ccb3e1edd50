package org.ouzelbook.stats.estimator.segmentation;

/** Sums of numbers that are known by their logarithms. */
final class LogSum {
    private LogSum() {}

    static double of(double one, double other) {
        double high = Math.max(one, other);
        double low = Math.min(one, other);
        return low == Double.NEGATIVE_INFINITY ? high : high + Math.log1p(Math.exp(low - high));
    }
}

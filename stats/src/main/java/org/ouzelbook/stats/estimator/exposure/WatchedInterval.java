package org.ouzelbook.stats.estimator.exposure;

/**
 * The days between two looks at a nest that was alive at the first.
 *
 * @param days its length, in days; above 0
 * @param survived whether the nest was alive at the second look
 */
public record WatchedInterval(double days, boolean survived) {
    /**
     * Checks the length.
     *
     * @throws IllegalArgumentException if it is not finite and above 0
     */
    public WatchedInterval {
        if (!(days > 0 && days < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("An interval has a length above 0 days, but it was " + days);
        }
    }
}

package org.ouzelbook.stats.estimator.trend;

import org.ouzelbook.stats.estimator.Estimate;

/**
 * How a trend is judged.
 *
 * @param level of the intervals, between 0 and 1
 * @param spread how much counts are taken to vary about the model
 */
public record TrendSettings(double level, Spread spread) {
    /**
     * Checks the level.
     *
     * @throws IllegalArgumentException if it is not between 0 and 1
     */
    public TrendSettings {
        Estimate.tail(level);
    }

    /** How much counts vary about the model. */
    public enum Spread {
        /** As much as Pearson's X²/df says, but no less than Poisson. */
        AT_LEAST_POISSON,
        /** As Poisson counts do. */
        POISSON
    }

    /** {@return 95 % intervals, widened for counts that vary more than Poisson} */
    public static TrendSettings usual() {
        return new TrendSettings(0.95, Spread.AT_LEAST_POISSON);
    }
}

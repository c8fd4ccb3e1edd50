package org.ouzelbook.stats.estimator.trend;

import org.ouzelbook.stats.estimator.Estimate;

/**
 * How a trend is judged.
 *
 * @param level of the intervals, between 0 and 1
 * @param spread how much counts are taken to vary about the model
 * @param serial whether counts of successive seasons at a site may be alike beyond the model
 * @param emptySitesCount whether counts at sites that never had any birds add to the degrees of freedom
 */
public record TrendSettings(double level, Spread spread, boolean serial, boolean emptySitesCount) {
    /**
     * Checks the settings.
     *
     * @throws IllegalArgumentException if the level is not between 0 and 1, or serial correlation is asked for beside the
     *     negative binomial law
     */
    public TrendSettings {
        Estimate.tail(level);
        if (serial && spread == Spread.NEGATIVE_BINOMIAL) {
            throw new IllegalArgumentException("Serial correlation is not worked out for the negative binomial law");
        }
    }

    /**
     * Sets level and spread, with neither serial correlation nor empty sites.
     *
     * @param level of the intervals, between 0 and 1
     * @param spread how much counts are taken to vary about the model
     */
    public TrendSettings(double level, Spread spread) {
        this(level, spread, false, false);
    }

    /** How much counts vary about the model. */
    public enum Spread {
        /** As much as Pearson's X²/df says, but no less than Poisson. */
        AT_LEAST_POISSON,
        /** As Poisson counts do. */
        POISSON,
        /** By the mean and a multiple of its square, which is estimated: much where many are. */
        NEGATIVE_BINOMIAL
    }

    /** {@return 95 % intervals, widened for counts that vary more than Poisson} */
    public static TrendSettings usual() {
        return new TrendSettings(0.95, Spread.AT_LEAST_POISSON);
    }
}

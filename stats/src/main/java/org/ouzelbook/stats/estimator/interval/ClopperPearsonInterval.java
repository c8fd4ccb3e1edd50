package org.ouzelbook.stats.estimator.interval;

import org.apache.commons.math3.special.Beta;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;

/**
 * Clopper and Pearson's exact interval for a proportion.
 *
 * <p>Each limit is the proportion for which a count as high, or as low, as the one seen has probability {@code (1 − level)/2}:
 * the quantiles of Beta(k, n − k + 1) and Beta(k + 1, n − k). It covers at least the level, usually more.
 *
 * <p>Source: C. J. Clopper and E. S. Pearson (1934), Biometrika 26:404–413; method 5 of R. G. Newcombe (1998), Stat. Med.
 * 17:857–872.
 */
public final class ClopperPearsonInterval {
    private ClopperPearsonInterval() {}

    /**
     * {@return the proportion with its interval, or that there were no trials}
     *
     * @param successes 0 or more, up to {@code trials}
     * @param trials 0 or more
     * @param level the interval's level, between 0 and 1
     * @throws IllegalArgumentException if a number is out of its range
     */
    public static Answer<Estimate> of(long successes, long trials, double level) {
        double tail = Estimate.tail(level);
        return Proportion.of(successes, trials, level, Method.CLOPPER_PEARSON, (k, n) -> lower(k, n, tail));
    }

    private static double lower(double k, double n, double tail) {
        return k == 0 ? 0 : MonotoneRoot.of(p -> Beta.regularizedBeta(p, k, n - k + 1), tail, 0, 1);
    }
}

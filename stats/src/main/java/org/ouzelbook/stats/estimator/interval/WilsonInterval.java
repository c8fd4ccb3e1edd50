package org.ouzelbook.stats.estimator.interval;

import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.ReferenceLaw;

/**
 * Wilson's score interval for a proportion, without continuity correction.
 *
 * <p>With {@code p = successes / trials} and {@code z} the normal quantile for the level, the limits are
 *
 * <pre>{@code (p + z²/2n ± z √(p(1−p)/n + z²/4n²)) / (1 + z²/n)}</pre>
 *
 * <p>They lie in [0, 1] for every input, and the interval has positive width at 0 and at n successes. Coverage is close to
 * nominal on average, and lower near 0 and 1.
 *
 * <p>Source: E. B. Wilson (1927), J. Am. Stat. Assoc. 22:209–212; method 3 of R. G. Newcombe (1998), Stat. Med. 17:857–872,
 * whose Table I the tests reproduce.
 */
public final class WilsonInterval {
    private WilsonInterval() {}

    /**
     * {@return the proportion with its interval, or that there were no trials}
     *
     * @param successes 0 or more, up to {@code trials}
     * @param trials 0 or more
     * @param level the interval's level, between 0 and 1
     * @throws IllegalArgumentException if a number is out of its range
     */
    public static Answer<Estimate> of(long successes, long trials, double level) {
        double z = ReferenceLaw.NORMAL.halfWidth(level);
        return Proportion.of(successes, trials, level, Method.WILSON, (k, n) -> lower(k, n, z));
    }

    /** Rationalised, so that nothing cancels where k is much smaller than n: 2kp / (2k + z² + z √(z² + 4k(1−p))). */
    private static double lower(double k, double n, double z) {
        double p = k / n;
        return k == 0 ? 0 : 2 * k * p / (2 * k + z * z + z * Math.sqrt(z * z + 4 * k * (1 - p)));
    }
}

package org.ouzelbook.stats.estimator.rate;

import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.special.Beta;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.interval.ClopperPearsonInterval;

/**
 * Exact conditional comparison of two Poisson rates.
 *
 * <p>Given their sum, the first of two Poisson counts is binomial with success probability {@code ρt₁ / (ρt₁ + t₂)}, where
 * {@code ρ} is the ratio of the rates and {@code t₁, t₂} the exposures. So the limits of the ratio follow from Clopper and
 * Pearson's limits of that probability, and the p-value of {@code ρ = 1} is twice the smaller binomial tail, at most 1. The two
 * agree: the interval leaves out 1 exactly where p is below 1 − level.
 *
 * <p>A count of zero leaves one limit: with the first zero the ratio is 0 and has an upper limit; with the second zero it is
 * infinite and has a lower limit. It assumes that counts are Poisson; territories of neighbours are not quite independent.
 *
 * <p>Source: J. Przyborowski and H. Wilenski (1940), Biometrika 31:313–323.
 *
 * @param ratio first rate over second rate, resting on both counts together; not estimable where both counts are zero
 * @param p two-sided p-value of equal rates; 1 where both counts are zero
 */
public record RateComparison(Answer<Estimate> ratio, double p) {
    /**
     * {@return the comparison, or that one of the rates has no exposure}
     *
     * @param firstCount 0 or more
     * @param firstExposure km, days or whatever it was counted over; 0 or more and finite
     * @param secondCount 0 or more
     * @param secondExposure in the unit of the first
     * @param level the interval's level, between 0 and 1
     * @throws IllegalArgumentException if a number is out of its range
     */
    public static Answer<RateComparison> of(
            long firstCount, double firstExposure, long secondCount, double secondExposure, double level) {
        Estimate.tail(level);
        check(firstCount, firstExposure);
        check(secondCount, secondExposure);
        if (firstExposure == 0 || secondExposure == 0) {
            return Answer.notEstimable(Reason.NO_EXPOSURE);
        }
        if (firstCount + secondCount == 0) {
            return Answer.of(new RateComparison(Answer.notEstimable(Reason.BOTH_COUNTS_ZERO), 1));
        }
        double scale = secondExposure / firstExposure;
        Estimate ratio = new Estimate(
                scale * firstCount / secondCount,
                OptionalDouble.empty(),
                scale * lowerOdds(firstCount, secondCount, level),
                scale / lowerOdds(secondCount, firstCount, level),
                level,
                firstCount + secondCount,
                Method.CONDITIONAL_RATE_RATIO,
                firstCount == 0
                        ? List.of(Caution.of(Reason.FIRST_COUNT_ZERO))
                        : secondCount == 0 ? List.of(Caution.of(Reason.SECOND_COUNT_ZERO)) : List.of());
        double share = firstExposure / (firstExposure + secondExposure);
        double p =
                2 * Math.min(upperTail(firstCount, secondCount, share), upperTail(secondCount, firstCount, 1 - share));
        return Answer.of(new RateComparison(Answer.of(ratio), Math.min(1, p)));
    }

    private static void check(long count, double exposure) {
        if (count < 0 || !(exposure >= 0 && exposure < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "Count and exposure must be finite and 0 or more, but were " + count + " and " + exposure);
        }
    }

    private static double lowerOdds(long successes, long failures, double level) {
        double lower = ClopperPearsonInterval.of(successes, successes + failures, level)
                .found()
                .orElseThrow()
                .lower();
        return lower / (1 - lower);
    }

    /** The probability of as many successes or more. */
    private static double upperTail(long successes, long failures, double probability) {
        return successes == 0 ? 1 : Beta.regularizedBeta(probability, (double) successes, failures + 1.0);
    }
}

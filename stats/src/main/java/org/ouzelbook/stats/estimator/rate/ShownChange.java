package org.ouzelbook.stats.estimator.rate;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.special.Beta;
import org.ouzelbook.stats.estimator.Estimate;

/**
 * What change from one Poisson rate to another the exact conditional comparison would have shown.
 *
 * <p>Given the sum of both counts the second is binomial, so the power is the sum, over the Poisson law of that sum, of the probability
 * that the binomial count falls where the two-sided p is below 1 − level: exact, but for sums beyond eight standard deviations.
 *
 * @param level a comparison at this level, between 0 and 1
 * @param expected the first count as it is expected; above 0 and at most {@value #MOST}
 * @param exposureRatio exposure of the second count over that of the first; above 0
 */
public record ShownChange(double level, double expected, double exposureRatio) {
    /** Larger counts show changes too small to matter here. */
    public static final double MOST = 100_000;

    private static final double LARGEST_RISE = 100;

    /**
     * Checks the numbers.
     *
     * @throws IllegalArgumentException if one is out of its range
     */
    public ShownChange {
        Estimate.tail(level);
        if (!(expected > 0 && expected <= MOST && exposureRatio > 0 && exposureRatio < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "No change can be shown from " + expected + " with exposures as " + exposureRatio);
        }
    }

    /**
     * {@return the probability that a change would be shown, on the right side}
     *
     * @param ratio second rate over first; 0 or more
     */
    public double power(double ratio) {
        double second = expected * exposureRatio * ratio;
        double mean = expected + second;
        double share = second / mean;
        double equal = exposureRatio / (1 + exposureRatio);
        PoissonDistribution sums = new PoissonDistribution(mean);
        int from = (int) Math.max(0, Math.floor(mean - 8 * Math.sqrt(mean) - 1));
        int to = (int) Math.ceil(mean + 8 * Math.sqrt(mean) + 20);
        double power = 0;
        for (int sum = from; sum <= to; sum++) {
            power += sums.probability(sum) * (ratio < 1 ? low(sum, share, equal) : low(sum, 1 - share, 1 - equal));
        }
        return power;
    }

    /** The probability of a binomial count so small that it would be a surprise at equal rates. */
    private double low(int sum, double share, double equal) {
        double tail = Estimate.tail(level);
        int below = -1;
        int above = sum;
        while (above - below > 1) {
            int middle = (above + below) / 2;
            if (atMost(middle, sum, equal) < tail) {
                below = middle;
            } else {
                above = middle;
            }
        }
        return below < 0 ? 0 : atMost(below, sum, share);
    }

    private static double atMost(int count, int trials, double probability) {
        return count >= trials ? 1 : 1 - Beta.regularizedBeta(probability, count + 1.0, (double) trials - count);
    }

    /**
     * {@return the ratio of the smallest fall that would be shown; empty if not even a fall to nothing would be}
     *
     * @param probability with this probability, between 0 and 1
     */
    public OptionalDouble fall(double probability) {
        return power(0) < probability ? OptionalDouble.empty() : OptionalDouble.of(crossing(probability, 0, 1));
    }

    /**
     * {@return the ratio of the smallest rise that would be shown; empty if not even a hundredfold rise would be}
     *
     * @param probability with this probability, between 0 and 1
     */
    public OptionalDouble rise(double probability) {
        return power(LARGEST_RISE) < probability
                ? OptionalDouble.empty()
                : OptionalDouble.of(crossing(probability, LARGEST_RISE, 1));
    }

    /** Between a ratio that is shown often enough, and 1, which is not. */
    private double crossing(double probability, double shown, double equal) {
        DoubleUnaryOperator power = this::power;
        double near = shown;
        double far = equal;
        for (int step = 0; step < 40; step++) {
            double middle = (near + far) / 2;
            if (power.applyAsDouble(middle) >= probability) {
                near = middle;
            } else {
                far = middle;
            }
        }
        return near;
    }
}

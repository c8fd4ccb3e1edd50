package org.ouzelbook.stats.estimator.interval;

import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.special.Gamma;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;

/**
 * Garwood's exact interval for a Poisson count, or for the rate count / exposure.
 *
 * <p>Each limit is the mean for which a count as high, or as low, as the one seen has probability {@code (1 − level)/2}: half
 * the χ² quantiles with 2n and 2n + 2 degrees of freedom. It covers at least the level, usually more, if counts are Poisson:
 * things counted independently, at one rate.
 *
 * <p>Source: F. Garwood (1936), Biometrika 28:437–442.
 */
public final class GarwoodInterval {
    private GarwoodInterval() {}

    /**
     * {@return the expected count with its interval}
     *
     * @param count what was counted; 0 or more
     * @param level the interval's level, between 0 and 1
     * @throws IllegalArgumentException if a number is out of its range
     */
    public static Estimate of(long count, double level) {
        double tail = Estimate.tail(level);
        if (count < 0) {
            throw new IllegalArgumentException("A count must be 0 or more, but was " + count);
        }
        return new Estimate(
                count,
                count == 0 ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt((double) count)),
                count == 0 ? 0 : quantile((double) count, tail),
                quantile(count + 1.0, 1 - tail),
                level,
                count,
                Method.GARWOOD,
                count == 0 ? List.of(Caution.of(Reason.AT_BOUNDARY)) : List.of());
    }

    /**
     * {@return the rate with its interval, or that there was no exposure}
     *
     * @param count what was counted; 0 or more
     * @param exposure km, days or whatever it was counted over; 0 or more and finite
     * @param level the interval's level, between 0 and 1
     * @throws IllegalArgumentException if a number is out of its range
     */
    public static Answer<Estimate> of(long count, double exposure, double level) {
        if (!(exposure >= 0 && exposure < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("Exposure must be finite and 0 or more, but was " + exposure);
        }
        Estimate mean = of(count, level);
        if (exposure == 0) {
            return Answer.notEstimable(Reason.NO_EXPOSURE);
        }
        OptionalDouble error = mean.standardError();
        return Answer.of(new Estimate(
                mean.value() / exposure,
                error.isEmpty() ? error : OptionalDouble.of(error.getAsDouble() / exposure),
                mean.lower() / exposure,
                mean.upper() / exposure,
                level,
                count,
                Method.GARWOOD,
                mean.warnings()));
    }

    /** The mean at which a gamma law of this shape has this much probability below it. */
    private static double quantile(double shape, double probability) {
        double high = shape + 1;
        while (Gamma.regularizedGammaP(shape, high) < probability) {
            high *= 2;
        }
        return MonotoneRoot.of(x -> Gamma.regularizedGammaP(shape, x), probability, 0, high);
    }
}

package org.ouzelbook.stats.estimator;

import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.RealDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * The law that an estimate, less its true value and divided by its standard error, is taken to follow: normal, or Student's t
 * where the variance itself was estimated.
 *
 * @param degreesOfFreedom of Student's t, above 0 and perhaps no whole number; empty for the normal law
 */
public record ReferenceLaw(OptionalDouble degreesOfFreedom) {
    /** The standard normal law. */
    public static final ReferenceLaw NORMAL = new ReferenceLaw(OptionalDouble.empty());

    private static final double AS_GOOD_AS_NORMAL = 1e6;

    /**
     * Checks the degrees of freedom.
     *
     * @throws IllegalArgumentException if they are not above 0
     */
    public ReferenceLaw {
        if (!(degreesOfFreedom.orElse(1) > 0)) {
            throw new IllegalArgumentException("Student's t needs more than 0 degrees of freedom");
        }
    }

    /**
     * {@return Student's t}
     *
     * @param degreesOfFreedom above 0; without end, or beyond a million, the normal law
     */
    public static ReferenceLaw student(double degreesOfFreedom) {
        return degreesOfFreedom > AS_GOOD_AS_NORMAL ? NORMAL : new ReferenceLaw(OptionalDouble.of(degreesOfFreedom));
    }

    /**
     * {@return the half-width of a two-sided interval, in standard errors}
     *
     * @param level the interval's level
     * @throws IllegalArgumentException if the level is not between 0 and 1
     */
    public double halfWidth(double level) {
        return -quantile(Estimate.tail(level));
    }

    /**
     * {@return the value below which the law lies with this probability}
     *
     * @param probability between 0 and 1
     */
    public double quantile(double probability) {
        return law().inverseCumulativeProbability(probability);
    }

    /**
     * {@return the probability of this value or less}
     *
     * @param value a number of standard errors
     */
    public double cumulative(double value) {
        return law().cumulativeProbability(value);
    }

    private RealDistribution law() {
        return degreesOfFreedom.isEmpty()
                ? new NormalDistribution(null, 0, 1)
                : new TDistribution(null, degreesOfFreedom.getAsDouble());
    }
}

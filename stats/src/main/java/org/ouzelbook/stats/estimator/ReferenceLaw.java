package org.ouzelbook.stats.estimator;

import java.util.OptionalLong;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.distribution.RealDistribution;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * The law that an estimate, less its true value and divided by its standard error, is taken to follow: normal, or Student's t
 * where the variance itself was estimated.
 *
 * @param degreesOfFreedom of Student's t; empty for the normal law
 */
public record ReferenceLaw(OptionalLong degreesOfFreedom) {
    /** The standard normal law. */
    public static final ReferenceLaw NORMAL = new ReferenceLaw(OptionalLong.empty());

    /**
     * Checks the degrees of freedom.
     *
     * @throws IllegalArgumentException if they are not above 0
     */
    public ReferenceLaw {
        if (degreesOfFreedom.orElse(1) < 1) {
            throw new IllegalArgumentException("Student's t needs 1 degree of freedom or more");
        }
    }

    /**
     * {@return Student's t}
     *
     * @param degreesOfFreedom 1 or more
     */
    public static ReferenceLaw student(long degreesOfFreedom) {
        return new ReferenceLaw(OptionalLong.of(degreesOfFreedom));
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
                : new TDistribution(null, degreesOfFreedom.getAsLong());
    }
}

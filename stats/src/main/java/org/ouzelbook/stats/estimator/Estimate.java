package org.ouzelbook.stats.estimator;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * A number and how sure it is.
 *
 * @param value the estimate; infinite only where a ratio's second count is zero, never NaN
 * @param standardError its standard error; empty where it has no meaning, as at the boundary or for a skewed law
 * @param lower lower limit; infinite where the data set none
 * @param upper upper limit; infinite where the data set none
 * @param level the interval's level, between 0 and 1
 * @param n how many observations it rests on; each estimator says what they are
 * @param method how it was computed, and where that was published
 * @param warnings what would mislead a reader who did not know it
 */
public record Estimate(
        double value,
        OptionalDouble standardError,
        double lower,
        double upper,
        double level,
        long n,
        Method method,
        List<Caution> warnings) {
    /**
     * Copies the warnings and checks the numbers.
     *
     * @throws IllegalArgumentException if the limits do not hold the value, a number is NaN, the standard error is negative or
     *     infinite, the level is not between 0 and 1, or {@code n} is negative
     */
    public Estimate {
        warnings = List.copyOf(warnings);
        tail(level);
        double error = standardError.orElse(0);
        if (!(lower <= value && value <= upper && error >= 0 && error < Double.POSITIVE_INFINITY && n >= 0)) {
            throw new IllegalArgumentException("Not an estimate: " + value + " (" + lower + " to " + upper
                    + "), standard error " + standardError + ", n " + n);
        }
    }

    /**
     * {@return an estimate with limits as far to either side as its law and standard error say}
     *
     * @param value the estimate
     * @param error its standard error, 0 or more
     * @param law what it follows, less its true value and over its standard error
     * @param level the interval's level, between 0 and 1
     * @param n how many observations it rests on
     * @param method how it was computed
     * @param warnings what would mislead a reader who did not know it
     */
    public static Estimate symmetric(
            double value, double error, ReferenceLaw law, double level, long n, Method method, List<Caution> warnings) {
        double halfWidth = law.halfWidth(level) * error;
        return new Estimate(
                value, OptionalDouble.of(error), value - halfWidth, value + halfWidth, level, n, method, warnings);
    }

    /**
     * {@return the probability outside a two-sided interval, on either side}
     *
     * @param level the interval's level
     * @throws IllegalArgumentException if the level is not between 0 and 1
     */
    public static double tail(double level) {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("A level must lie between 0 and 1, but was " + level);
        }
        return (1 - level) / 2;
    }

    /**
     * {@return this estimate on another scale: value and limits are mapped, and the standard error, which has no meaning
     * there, is dropped}
     *
     * @param scale a monotone function; a falling one swaps the limits
     */
    public Estimate on(DoubleUnaryOperator scale) {
        double a = scale.applyAsDouble(lower);
        double b = scale.applyAsDouble(upper);
        return new Estimate(
                scale.applyAsDouble(value),
                OptionalDouble.empty(),
                Math.min(a, b),
                Math.max(a, b),
                level,
                n,
                method,
                warnings);
    }
}

package org.ouzelbook.stats.estimator.trend;

import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.ReferenceLaw;

/**
 * Two trends of different waters held against each other: the second slope less the first, on the log scale.
 *
 * <p>Its variance is the sum of theirs. Where limits come from Student's t, so do these, with Welch and Satterthwaite's degrees of freedom
 * {@code (v₁ + v₂)²/(v₁²/f₁ + v₂²/f₂)}. Assumes that the two sets of counts are independent. That one slope differs from 0 and the other
 * does not is no evidence that they differ from each other.
 *
 * <p>Source: B. L. Welch (1947), Biometrika 34:28–35 (cited from memory).
 *
 * @param slope the difference, a year
 * @param p two-sided, of equal slopes
 */
public record TrendDifference(Estimate slope, double p) {
    /**
     * {@return how much faster the second rises than the first}
     *
     * @param first a trend
     * @param second a trend of other counts, with limits of the same level
     */
    public static TrendDifference of(YearlyTrend first, YearlyTrend second) {
        double variance = square(error(first)) + square(error(second));
        double error = Math.sqrt(variance);
        ReferenceLaw law = ReferenceLaw.student(square(variance) / (ofItsOwn(first) + ofItsOwn(second)));
        double value = second.slope().value() - first.slope().value();
        return new TrendDifference(
                Estimate.symmetric(
                        value,
                        error,
                        law,
                        first.slope().level(),
                        first.slope().n() + second.slope().n(),
                        second.slope().method(),
                        List.of()),
                error == 0 ? 1 : 2 * law.cumulative(-Math.abs(value) / error));
    }

    private static double error(YearlyTrend trend) {
        return trend.slope().standardError().orElseThrow();
    }

    private static double ofItsOwn(YearlyTrend trend) {
        OptionalDouble freedom = trend.law().degreesOfFreedom();
        return freedom.isEmpty() ? 0 : square(square(error(trend))) / freedom.getAsDouble();
    }

    private static double square(double number) {
        return number * number;
    }

    /** {@return by how many percent a year the second changes more than the first; the upper limit is infinite if a hundredfold away} */
    public Estimate percentPerYear() {
        return PercentChange.of(slope, 1);
    }
}

package org.ouzelbook.stats.estimator.trend;

import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.ReferenceLaw;

/**
 * How wide a band must be to hold a whole curve: {@code κ/π (1 + c²/ν)^(−ν/2) + P(|t| > c) = 1 − level}, with κ the length of the
 * path on the unit sphere that the standardised error of the curve takes from its first year to its last.
 *
 * @param pathLength κ
 */
record BandWidth(double pathLength) {
    private static final int STEPS = 500;
    private static final double PRECISE = 1e-10;

    static BandWidth of(RealMatrix covariance, SplineBasis basis, double first, double last) {
        RealVector origin = new ArrayRealVector(basis.at(first));
        RealVector before = new ArrayRealVector(basis.at(first + (last - first) / STEPS)).subtract(origin);
        double varianceBefore = before.dotProduct(covariance.operate(before));
        double length = 0;
        for (int step = 2; step <= STEPS; step++) {
            RealVector here = new ArrayRealVector(basis.at(first + step * (last - first) / STEPS)).subtract(origin);
            RealVector spread = covariance.operate(here);
            double variance = here.dotProduct(spread);
            double correlation = before.dotProduct(spread) / Math.sqrt(variance * varianceBefore);
            length += Math.acos(Math.max(-1, Math.min(1, correlation)));
            before = here;
            varianceBefore = variance;
        }
        return new BandWidth(length);
    }

    double inStandardErrors(ReferenceLaw law, double level) {
        double outside = 2 * Estimate.tail(level);
        double low = 0;
        double high = law.halfWidth(1 - outside * PRECISE);
        while (high - low > PRECISE * high) {
            double middle = (low + high) / 2;
            if (probabilityOutside(law, middle) > outside) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return high;
    }

    private double probabilityOutside(ReferenceLaw law, double width) {
        double squared = width * width;
        double leaving = law.degreesOfFreedom().isEmpty()
                ? Math.exp(-squared / 2)
                : Math.pow(
                        1 + squared / law.degreesOfFreedom().getAsDouble(),
                        -law.degreesOfFreedom().getAsDouble() / 2);
        return pathLength / Math.PI * leaving + 2 * law.cumulative(-width);
    }
}

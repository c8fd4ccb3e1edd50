package org.ouzelbook.stats.estimator.trend;

import java.util.function.DoubleUnaryOperator;

/** The place between two ends at which a function with one peak is highest. */
final class GoldenSection {
    private static final double SHARE = (Math.sqrt(5) - 1) / 2;

    private GoldenSection() {}

    static double highest(DoubleUnaryOperator height, double from, double to, double width) {
        double low = from;
        double high = to;
        double left = high - SHARE * (high - low);
        double right = low + SHARE * (high - low);
        double atLeft = height.applyAsDouble(left);
        double atRight = height.applyAsDouble(right);
        while (high - low > width) {
            if (atLeft >= atRight) {
                high = right;
                right = left;
                atRight = atLeft;
                left = high - SHARE * (high - low);
                atLeft = height.applyAsDouble(left);
            } else {
                low = left;
                left = right;
                atLeft = atRight;
                right = low + SHARE * (high - low);
                atRight = height.applyAsDouble(right);
            }
        }
        return (low + high) / 2;
    }
}

package org.ouzelbook.stats.estimator.interval;

import java.util.function.DoubleUnaryOperator;

/** The argument at which a rising function takes a value, by bisection to the last digits of a double. */
final class MonotoneRoot {
    private static final double RELATIVE_WIDTH = 4e-16;

    private MonotoneRoot() {}

    static double of(DoubleUnaryOperator rising, double value, double from, double to) {
        double low = from;
        double high = to;
        while (high - low > RELATIVE_WIDTH * high) {
            double middle = (low + high) / 2;
            if (rising.applyAsDouble(middle) < value) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }
}

package org.ouzelbook.stats.estimator.trend;

import java.util.stream.IntStream;
import org.apache.commons.math3.special.Gamma;

/** The logarithm of n!, of small numbers from a table. */
final class LogFactorial {
    private static final double[] SMALL =
            IntStream.range(0, 1000).mapToDouble(n -> Gamma.logGamma(n + 1.0)).toArray();

    private LogFactorial() {}

    static double of(long n) {
        return n < SMALL.length ? SMALL[(int) n] : Gamma.logGamma(n + 1.0);
    }
}

package org.ouzelbook.stats.estimator.interval;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleBinaryOperator;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;

/** What every interval for a proportion shares: its checks, its boundary, and that failures mirror successes. */
final class Proportion {
    private Proportion() {}

    static Answer<Estimate> of(
            long successes, long trials, double level, Method method, DoubleBinaryOperator lowerLimit) {
        if (successes < 0 || trials < successes) {
            throw new IllegalArgumentException(
                    "Successes must lie between 0 and the number of trials, but were " + successes + " of " + trials);
        }
        if (trials == 0) {
            return Answer.notEstimable(Reason.NO_TRIALS);
        }
        double k = successes;
        double n = trials;
        double p = k / n;
        boolean atBoundary = successes == 0 || successes == trials;
        return Answer.of(new Estimate(
                p,
                atBoundary ? OptionalDouble.empty() : OptionalDouble.of(Math.sqrt(p * (1 - p) / n)),
                Math.min(p, lowerLimit.applyAsDouble(k, n)),
                Math.max(p, 1 - lowerLimit.applyAsDouble(n - k, n)),
                level,
                trials,
                method,
                atBoundary ? List.of(Caution.of(Reason.AT_BOUNDARY)) : List.of()));
    }
}

package org.ouzelbook.stats.survey;

import java.util.List;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.ReferenceLaw;

/**
 * The mean of some counts, with limits from Student's t.
 *
 * @param mean the mean
 * @param standardError its standard error
 * @param lower lower limit, never below 0
 * @param upper upper limit
 * @param level level of the limits
 * @param n how many counts
 */
public record SampleMean(double mean, double standardError, double lower, double upper, double level, int n) {
    private static final int AT_LEAST = 2;

    static Answer<SampleMean> of(List<Integer> counts, double level) {
        int n = counts.size();
        if (n < AT_LEAST) {
            return Answer.notEstimable(Reason.TOO_FEW_VALUES, n, AT_LEAST);
        }
        double mean = counts.stream().mapToInt(Integer::intValue).average().orElseThrow();
        double squares = counts.stream()
                .mapToDouble(count -> (count - mean) * (count - mean))
                .sum();
        double error = Math.sqrt(squares / (n - 1) / n);
        double half = ReferenceLaw.student(n - 1).halfWidth(level) * error;
        return Answer.of(new SampleMean(mean, error, Math.max(0, mean - half), mean + half, level, n));
    }
}

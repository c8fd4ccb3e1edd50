package org.ouzelbook.stats.estimator.power;

import java.util.List;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.trend.LineTrend;
import org.ouzelbook.stats.estimator.trend.SeasonCount;
import org.ouzelbook.stats.estimator.trend.TrendSettings;
import org.ouzelbook.stats.estimator.trend.TrendSettings.Spread;

/**
 * How much good and bad years differ beyond chance, on the log scale, from yearly counts of one series.
 *
 * <p>About a log-linear trend with means μ, counts of log-normal years of standard deviation σ have the variance {@code μ + μ²(e^σ² − 1)}.
 * σ is where Pearson’s statistic by that variance equals its degrees of freedom, or another quantile of χ² for its limits; 0 where counts
 * vary no more than Poisson counts. The means are those of the Poisson line. Territories vary less than Poisson counts, so σ tends to be
 * too small, and with few years it is hardly known: look at the limits.
 *
 * <p>Source: method of moments as of N. E. Breslow (1984), Applied Statistics 33:38–44, as cited from memory; the limits are
 * common practice without source.
 *
 * @param sigma standard deviation of years on the log scale
 * @param lower lower limit
 * @param upper upper limit; at most {@value #LARGEST}
 * @param seasons how many counts it rests on
 */
public record YearNoise(double sigma, double lower, double upper, int seasons) {
    /** Fewer seasons tell nothing of years. Common practice, no source. */
    public static final int SEASONS = 6;

    private static final double LARGEST = 3;

    /**
     * {@return the noise of years, or why these counts tell none}
     *
     * @param counts one a season of one series; seasons without a count may be left out
     * @param level level of the limits, between 0 and 1
     */
    public static Answer<YearNoise> of(List<SeasonCount> counts, double level) {
        if (counts.size() < SEASONS) {
            return Answer.notEstimable(Reason.TOO_FEW_VALUES, counts.size(), SEASONS);
        }
        Answer<LineTrend> line = LineTrend.of(counts, new TrendSettings(level, Spread.POISSON));
        if (line instanceof Answer.NotEstimable<LineTrend> not) {
            return new Answer.NotEstimable<>(not.because());
        }
        LineTrend found = line.found().orElseThrow();
        double[] means = found.totals().stream()
                .mapToDouble(total -> total.expected().value())
                .toArray();
        double[] observed = found.totals().stream()
                .mapToDouble(total -> (double) total.observed())
                .toArray();
        double freedom = means.length - 2.0;
        ChiSquaredDistribution law = new ChiSquaredDistribution(null, freedom);
        double tail = (1 - level) / 2;
        return Answer.of(new YearNoise(
                sigma(observed, means, freedom),
                sigma(observed, means, law.inverseCumulativeProbability(1 - tail)),
                sigma(observed, means, law.inverseCumulativeProbability(tail)),
                means.length));
    }

    /** The root of a falling function, kept between 0 and the largest. */
    private static double sigma(double[] observed, double[] means, double wanted) {
        UnivariateFunction excess = sigma -> pearson(observed, means, sigma) - wanted;
        if (excess.value(0) <= 0) {
            return 0;
        }
        return excess.value(LARGEST) >= 0 ? LARGEST : new BrentSolver(1e-10).solve(200, excess, 0, LARGEST);
    }

    private static double pearson(double[] observed, double[] means, double sigma) {
        double added = Math.expm1(sigma * sigma);
        double[] terms = new double[means.length];
        for (int i = 0; i < means.length; i++) {
            double away = observed[i] - means[i];
            terms[i] = away * away / (means[i] + means[i] * means[i] * added);
        }
        return DoubleStream.of(terms).sum();
    }
}

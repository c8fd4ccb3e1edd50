package org.ouzelbook.stats.estimator.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.RealMatrix;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;

/**
 * A straight line on the log scale: the same percentage every year, at every site.
 *
 * <p>{@code log μᵢⱼ = αᵢ + log kmᵢⱼ + β·yearⱼ}, fitted to the counts that were made; see {@link TrendFit} for its limits. Not for
 * series that turn: their line is an average that no year followed.
 *
 * @param slope β, on the log scale, a year; rests on the counts at sites with birds
 * @param fit how well the line fits
 * @param totals the seasons that were counted
 * @param errorWithoutTrend the standard error that the slope would have at these sites and seasons if it were 0
 */
public record LineTrend(Estimate slope, TrendFit fit, List<SeasonTotal> totals, double errorWithoutTrend) {
    /** Copies the list. */
    public LineTrend {
        totals = List.copyOf(totals);
    }

    /**
     * {@return the trend, or why these counts show none}
     *
     * @param counts at most one for each site and season
     * @param settings how to judge
     * @throws IllegalArgumentException if a site has two counts in a season
     */
    public static Answer<LineTrend> of(List<SeasonCount> counts, TrendSettings settings) {
        CountGrid grid = CountGrid.of(counts);
        Optional<Caution> refusal = Refusals.ofAnyTrend(grid).or(() -> Refusals.ofALine(grid));
        if (refusal.isPresent()) {
            return new Answer.NotEstimable<>(refusal.get());
        }
        double[][] years = IntStream.range(0, grid.size())
                .mapToObj(season -> new double[] {grid.year(season) - grid.year(0)})
                .toArray(double[][]::new);
        Optional<SiteEffectsFit> found = SiteEffectsFit.of(grid, years);
        Optional<RealMatrix> withoutTrend = SiteEffectsFit.covarianceWithoutEffect(grid, years);
        if (found.isEmpty() || withoutTrend.isEmpty()) {
            return Answer.notEstimable(Reason.NOT_CONVERGED);
        }
        SiteEffectsFit fit = found.get();
        TrendFit quality = TrendFit.of(fit, settings.spread());
        List<Caution> cautions = new ArrayList<>(quality.cautions());
        if (!grid.gaps().isEmpty()) {
            cautions.add(Caution.of(Reason.SEASONS_NOT_COUNTED, grid.gaps()));
        }
        double slope = fit.coefficients().getEntry(0);
        double error = Math.sqrt(quality.scale() * fit.covariance().getEntry(0, 0));
        double halfWidth = quality.law().halfWidth(settings.level()) * error;
        Estimate estimate = new Estimate(
                slope,
                OptionalDouble.of(error),
                slope - halfWidth,
                slope + halfWidth,
                settings.level(),
                quality.counts(),
                quality.method(),
                cautions);
        return Answer.of(new LineTrend(
                estimate,
                quality,
                SeasonTotal.of(fit, quality, settings.level()),
                Math.sqrt(quality.scale() * withoutTrend.get().getEntry(0, 0))));
    }

    /** {@return the first season counted} */
    public int firstSeason() {
        return totals.get(0).season();
    }

    /** {@return the last season counted} */
    public int lastSeason() {
        return totals.get(totals.size() - 1).season();
    }

    /** {@return the change in a year, in percent: −5 is a fall by 5 %} */
    public Estimate percentPerYear() {
        return percentBetween(0, 1);
    }

    /** {@return the change from the first season counted to the last, in percent} */
    public Estimate percentOverPeriod() {
        return percentBetween(firstSeason(), lastSeason());
    }

    /**
     * {@return the change along the line between two seasons, in percent}
     *
     * @param from a season
     * @param to another season, usually later
     */
    public Estimate percentBetween(int from, int to) {
        return slope.on(rate -> 100 * Math.expm1(rate * (to - from)));
    }

    /** {@return the probability that numbers fell: that of a slope below 0, if nothing was known before the counts} */
    public double probabilityFalling() {
        return fit.law().cumulative(-slope.value() / slope.standardError().orElseThrow());
    }

    /**
     * {@return the smallest yearly fall and rise that counts at these sites and seasons would show}
     *
     * <p>A slope δ is found, in a two-sided test at 1 − level, with probability {@code power} if {@code |δ| = (q(1 − α/2) +
     * q(power)) · se₀}, with {@code q} the quantiles of the law of the limits and {@code se₀} the standard error without a
     * trend. Wald's test as D. F. Signorini (1991), Biometrika 78:446–450, uses it for Poisson regression; for one site counted
     * every year it is equation 4 of T. Gerrodette (1987), Ecology 68:1364–1372 (both cited from memory).
     *
     * @param power wanted probability of finding it, between 0.5 and 1
     * @throws IllegalArgumentException if the power is out of its range
     */
    public DetectableChange smallestDetectable(double power) {
        if (!(power >= 0.5 && power < 1)) {
            throw new IllegalArgumentException("Power must be 0.5 or more, below 1, but was " + power);
        }
        double slopeFound = (fit.law().halfWidth(slope.level()) + fit.law().quantile(power)) * errorWithoutTrend;
        return new DetectableChange(100 * Math.expm1(-slopeFound), 100 * Math.expm1(slopeFound), power, slope.level());
    }

    /**
     * The smallest yearly change that a survey would show.
     *
     * @param fall in percent a year; negative
     * @param rise in percent a year; positive
     * @param power probability of finding it
     * @param level of the two-sided test
     */
    public record DetectableChange(double fall, double rise, double power, double level) {}
}

package org.ouzelbook.stats.estimator.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.RealMatrix;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.ReferenceLaw;

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
public record LineTrend(Estimate slope, TrendFit fit, List<SeasonTotal> totals, double errorWithoutTrend)
        implements YearlyTrend {
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
        Optional<SiteEffectsFit> found = Fitting.of(grid, years, settings);
        Optional<RealMatrix> withoutTrend = found.flatMap(SiteEffectsFit::covarianceWithoutEffect);
        if (found.isEmpty() || withoutTrend.isEmpty()) {
            return Answer.notEstimable(Reason.NOT_CONVERGED);
        }
        SiteEffectsFit fit = found.get();
        TrendFit quality = TrendFit.of(fit, settings);
        List<Caution> cautions = new ArrayList<>(quality.cautions());
        if (!grid.gaps().isEmpty()) {
            cautions.add(Caution.of(Reason.SEASONS_NOT_COUNTED, grid.gaps()));
        }
        double slope = fit.coefficients().getEntry(0);
        double error = Math.sqrt(quality.scale() * fit.covariance().getEntry(0, 0));
        double halfWidth = quality.law().halfWidth(settings.level()) * error;
        if (halfWidth * (grid.year(grid.size() - 1) - grid.year(0)) > PercentChange.LOOSE) {
            cautions.add(Caution.of(Reason.NO_UPPER_LIMIT));
        }
        Estimate estimate = Estimate.symmetric(
                slope, error, quality.law(), settings.level(), quality.counts(), quality.method(), cautions);
        return Answer.of(new LineTrend(
                estimate,
                quality,
                SeasonTotal.of(fit, quality, settings.level()),
                Math.sqrt(quality.scale() * withoutTrend.get().getEntry(0, 0))));
    }

    @Override
    public ReferenceLaw law() {
        return fit.law();
    }
}

package org.ouzelbook.stats.estimator.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealVector;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;

/**
 * A line on the log scale that changes its slope at chosen seasons: {@code log μᵢⱼ = αᵢ + log kmᵢⱼ + β₀·yearⱼ + Σₖ βₖ·max(0,
 * yearⱼ − cₖ)}.
 *
 * <p>The seasons of change are to be chosen for what is known of the water, before looking at the counts: limits do not allow
 * for a choice by eye.
 *
 * @param pieces the straight pieces, in order
 * @param changes the changes of slope, in order
 * @param fit how well the line fits
 * @param totals the seasons that were counted
 */
public record BentTrend(List<Piece> pieces, List<Change> changes, TrendFit fit, List<SeasonTotal> totals) {
    /** Copies the lists. */
    public BentTrend {
        pieces = List.copyOf(pieces);
        changes = List.copyOf(changes);
        totals = List.copyOf(totals);
    }

    /**
     * A straight piece.
     *
     * @param from its first season
     * @param to its last season
     * @param slope on the log scale, a year
     */
    public record Piece(int from, int to, Estimate slope) {
        /** {@return the change in a year, in percent; its upper limit is infinite if more than a hundredfold away} */
        public Estimate percentPerYear() {
            return PercentChange.of(slope, 1);
        }
    }

    /**
     * A change of slope.
     *
     * @param season where it is
     * @param difference slope after it less slope before it
     * @param p two-sided, of no change
     */
    public record Change(int season, Estimate difference, double p) {}

    /** {@return what would mislead a reader who did not know it} */
    public List<Caution> cautions() {
        boolean open = pieces.stream().anyMatch(piece -> PercentChange.isOpen(piece.slope(), 1));
        return open
                ? Stream.concat(fit.cautions().stream(), Stream.of(Caution.of(Reason.NO_UPPER_LIMIT)))
                        .toList()
                : fit.cautions();
    }

    /**
     * {@return the line, or why these counts show none}
     *
     * @param counts at most one for each site and season
     * @param changes seasons at which the slope changes, each between two with counts; one or more
     * @param settings how to judge
     * @throws IllegalArgumentException if a site has two counts in a season, or there is no change
     */
    public static Answer<BentTrend> of(List<SeasonCount> counts, List<Integer> changes, TrendSettings settings) {
        if (changes.isEmpty()) {
            throw new IllegalArgumentException("A bent line needs a season of change");
        }
        CountGrid grid = CountGrid.of(counts);
        int[] at =
                changes.stream().mapToInt(Integer::intValue).distinct().sorted().toArray();
        Optional<Caution> refusal =
                Refusals.ofAnyTrend(grid).or(() -> Refusals.ofALine(grid)).or(() -> Refusals.ofChanges(grid, at));
        if (refusal.isPresent()) {
            return new Answer.NotEstimable<>(refusal.get());
        }
        double[][] basis = IntStream.range(0, grid.size())
                .mapToObj(season -> row(grid.year(season), grid.year(0), at))
                .toArray(double[][]::new);
        Optional<SiteEffectsFit> found = Fitting.of(grid, basis, settings);
        if (found.isEmpty()) {
            return Answer.notEstimable(Reason.NOT_CONVERGED);
        }
        TrendFit quality = TrendFit.of(found.get(), settings);
        Contrasts contrasts = new Contrasts(found.get(), quality, settings.level());
        return Answer.of(new BentTrend(
                pieces(grid, at, contrasts),
                changes(at, contrasts),
                quality,
                SeasonTotal.of(found.get(), quality, settings.level())));
    }

    private static double[] row(int year, int first, int[] changes) {
        double[] row = new double[changes.length + 1];
        row[0] = year - first;
        for (int k = 0; k < changes.length; k++) {
            row[k + 1] = Math.max(0, year - changes[k]);
        }
        return row;
    }

    private static List<Piece> pieces(CountGrid grid, int[] changes, Contrasts contrasts) {
        List<Piece> pieces = new ArrayList<>();
        double[] sum = new double[changes.length + 1];
        for (int k = 0; k <= changes.length; k++) {
            sum[k] = 1;
            pieces.add(new Piece(
                    k == 0 ? grid.year(0) : changes[k - 1],
                    k == changes.length ? grid.year(grid.size() - 1) : changes[k],
                    contrasts.of(new ArrayRealVector(sum))));
        }
        return pieces;
    }

    private static List<Change> changes(int[] changes, Contrasts contrasts) {
        List<Change> list = new ArrayList<>();
        for (int k = 0; k < changes.length; k++) {
            RealVector picked = new ArrayRealVector(changes.length + 1);
            picked.setEntry(k + 1, 1);
            Estimate difference = contrasts.of(picked);
            OptionalDouble error = difference.standardError();
            double z = Math.abs(difference.value()) / error.orElseThrow();
            list.add(new Change(changes[k], difference, 2 * contrasts.law().cumulative(-z)));
        }
        return list;
    }
}

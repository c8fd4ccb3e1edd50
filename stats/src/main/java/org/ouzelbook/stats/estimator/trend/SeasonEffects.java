package org.ouzelbook.stats.estimator.trend;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealVector;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.interval.GarwoodInterval;
import org.ouzelbook.stats.estimator.trend.CountGrid.Row;

/**
 * Every season at its own height, the same at every site: {@code log μᵢⱼ = αᵢ + log kmᵢⱼ + βⱼ}.
 *
 * <p>It fills missing counts without asking for a straight line. Seasons in which sites with birds were counted and only zeros
 * were found are left out of the fit: they are expected to hold none, and have no effect on the log scale. So are seasons in
 * which no site that ever had birds was counted: they say nothing. See {@link TrendFit} for the limits.
 */
public final class SeasonEffects {
    private final CountGrid all;
    private final SiteEffectsFit model;
    private final TrendFit fit;
    private final double level;

    private SeasonEffects(CountGrid all, SiteEffectsFit model, TrendFit fit, double level) {
        this.all = all;
        this.model = model;
        this.fit = fit;
        this.level = level;
    }

    /**
     * {@return the season effects, or why these counts show none}
     *
     * @param counts at most one for each site and season
     * @param settings how to judge
     * @throws IllegalArgumentException if a site has two counts in a season
     */
    public static Answer<SeasonEffects> of(List<SeasonCount> counts, TrendSettings settings) {
        CountGrid all = CountGrid.of(counts);
        Optional<Caution> refusal = Refusals.ofAnyTrend(all);
        if (refusal.isPresent()) {
            return new Answer.NotEstimable<>(refusal.get());
        }
        CountGrid grid = all.only(all.seasonsWhere(season -> all.observed(season) > 0));
        refusal = Refusals.ofAnyTrend(grid).or(() -> Refusals.ofSeasonEffects(grid));
        if (refusal.isPresent()) {
            return new Answer.NotEstimable<>(refusal.get());
        }
        int seasons = grid.size();
        double[][] basis = new double[seasons][seasons - 1];
        for (int season = 1; season < seasons; season++) {
            basis[season][season - 1] = 1;
        }
        Optional<SiteEffectsFit> model = Fitting.of(grid, basis, settings);
        if (model.isEmpty()) {
            return Answer.notEstimable(Reason.NOT_CONVERGED);
        }
        SeasonEffects effects =
                new SeasonEffects(all, model.get(), TrendFit.of(model.get(), settings), settings.level());
        List<Integer> open = effects.openSeasons();
        return open.size() == seasons ? Answer.notEstimable(Reason.SEASONS_NOT_HELD, open) : Answer.of(effects);
    }

    /** {@return how well the model fits} */
    public TrendFit fit() {
        return fit;
    }

    /** {@return the seasons that have an effect; the first is the one that the others are compared with} */
    public List<Integer> seasons() {
        return model.grid().years(IntStream.range(0, model.grid().size()).toArray());
    }

    /** {@return the seasons in which sites with birds were counted and only zeros were found} */
    public List<Integer> emptySeasons() {
        return all.years(all.seasonsWhere(season -> all.observed(season) == 0 && informed(season)));
    }

    /** Seasons whose total has no upper limit: too few birds hold it, for how much counts vary. */
    private List<Integer> openSeasons() {
        return SeasonTotal.of(model, fit, level).stream()
                .filter(total -> total.expected().upper() == Double.POSITIVE_INFINITY)
                .map(SeasonTotal::season)
                .toList();
    }

    /** {@return what would mislead a reader who did not know it} */
    public List<Caution> cautions() {
        List<Caution> cautions = new ArrayList<>(fit.cautions());
        add(cautions, Reason.EMPTY_SEASONS, emptySeasons());
        add(cautions, Reason.SEASONS_WITHOUT_INFORMATION, all.years(all.seasonsWhere(season -> !informed(season))));
        if (!all.gaps().isEmpty()) {
            cautions.add(Caution.of(Reason.SEASONS_NOT_COUNTED, all.gaps()));
        }
        add(cautions, Reason.SEASONS_WITHOUT_UPPER_LIMIT, openSeasons());
        return cautions;
    }

    private static void add(List<Caution> cautions, Reason reason, List<Integer> seasons) {
        if (!seasons.isEmpty()) {
            cautions.add(Caution.of(reason, seasons));
        }
    }

    private boolean informed(int season) {
        return all.rows().stream().anyMatch(row -> row.counted(season));
    }

    /**
     * {@return the log of the ratio between two seasons at every site; or that one of them has no effect}
     *
     * @param from a season
     * @param to another season
     */
    public Answer<Estimate> logRatio(int from, int to) {
        for (int season : new int[] {from, to}) {
            if (!seasons().contains(season)) {
                return Answer.notEstimable(Reason.SEASON_WITHOUT_EFFECT, season);
            }
        }
        RealVector contrast = effect(to).subtract(effect(from));
        return Answer.of(new Contrasts(model, fit, level).of(contrast));
    }

    /** Picks a season's effect out of the coefficients; the first season has none. */
    private RealVector effect(int season) {
        RealVector picked = new ArrayRealVector(model.coefficients().getDimension());
        int index = seasons().indexOf(season);
        if (index > 0) {
            picked.setEntry(index - 1, 1);
        }
        return picked;
    }

    /**
     * {@return the change between two seasons in percent, its upper limit infinite if more than a hundredfold away; or that one of
     * them has no effect}
     *
     * @param from a season
     * @param to another season
     */
    public Answer<Estimate> percentBetween(int from, int to) {
        return logRatio(from, to).map(ratio -> PercentChange.of(ratio, 1));
    }

    /**
     * {@return the totals of all sites, missing counts filled, in order of seasons}
     *
     * <p>Here the expectation of a season with birds equals what was counted and filled. A season of zeros is expected to hold
     * none, and its upper limit is Garwood's for a count of 0, times the scale, over the share of the expected birds that the
     * counted sites hold. Seasons that say nothing are left out.
     */
    public List<SeasonTotal> totals() {
        List<SeasonTotal> totals = new ArrayList<>(SeasonTotal.of(model, fit, level));
        for (int season : all.seasonsWhere(season -> all.observed(season) == 0 && informed(season))) {
            totals.add(noneFound(season));
        }
        totals.sort(Comparator.comparingInt(SeasonTotal::season));
        return totals;
    }

    private SeasonTotal noneFound(int season) {
        double everywhere = 0;
        double whereCounted = 0;
        int missing = 0;
        for (int i = 0; i < all.rows().size(); i++) {
            Row row = all.rows().get(i);
            Row fitted = model.grid().rows().get(i);
            double expected = model.means(fitted)[0] / fitted.km(0) * row.km(season);
            everywhere += expected;
            whereCounted += row.counted(season) ? expected : 0;
            missing += row.counted(season) ? 0 : 1;
        }
        Estimate none = GarwoodInterval.of(0, level);
        Estimate total = new Estimate(
                0,
                OptionalDouble.empty(),
                0,
                none.upper() * fit.scale() * everywhere / whereCounted,
                level,
                all.counted(season),
                fit.method(),
                none.warnings());
        return new SeasonTotal(all.year(season), 0, all.counted(season), missing, 0, total);
    }
}

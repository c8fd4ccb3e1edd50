package org.ouzelbook.stats.estimator.occupancy;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.DoublePredicate;
import java.util.stream.IntStream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.likelihood.LikelihoodFit;
import org.ouzelbook.stats.estimator.likelihood.Logit;
import org.ouzelbook.stats.estimator.likelihood.Parts;

/**
 * How well an occupancy model fits, by parametric bootstrap: visits are simulated from the fitted model, the same visits missing,
 * and fitted again; the observed statistic is compared with theirs.
 *
 * <p>Source: D. I. MacKenzie and L. L. Bailey (2004), J. Agric. Biol. Environ. Stat. 9:300–318.
 *
 * @param chiSquare Pearson’s statistic of the detection histories
 * @param expected its mean over the simulated sets
 * @param p share of sets, the observed one among them, with a statistic at least as large
 * @param draws how many sets were simulated
 */
public record GoodnessOfFit(double chiSquare, double expected, double p, int draws) {
    private static final double ALL_ROUNDING = 1e-6;

    /**
     * Simulates and fits anew as often as asked.
     *
     * @param heard hears the share that is done, 0 to 1, and says whether to go on
     * @throws CancellationException if it is not to go on
     */
    static Answer<GoodnessOfFit> of(SiteVisits visits, LikelihoodFit fit, int draws, long seed, DoublePredicate heard) {
        if (draws < 1) {
            throw new IllegalArgumentException("A bootstrap needs draws, but had " + draws);
        }
        double observed = new HistoryCounts(visits, fit.parts()).chiSquare(fit.predictors());
        AtomicInteger begun = new AtomicInteger();
        double[] simulated = IntStream.range(0, draws)
                .parallel()
                .mapToDouble(draw -> {
                    if (!heard.test((double) begun.getAndIncrement() / draws)) {
                        throw new CancellationException("Stopped after " + begun.get() + " draws");
                    }
                    return statistic(visits, fit, new SplittableRandom(seed + 7919L * draw));
                })
                .toArray();
        double mean = IntStream.range(0, draws)
                .mapToDouble(draw -> simulated[draw])
                .average()
                .orElse(0);
        if (!(mean > ALL_ROUNDING)) {
            return Answer.notEstimable(Reason.NOTHING_TO_TEST);
        }
        long atLeast = IntStream.range(0, draws)
                .filter(draw -> simulated[draw] >= observed)
                .count();
        return Answer.of(new GoodnessOfFit(observed, mean, (atLeast + 1.0) / (draws + 1.0), draws));
    }

    /** {@return how many times as large as expected the statistic is: above 1, variances are too small by this factor} */
    public double cHat() {
        return chiSquare / expected;
    }

    private static double statistic(SiteVisits visits, LikelihoodFit fit, SplittableRandom random) {
        SiteVisits drawn = simulate(visits, fit.parts(), fit.predictors(), random);
        OccupancyLikelihood likelihood = new OccupancyLikelihood(new SiteClasses(drawn, fit.parts()), visits.seasons());
        return new HistoryCounts(drawn, fit.parts()).chiSquare(fit.refit(likelihood));
    }

    /** The same visits with other results, drawn from a model. */
    static SiteVisits simulate(SiteVisits visits, Parts parts, double[][] predictors, SplittableRandom random) {
        boolean[][] occupied = new boolean[visits.sites()][visits.seasons()];
        for (int site = 0; site < visits.sites(); site++) {
            occupied[site][0] =
                    happens(random, predictors[0][parts.list().get(0).design().pattern(site)]);
            for (int season = 1; season < visits.seasons(); season++) {
                int row = site * (visits.seasons() - 1) + season - 1;
                int part = occupied[site][season - 1] ? 2 : 1;
                boolean changed = happens(
                        random, predictors[part][parts.list().get(part).design().pattern(row)]);
                occupied[site][season] = occupied[site][season - 1] ^ changed;
            }
        }
        int last = predictors.length - 1;
        List<SiteVisit> drawn = new ArrayList<>(visits.visits().size());
        for (int row = 0; row < visits.visits().size(); row++) {
            SiteVisit visit = visits.visits().get(row);
            boolean detected = occupied[visit.site()][visit.season()]
                    && happens(
                            random,
                            predictors[last][parts.list().get(last).design().pattern(row)]);
            drawn.add(new SiteVisit(visit.site(), visit.season(), visit.occasion(), detected));
        }
        return new SiteVisits(visits.sites(), visits.seasons(), drawn);
    }

    private static boolean happens(SplittableRandom random, double predictor) {
        return random.nextDouble() < Logit.probability(predictor);
    }
}

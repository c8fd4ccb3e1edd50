package org.ouzelbook.stats.estimator.occupancy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.function.DoublePredicate;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.likelihood.Coefficient;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.stats.estimator.likelihood.Design;
import org.ouzelbook.stats.estimator.likelihood.LikelihoodFit;
import org.ouzelbook.stats.estimator.likelihood.Parts;

/**
 * Occupancy of sites where birds may be missed, fitted by maximum likelihood.
 *
 * <p>A site is occupied in the first season with probability ψ; from one season to the next an empty site is colonised with
 * probability γ, and an occupied one abandoned with probability ε; on a visit to an occupied site the species is detected with
 * probability p. Each is logit-linear in its covariates. Assumes that a site is occupied or not for the whole of a season, that
 * nothing is detected where nothing is, and that sites and visits are independent; birds that differ in p make ψ too low.
 *
 * <p>Source: D. I. MacKenzie et al. (2002), Ecology 83:2248–2255; D. I. MacKenzie et al. (2003), Ecology 84:2200–2207.
 */
public final class OccupancyFit {
    private static final int MOST_ROWS_LISTED = 50;

    private final SiteVisits visits;
    private final OccupancyModel model;
    private final LikelihoodFit fit;
    private final OccupancyLikelihood likelihood;
    private final OccupancyCurve curve;
    private final double level;

    private OccupancyFit(
            SiteVisits visits,
            OccupancyModel model,
            LikelihoodFit fit,
            OccupancyLikelihood likelihood,
            SiteClasses sites,
            double level) {
        this.visits = visits;
        this.model = model;
        this.fit = fit;
        this.likelihood = likelihood;
        this.curve = new OccupancyCurve(sites, visits.seasons(), fit, level);
        this.level = level;
    }

    /**
     * {@return the fit, or why these visits carry none}
     *
     * @param visits the visits
     * @param model what each part depends on; colonisation and extinction take no part in one season
     * @param level level of the limits, between 0 and 1
     * @throws IllegalArgumentException if a covariate has a wrong number of rows
     */
    public static Answer<OccupancyFit> of(SiteVisits visits, OccupancyModel model, double level) {
        Estimate.tail(level);
        if (visits.visits().isEmpty()) {
            return Answer.notEstimable(Reason.NO_VISITS);
        }
        if (visits.visits().stream().noneMatch(SiteVisit::detected)) {
            return Answer.notEstimable(Reason.NEVER_DETECTED, visits.visits().size(), visits.visitedSites());
        }
        Answer<Parts> parts = model.parts(visits);
        if (parts instanceof Answer.NotEstimable<Parts> not) {
            return new Answer.NotEstimable<>(not.because());
        }
        Parts made = parts.found().orElseThrow();
        SiteClasses sites = new SiteClasses(visits, made);
        OccupancyLikelihood likelihood = new OccupancyLikelihood(sites, visits.seasons());
        return LikelihoodFit.of(made, likelihood, visits.visitedSites(), method(visits))
                .map(fit -> new OccupancyFit(visits, model, fit, likelihood, sites, level));
    }

    /** {@return what the model of these visits is called}
     *
     * @param visits the visits
     */
    public static Method method(SiteVisits visits) {
        return visits.seasons() == 1 ? Method.SEASON_OCCUPANCY : Method.DYNAMIC_OCCUPANCY;
    }

    /** {@return the fitted model} */
    public LikelihoodFit fit() {
        return fit;
    }

    /** {@return the visits that it was fitted to} */
    public SiteVisits visits() {
        return visits;
    }

    /** {@return what must be known of the fit} */
    public List<Caution> cautions() {
        List<Caution> cautions = new ArrayList<>(fit.cautions());
        if (!fit.isRegular()) {
            cautions.add(Caution.of(Reason.BOUNDARY_TAKEN_AS_KNOWN));
        }
        boolean again = visits.visits().stream().anyMatch(visit -> visit.occasion() > 0);
        if (!again) {
            cautions.add(Caution.of(Reason.ONE_VISIT_A_SEASON));
        }
        if (visits.visitedSites() < visits.sites()) {
            cautions.add(Caution.of(Reason.SITES_NOT_VISITED, visits.sites() - visits.visitedSites()));
        }
        return cautions;
    }

    /**
     * {@return the probability of each different row of each part, under a label such as {@code season=2021}; nothing of a part that
     * depends on numbers, or has more than fifty different rows}
     */
    public List<Coefficient> probabilities() {
        List<Coefficient> probabilities = new ArrayList<>();
        List<Parts.Part> parts = fit.parts().list();
        for (int part = 0; part < parts.size(); part++) {
            Design design = parts.get(part).design();
            List<Covariate> covariates = covariates(parts.get(part).name());
            if (design.patterns() > MOST_ROWS_LISTED || covariates.stream().anyMatch(Covariate::numeric)) {
                continue;
            }
            boolean[] known = new boolean[design.patterns()];
            for (int row = 0; row < design.rows(); row++) {
                int pattern = design.pattern(row);
                if (!known[pattern]) {
                    known[pattern] = true;
                    probabilities.add(new Coefficient(
                            parts.get(part).name(),
                            Covariate.label(covariates, row),
                            fit.probability(part, pattern, level)));
                }
            }
        }
        return probabilities;
    }

    private List<Covariate> covariates(String part) {
        return switch (part) {
            case OccupancyModel.OCCUPANCY -> model.occupancy();
            case OccupancyModel.COLONISATION -> model.colonisation();
            case OccupancyModel.EXTINCTION -> model.extinction();
            default -> model.detection();
        };
    }

    /** {@return expected share of occupied sites, by season} */
    public List<Answer<Estimate>> occupancy() {
        return curve.occupancy();
    }

    /** {@return occupancy over that of the season before, from the second season} */
    public List<Answer<Estimate>> growth() {
        return curve.growth();
    }

    /** {@return share of the occupied sites that were empty the season before, from the second season} */
    public List<Answer<Estimate>> turnover() {
        return curve.turnover();
    }

    /** {@return the share of occupied sites at which gains and losses would balance} */
    public Answer<Estimate> equilibrium() {
        return curve.equilibrium();
    }

    /**
     * {@return the probability that a site was occupied, by season, given all its visits: 1 where the species was detected}
     *
     * @param site from 0
     */
    public double[] occupied(int site) {
        return likelihood.smoothed(fit.predictors(), site);
    }

    /**
     * {@return the share of just these sites that were occupied, by season, given everything that was found on them}
     *
     * <p>Where the species was detected, a site is known to have been occupied. The limits are whole sites: quantiles of the number
     * among the others, a beta-binomial law with the mean and variance that it has. The variance is that of the states given the
     * parameters, sites being independent, and that of the parameters, by the delta method; a parameter at a boundary is taken as known.
     */
    public List<Answer<Estimate>> ofTheseSites() {
        int sites = visits.sites();
        double[] share = likelihood.share(fit.predictors());
        List<OptionalDouble> known =
                fit.variances(predictors -> Arrays.copyOf(likelihood.share(predictors), visits.seasons()));
        List<SiteVisits.Naive> naive = visits.naive();
        List<Answer<Estimate>> shares = new ArrayList<>();
        for (int season = 0; season < visits.seasons(); season++) {
            if (known.get(season).isEmpty()) {
                shares.add(Answer.notEstimable(Reason.NOT_TOLD_APART));
                continue;
            }
            int found = naive.get(season).detected();
            double value = Math.min(Math.max(share[season], found / (double) sites), 1);
            double variance =
                    share[visits.seasons() + season] + known.get(season).getAsDouble();
            UnseenSites unseen =
                    new UnseenSites(sites - found, value * sites - found, variance * sites * (double) sites);
            double tail = Estimate.tail(level);
            shares.add(Answer.of(new Estimate(
                    value,
                    OptionalDouble.of(Math.sqrt(variance)),
                    Math.min(value, (found + unseen.quantile(tail)) / (double) sites),
                    Math.max(value, (found + unseen.quantile(1 - tail)) / (double) sites),
                    level,
                    sites,
                    method(visits),
                    List.of())));
        }
        return shares;
    }

    /** {@return how well the model fits the histories, by Pearson’s statistic alone} */
    public double chiSquare() {
        return new HistoryCounts(visits, fit.parts()).chiSquare(fit.predictors());
    }

    /**
     * {@return how well the model fits the histories, by parametric bootstrap}
     *
     * @param draws how many sets of visits to simulate and fit
     * @param seed of the random numbers
     */
    public Answer<GoodnessOfFit> goodnessOfFit(int draws, long seed) {
        return goodnessOfFit(draws, seed, share -> true);
    }

    /**
     * {@return the same, from work that can be stopped}
     *
     * @param draws how many sets of visits to simulate and fit
     * @param seed of the random numbers
     * @param heard hears the share that is done, 0 to 1, from several threads at once, and says whether to go on
     * @throws CancellationException if it is not to go on
     */
    public Answer<GoodnessOfFit> goodnessOfFit(int draws, long seed, DoublePredicate heard) {
        return GoodnessOfFit.of(visits, fit, draws, seed, heard);
    }
}

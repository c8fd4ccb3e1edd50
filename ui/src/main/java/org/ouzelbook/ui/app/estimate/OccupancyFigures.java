package org.ouzelbook.ui.app.estimate;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CancellationException;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.likelihood.Coefficient;
import org.ouzelbook.stats.estimator.likelihood.LikelihoodFit;
import org.ouzelbook.stats.estimator.likelihood.ModelComparison;
import org.ouzelbook.stats.estimator.occupancy.GoodnessOfFit;
import org.ouzelbook.stats.estimator.occupancy.OccupancyFit;
import org.ouzelbook.stats.estimator.occupancy.OccupancyModel;
import org.ouzelbook.stats.estimator.occupancy.SiteVisits;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.ui.app.estimate.EstimateNests.Figure;

/** What the answers about occupancy have in common, of a bare table or of a book. */
public final class OccupancyFigures {
    private static final long SEED = 20_040_301;
    private static final int USUAL_DRAWS = 200;
    private static final int MOST_VISITS_DRAWN_UNASKED = 20_000;
    private static final double SURPRISING = 0.05;
    private static final double CERTAIN = 1 - 1e-9;

    private OccupancyFigures() {}

    /**
     * Limits of a coefficient from its profile likelihood.
     *
     * @param part the part
     * @param term the term
     * @param lower lower limit; empty where the likelihood sets none
     * @param upper upper limit
     */
    public record Profile(String part, String term, OptionalDouble lower, OptionalDouble upper) {}

    /**
     * One season.
     *
     * @param season the season
     * @param visited sites with a visit
     * @param detected sites with a detection
     * @param naive share of the visited sites with a detection; empty without a visit
     * @param occupancy expected share of occupied sites
     * @param se its standard error
     * @param lower lower limit
     * @param upper upper limit
     * @param ofTheseSites share of just these sites that were occupied, given all visits
     * @param ofTheseSitesLower its lower limit
     * @param ofTheseSitesUpper its upper limit
     * @param why why a number is missing; empty where none is
     */
    public record Season(
            int season,
            int visited,
            int detected,
            OptionalDouble naive,
            OptionalDouble occupancy,
            OptionalDouble se,
            OptionalDouble lower,
            OptionalDouble upper,
            OptionalDouble ofTheseSites,
            OptionalDouble ofTheseSitesLower,
            OptionalDouble ofTheseSitesUpper,
            Optional<Message> why) {}

    /**
     * From the season before to this one.
     *
     * @param season the later season
     * @param figure the number
     */
    public record Change(int season, Figure figure) {}

    /**
     * How well a model fits its histories.
     *
     * @param chiSquare Pearson's statistic
     * @param cHat the statistic over its mean in simulated sets; empty with {@code why}
     * @param p share of the sets with a statistic at least as large
     * @param draws simulated sets
     * @param why why there is no test; empty if there is one
     */
    public record Fit(double chiSquare, OptionalDouble cHat, OptionalDouble p, int draws, Optional<Message> why) {
        /**
         * {@return the test of a fit}
         *
         * @param fit the fit
         * @param asked simulated sets of visits; empty for as many as take no long time
         * @param progress hears how many are done, and may stop the work
         * @throws CancellationException if it is stopped
         */
        public static Fit of(OccupancyFit fit, Optional<Integer> asked, Progress progress) {
            int usual = fit.visits().visits().size() <= MOST_VISITS_DRAWN_UNASKED ? USUAL_DRAWS : 0;
            int draws = asked.orElse(usual);
            if (draws == 0) {
                return without(fit, Message.of("estimate.occupancy.notTested"));
            }
            Answer<GoodnessOfFit> answer =
                    fit.goodnessOfFit(draws, SEED, share -> progress.goOn(Math.round(share * draws), draws));
            if (answer instanceof Answer.NotEstimable<GoodnessOfFit> not) {
                return without(fit, CautionMessage.of(not.because()));
            }
            GoodnessOfFit found = answer.found().orElseThrow();
            return new Fit(
                    found.chiSquare(),
                    OptionalDouble.of(found.cHat()),
                    OptionalDouble.of(found.p()),
                    draws,
                    Optional.empty());
        }

        private static Fit without(OccupancyFit fit, Message why) {
            return new Fit(fit.chiSquare(), OptionalDouble.empty(), OptionalDouble.empty(), 0, Optional.of(why));
        }

        /** {@return that the model does not fit, if so} */
        public Optional<Message> warning() {
            return p.isPresent() && p.getAsDouble() < SURPRISING
                    ? Optional.of(Message.of("estimate.occupancy.doesNotFit", p.getAsDouble(), cHat.orElseThrow()))
                    : Optional.empty();
        }
    }

    /**
     * One of several models.
     *
     * @param occupancyBy what its occupancy depends on
     * @param colonisationBy what its colonisation depends on
     * @param extinctionBy what its extinction depends on
     * @param detectionBy what its detection depends on
     * @param parameters how many
     * @param logLikelihood the highest
     * @param aic Akaike's criterion
     * @param aicc the same for small samples
     * @param delta how far it lies above the best, by AICc where all have it
     * @param weight its Akaike weight
     */
    public record Compared(
            List<String> occupancyBy,
            List<String> colonisationBy,
            List<String> extinctionBy,
            List<String> detectionBy,
            int parameters,
            double logLikelihood,
            double aic,
            OptionalDouble aicc,
            double delta,
            double weight) {
        /** {@return a row of a comparison} */
        public static Compared of(ModelComparison.Row<OccupancyModel> row) {
            return new Compared(
                    row.model().occupancy().stream().map(one -> one.name()).toList(),
                    row.model().colonisation().stream().map(one -> one.name()).toList(),
                    row.model().extinction().stream().map(one -> one.name()).toList(),
                    row.model().detection().stream().map(one -> one.name()).toList(),
                    row.parameters(),
                    row.logLikelihood(),
                    row.aic(),
                    row.aicc(),
                    row.delta(),
                    row.weight());
        }
    }

    /** {@return all parameters of a fit in the order in which they are printed} */
    public static List<Parameter> parameters(OccupancyFit found, double level) {
        return Stream.concat(
                        found.fit().coefficients(level).stream().map(one -> Parameter.of(one, Parameter.LOGIT)),
                        found.probabilities().stream().map(one -> Parameter.of(one, Parameter.NATURAL)))
                .toList();
    }

    /** {@return limits of the coefficients from the profile likelihood} */
    public static List<Profile> profile(LikelihoodFit fit, double level) {
        List<Coefficient> coefficients = fit.coefficients(level);
        return IntStream.range(0, coefficients.size())
                .parallel()
                .mapToObj(i -> {
                    double[] limits = fit.profileLimits(i, level);
                    return new Profile(
                            coefficients.get(i).part(),
                            coefficients.get(i).term(),
                            Parameter.finite(limits[0]),
                            Parameter.finite(limits[1]));
                })
                .toList();
    }

    /**
     * {@return the seasons one by one, with or without a fit}
     *
     * @param visits the visits
     * @param fit the fit, or why there is none
     * @param labels what the seasons are called
     */
    public static List<Season> seasons(SiteVisits visits, Answer<OccupancyFit> fit, List<Integer> labels) {
        List<Season> seasons = new ArrayList<>();
        List<Figure> shares = fit instanceof Answer.NotEstimable<OccupancyFit> not
                ? Collections.nCopies(labels.size(), Figure.of(new Answer.NotEstimable<>(not.because())))
                : fit.found().orElseThrow().occupancy().stream().map(Figure::of).toList();
        List<Figure> ofTheseSites = fit.found()
                .map(found -> found.ofTheseSites().stream().map(Figure::of).toList())
                .orElse(shares);
        List<SiteVisits.Naive> naive = visits.naive();
        for (int i = 0; i < labels.size(); i++) {
            Figure figure = shares.get(i);
            int visited = naive.get(i).visited();
            int detected = naive.get(i).detected();
            seasons.add(new Season(
                    labels.get(i),
                    visited,
                    detected,
                    visited == 0 ? OptionalDouble.empty() : OptionalDouble.of(detected / (double) visited),
                    figure.estimate(),
                    figure.se(),
                    figure.lower(),
                    figure.upper(),
                    ofTheseSites.get(i).estimate(),
                    ofTheseSites.get(i).lower(),
                    ofTheseSites.get(i).upper(),
                    figure.why()));
        }
        return seasons;
    }

    /** Whether the visits tell the occupancy of each season apart from what else they depend on. */
    private static List<Boolean> told(OccupancyFit found) {
        return found.occupancy().stream()
                .map(share -> !(share instanceof Answer.NotEstimable<Estimate> not
                        && not.because().reason() == Reason.NOT_TOLD_APART))
                .toList();
    }

    /** {@return the probabilities that sites were occupied, by site, then season; empty where the visits do not tell} */
    public static List<List<OptionalDouble>> probabilities(OccupancyFit found) {
        List<Boolean> told = told(found);
        return IntStream.range(0, found.visits().sites())
                .mapToObj(found::occupied)
                .map(occupied -> IntStream.range(0, occupied.length)
                        .mapToObj(season -> told.get(season) || occupied[season] > CERTAIN
                                ? OptionalDouble.of(occupied[season])
                                : OptionalDouble.empty())
                        .toList())
                .toList();
    }

    /** {@return how occupancy changes from one season to the next} */
    public static List<Change> changes(List<Answer<Estimate>> answers, List<Integer> labels) {
        return IntStream.range(0, answers.size())
                .mapToObj(i -> new Change(labels.get(i + 1), Figure.of(answers.get(i))))
                .toList();
    }
}

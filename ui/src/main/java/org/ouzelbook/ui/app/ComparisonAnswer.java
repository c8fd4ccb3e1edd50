package org.ouzelbook.ui.app;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.rate.RateComparison;
import org.ouzelbook.stats.estimator.rate.ShownChange;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.stats.survey.DensityChange;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;

/**
 * Two densities held against each other, two seasons or two waters: the answer of {@code density --compare}. Its names are those that
 * scripts rely on.
 *
 * @param species whose territories
 * @param settings every threshold of the mapping rules
 * @param from the one it starts from
 * @param to the other
 * @param ratio density of {@code to} over that of {@code from}; a limit is empty where the counts set none
 * @param p two-sided p-value of equal densities, by the exact test that agrees with the ratio's limits
 * @param difference density of {@code to} less that of {@code from}, per km
 * @param couldShow the smallest changes that such counts would have shown; empty where there is nothing to start from
 * @param level level of the limits
 * @param warnings what would mislead a reader who did not know it
 */
public record ComparisonAnswer(
        Species species,
        MapSettings settings,
        Side from,
        Side to,
        Limits ratio,
        OptionalDouble p,
        Limits difference,
        Optional<CouldShow> couldShow,
        double level,
        List<Message> warnings) {
    private static final double POWER = 0.8;

    /**
     * One of the two.
     *
     * @param season the calendar year
     * @param waters the rivers, or the reach
     * @param effectiveVisits days with effective visits, of each of them
     * @param territories territories that count
     * @param surveyedKm km that effective visits covered
     * @param perKm territories per km
     * @param lower lower limit
     * @param upper upper limit
     */
    public record Side(
            int season,
            List<String> waters,
            List<Integer> effectiveVisits,
            int territories,
            double surveyedKm,
            OptionalDouble perKm,
            OptionalDouble lower,
            OptionalDouble upper) {
        private static Side of(DensityChange.Side side) {
            Optional<Estimate> perKm = side.perKm().found();
            return new Side(
                    side.season(),
                    side.waters(),
                    side.effectiveVisits(),
                    side.territories(),
                    side.surveyedKm(),
                    Numbers.of(perKm, Estimate::value),
                    Numbers.of(perKm, Estimate::lower),
                    Numbers.of(perKm, Estimate::upper));
        }
    }

    /**
     * A number with its limits.
     *
     * @param estimate the number; empty with {@code why}
     * @param lower lower limit
     * @param upper upper limit
     * @param why why a number is missing
     * @param method how it was found
     */
    public record Limits(
            OptionalDouble estimate,
            OptionalDouble lower,
            OptionalDouble upper,
            Optional<Message> why,
            Optional<Message> method) {
        private static Limits of(Answer<Estimate> answer) {
            Optional<Estimate> found = answer.found();
            return new Limits(
                    Numbers.of(found, Estimate::value),
                    Numbers.of(found, Estimate::lower),
                    Numbers.of(found, Estimate::upper),
                    answer instanceof Answer.NotEstimable<Estimate> not
                            ? Optional.of(CautionMessage.of(not.because()))
                            : found.orElseThrow().warnings().stream()
                                    .findFirst()
                                    .map(CautionMessage::of),
                    found.map(estimate -> Message.of(
                            "app.density.method",
                            estimate.method(),
                            estimate.method().source())));
        }
    }

    /**
     * The smallest changes that would have been shown.
     *
     * @param fallPercent the smallest fall, below 0; empty if not even a fall to nothing would have been shown
     * @param risePercent the smallest rise; empty if none up to a hundredfold would have been shown
     * @param power with this probability
     */
    public record CouldShow(OptionalDouble fallPercent, OptionalDouble risePercent, double power) {
        private static CouldShow of(ShownChange shown) {
            return new CouldShow(percent(shown.fall(POWER)), percent(shown.rise(POWER)), POWER);
        }

        private static OptionalDouble percent(OptionalDouble ratio) {
            return ratio.isPresent() ? OptionalDouble.of(100 * (ratio.getAsDouble() - 1)) : ratio;
        }
    }

    /**
     * {@return two densities of a book held against each other}
     *
     * @param book an open book
     * @param scope what is asked
     * @param change what is changed in the usual settings of the species
     * @param from a season, or the name of a reach or river
     * @param to another of the same kind
     * @throws WrongRequest if the book has no such river, reach or season, or both are the same
     */
    public static ComparisonAnswer of(
            Book book, Scope scope, UnaryOperator<MapSettings> change, String from, String to) {
        refuseTwice(from, to, scope);
        MapSettings settings = change.apply(MapSettings.usualFor(scope.species()));
        DensityChange found = areSeasons(from, to)
                ? ofSeasons(SurveyReading.of(book, scope), settings, Integer.parseInt(from), Integer.parseInt(to))
                : ofWaters(SurveyReading.of(book, scope), settings, from, to);
        return of(found, scope, settings);
    }

    static void refuseTwice(String from, String to, Scope scope) {
        if (from.equalsIgnoreCase(to)) {
            throw new WrongRequest(Message.of("app.compare.same", from));
        }
        boolean seasons = areSeasons(from, to);
        if (seasons && scope.season().isPresent()) {
            throw new WrongRequest(Message.of("app.compare.seasonTwice"));
        }
        if (!seasons && (scope.river().isPresent() || scope.reach().isPresent())) {
            throw new WrongRequest(Message.of("app.compare.waterTwice"));
        }
    }

    static boolean areSeasons(String from, String to) {
        return from.matches("[0-9]{4}") && to.matches("[0-9]{4}");
    }

    private static DensityChange ofSeasons(SurveyReading reading, MapSettings settings, int from, int to) {
        return DensityChange.ofSeasons(
                map(reading, settings, from, reading.water()),
                map(reading, settings, to, reading.water()),
                reading.water(),
                reading.scope().level());
    }

    private static DensityChange ofWaters(SurveyReading reading, MapSettings settings, String from, String to) {
        Water one = reading.named(from);
        Water other = reading.named(to);
        int season = reading.season();
        return DensityChange.ofWaters(
                map(reading, settings, season, one),
                map(reading, settings, season, other),
                one,
                other,
                reading.scope().level());
    }

    private static TerritoryMap map(SurveyReading reading, MapSettings settings, int season, Water water) {
        if (!reading.seasons().contains(season)) {
            throw new WrongRequest(
                    Message.of("app.compare.noVisit", reading.scope().species(), Integer.toString(season)));
        }
        return TerritoryMap.of(reading.records(), reading.scope().species(), season, settings, water);
    }

    private static ComparisonAnswer of(DensityChange found, Scope scope, MapSettings settings) {
        Answer<Estimate> ratio = found.ratio() instanceof Answer.NotEstimable<RateComparison> not
                ? new Answer.NotEstimable<>(not.because())
                : found.ratio().found().orElseThrow().ratio();
        return new ComparisonAnswer(
                scope.species(),
                settings,
                Side.of(found.from()),
                Side.of(found.to()),
                Limits.of(ratio),
                Numbers.of(found.ratio().found(), RateComparison::p),
                Limits.of(found.difference()),
                found.shown().map(CouldShow::of),
                scope.level(),
                found.warnings());
    }
}

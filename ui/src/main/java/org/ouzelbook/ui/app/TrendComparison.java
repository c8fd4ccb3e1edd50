package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.trend.TrendDifference;
import org.ouzelbook.stats.estimator.trend.YearlyTrend;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.stats.survey.CountTrend;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;

/**
 * Two seasons, or the trends of two waters, held against each other: the answer of {@code trend --compare}. Its names are those that scripts
 * rely on.
 *
 * @param species whose territories
 * @param counts the two seasons by themselves, exactly; empty for waters
 * @param alongTheLine the change from the one season to the other along the trend of all seasons; empty for waters
 * @param waters the trends of the two waters; empty for seasons
 * @param difference how they differ; empty for seasons
 * @param level level of the limits
 * @param warnings what would mislead a reader who did not know it
 */
public record TrendComparison(
        Species species,
        Optional<ComparisonAnswer> counts,
        Optional<Change> alongTheLine,
        List<Side> waters,
        Optional<Difference> difference,
        double level,
        List<Message> warnings) {
    /**
     * A change along a trend.
     *
     * @param percent in percent; empty with {@code why}
     * @param lower lower limit
     * @param upper upper limit; empty where it would lie more than a hundredfold away
     * @param probabilityFalling probability that numbers fell, by the same trend
     * @param why why a number is missing
     */
    public record Change(
            OptionalDouble percent,
            OptionalDouble lower,
            OptionalDouble upper,
            OptionalDouble probabilityFalling,
            Optional<Message> why) {
        private static Change of(Answer<YearlyTrend> line, int from, int to) {
            Optional<YearlyTrend> found = line.found();
            return new Change(
                    Numbers.of(found, trend -> trend.percentBetween(from, to).value()),
                    Numbers.of(found, trend -> trend.percentBetween(from, to).lower()),
                    Numbers.of(found, trend -> trend.percentBetween(from, to).upper()),
                    Numbers.of(found, YearlyTrend::probabilityFalling),
                    line instanceof Answer.NotEstimable<YearlyTrend> not
                            ? Optional.of(CautionMessage.of(not.because()))
                            : Optional.empty());
        }
    }

    /**
     * The trend of one water.
     *
     * @param water its name
     * @param countedSeasons seasons that were counted
     * @param perYear yearly change
     * @param verdict what may be said of it alone
     */
    public record Side(String water, int countedSeasons, Change perYear, Message verdict) {
        private static Side of(String water, CountTrend trend) {
            return new Side(
                    water,
                    (int) trend.seasons().stream()
                            .filter(season -> season.count().isPresent())
                            .count(),
                    Change.of(trend.line(), 0, 1),
                    trend.verdict().sentence());
        }
    }

    /**
     * How two trends differ.
     *
     * @param percentPerYear by how many percent a year the second changes more than the first; empty with {@code why}
     * @param lower lower limit
     * @param upper upper limit
     * @param p two-sided, of equal trends
     * @param why why there is none
     */
    public record Difference(
            OptionalDouble percentPerYear,
            OptionalDouble lower,
            OptionalDouble upper,
            OptionalDouble p,
            Optional<Message> why) {
        private static Difference of(CountTrend from, CountTrend to) {
            Optional<TrendDifference> found =
                    from.line().found().flatMap(one -> to.line().found().map(other -> TrendDifference.of(one, other)));
            return new Difference(
                    Numbers.of(found, one -> one.percentPerYear().value()),
                    Numbers.of(found, one -> one.percentPerYear().lower()),
                    Numbers.of(found, one -> one.percentPerYear().upper()),
                    Numbers.of(found, TrendDifference::p),
                    found.isPresent() ? Optional.empty() : Optional.of(Message.of("app.trend.noDifference")));
        }
    }

    /**
     * {@return two seasons or two waters of a book held against each other}
     *
     * @param book an open book
     * @param scope what is asked
     * @param change what is changed in the usual settings of the species
     * @param counting how territories are counted
     * @param from a season, or the name of a reach or river
     * @param to another of the same kind
     * @param progress hears how far the work has come, and may stop it
     * @throws WrongRequest if the book has no such river, reach or season, or both are the same
     */
    public static TrendComparison of(
            Book book,
            Scope scope,
            UnaryOperator<MapSettings> change,
            Counting counting,
            String from,
            String to,
            Progress progress) {
        if (scope.season().isPresent()) {
            throw new WrongRequest(Message.of("app.trend.oneSeason"));
        }
        ComparisonAnswer.refuseTwice(from, to, scope);
        SurveyReading reading = SurveyReading.of(book, scope);
        MapSettings settings = change.apply(MapSettings.usualFor(scope.species()));
        if (!ComparisonAnswer.areSeasons(from, to)) {
            return ofWaters(
                    reading,
                    settings,
                    counting,
                    List.of(reading.named(from), reading.named(to)),
                    List.of(from, to),
                    progress);
        }
        ComparisonAnswer counts = ComparisonAnswer.of(book, scope, change, from, to);
        CountTrend trend = trends(reading, settings, counting, List.of(reading.water()), progress)
                .get(0);
        return new TrendComparison(
                scope.species(),
                Optional.of(counts),
                Optional.of(Change.of(trend.line(), Integer.parseInt(from), Integer.parseInt(to))),
                List.of(),
                Optional.empty(),
                scope.level(),
                trend.warnings());
    }

    private static TrendComparison ofWaters(
            SurveyReading reading,
            MapSettings settings,
            Counting counting,
            List<Water> waters,
            List<String> names,
            Progress progress) {
        List<CountTrend> trends = trends(reading, settings, counting, waters, progress);
        return new TrendComparison(
                reading.scope().species(),
                Optional.empty(),
                Optional.empty(),
                IntStream.range(0, trends.size())
                        .mapToObj(i -> Side.of(names.get(i), trends.get(i)))
                        .toList(),
                Optional.of(Difference.of(trends.get(0), trends.get(1))),
                reading.scope().level(),
                Stream.concat(
                                Stream.of(
                                        Message.of("app.trend.differenceItself"),
                                        Message.of("density.warning.neighbours")),
                                IntStream.range(0, trends.size())
                                        .boxed()
                                        .flatMap(i -> trends.get(i).warnings().stream()
                                                .map(warning ->
                                                        Message.of("app.trend.onWater", names.get(i), warning))))
                        .toList());
    }

    /** The trend of each water. */
    private static List<CountTrend> trends(
            SurveyReading reading, MapSettings settings, Counting counting, List<Water> waters, Progress progress) {
        List<Integer> seasons = reading.everySeason();
        ModelledCounts modelled =
                reading.modelled(reading.model(counting, settings, progress), seasons, waters, progress);
        List<CountTrend> trends = new ArrayList<>();
        for (Water water : waters) {
            trends.add(CountTrend.of(
                    reading.records(),
                    reading.scope().species(),
                    seasons,
                    settings,
                    List.of(water),
                    reading.scope().level(),
                    modelled));
        }
        return trends;
    }
}

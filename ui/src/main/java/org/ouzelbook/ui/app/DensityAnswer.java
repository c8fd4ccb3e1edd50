package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.ModelledCount;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.stats.survey.SeasonDensity;
import org.ouzelbook.stats.survey.SeasonMaps;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;

/**
 * How dense territories lay, by season, river and reach: the answer of {@code density}. Its names are those that scripts rely
 * on.
 *
 * @param species whose territories
 * @param settings every threshold of the mapping rules
 * @param rows by season; each river as a whole, then its reaches
 * @param warnings what would mislead a reader who did not know it
 */
public record DensityAnswer(Species species, MapSettings settings, List<Row> rows, List<Message> warnings) {

    /**
     * {@return the densities of the season that was asked about, or of every one}
     *
     * @param book an open book
     * @param scope what is asked
     * @param change what is changed in the usual settings of the species
     * @param counting how territories are counted
     * @param progress hears how far the work has come, and may stop it
     * @throws WrongRequest if the book has no such river or reach
     */
    public static DensityAnswer of(
            Book book, Scope scope, UnaryOperator<MapSettings> change, Counting counting, Progress progress) {
        SurveyReading reading = SurveyReading.of(book, scope);
        List<Water> waters = new ArrayList<>(List.of(reading.water()));
        if (scope.reach().isEmpty()) {
            reading.records().reaches().stream()
                    .filter(reach -> reading.water()
                            .riverId()
                            .map(reach.riverId()::equals)
                            .orElse(true))
                    .map(reach -> Water.ofReach(reach, reading.records().reaches()))
                    .forEach(waters::add);
        }
        List<Integer> seasons = scope.season().map(List::of).orElseGet(reading::seasons);
        MapSettings settings = change.apply(MapSettings.usualFor(scope.species()));
        boolean byRule = counting == Counting.BY_RULE;
        Progress modelling = progress.part(0, 0.9);
        ModelledCounts modelled =
                reading.modelled(reading.model(counting, settings, modelling), seasons, waters, modelling);
        SeasonDensity density = SeasonDensity.of(
                SeasonMaps.of(reading.records(), scope.species(), settings),
                seasons,
                waters,
                scope.level(),
                modelled,
                progress.part(byRule ? 0 : 0.9, 1));
        return of(density, scope.level());
    }

    /**
     * {@return the answer that densities give}
     *
     * @param density densities
     * @param level confidence level of their intervals
     */
    static DensityAnswer of(SeasonDensity density, double level) {
        return new DensityAnswer(
                density.species(),
                density.settings(),
                density.rows().stream().map(row -> Row.of(row, level)).toList(),
                density.warnings());
    }

    /**
     * The density of one water in one season.
     *
     * @param season the calendar year
     * @param river the river
     * @param reach the reach; empty for the whole river
     * @param surveyedKm water that effective visits covered
     * @param territories territories that count
     * @param min the fewest under another reading of the rules
     * @param max the most under another reading of the rules
     * @param edge edge territories that are not among them
     * @param perKm territories per km
     * @param lower lower limit
     * @param upper upper limit
     * @param level confidence level
     * @param byModel the same by the model; empty where it was not asked or cannot tell
     * @param method how the limits were found
     * @param why why there is no density
     */
    public record Row(
            int season,
            String river,
            Optional<String> reach,
            double surveyedKm,
            int territories,
            int min,
            int max,
            int edge,
            OptionalDouble perKm,
            OptionalDouble lower,
            OptionalDouble upper,
            double level,
            Optional<ByModel> byModel,
            Optional<Message> method,
            Optional<Message> why) {

        static Row of(SeasonDensity.Row row, double level) {
            Optional<Estimate> found = row.perKm().found();
            return new Row(
                    row.season(),
                    row.river().name(),
                    row.reach(),
                    row.surveyedKm(),
                    row.territories(),
                    row.min(),
                    row.max(),
                    row.edge(),
                    Numbers.of(found, Estimate::value),
                    Numbers.of(found, Estimate::lower),
                    Numbers.of(found, Estimate::upper),
                    level,
                    row.model().map(model -> ByModel.of(model, row.surveyedKm())),
                    found.map(estimate -> Message.of(
                            "app.density.method",
                            estimate.method(),
                            estimate.method().source())),
                    row.perKm() instanceof Answer.NotEstimable<Estimate> not
                            ? Optional.of(CautionMessage.of(not.because()))
                            : Optional.empty());
        }
    }

    /**
     * The density by the model; its limits are those of the count on this water in this season.
     *
     * @param territories the expected number, pairs that no visit found included
     * @param unseen the expected number of those that no visit found
     * @param perKm territories per km of surveyed water
     * @param lower lower limit
     * @param upper upper limit
     * @param level probability that the density lies between the limits, at least
     */
    public record ByModel(double territories, double unseen, double perKm, double lower, double upper, double level) {
        static ByModel of(ModelledCount count, double km) {
            return new ByModel(
                    count.expected(),
                    count.unseen(),
                    count.expected() / km,
                    count.lower() / km,
                    count.upper() / km,
                    count.level());
        }
    }
}

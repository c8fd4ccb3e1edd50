package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.time.Year;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.concurrent.CancellationException;
import java.util.function.UnaryOperator;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.score.PreyGroup;
import org.ouzelbook.stats.estimator.score.RankCorrelation;
import org.ouzelbook.stats.estimator.score.SampleScore;
import org.ouzelbook.stats.survey.BenthosScore;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SeasonMaps;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;

/**
 * What the kick samples score, with the birds' density beside the prey: the answer of {@code benthos}. Its names are those
 * that scripts rely on.
 *
 * @param species whose density stands beside the prey
 * @param samples every sample, by date
 * @param compared the effort of the samples that were compared
 * @param beside density beside prey, by water, then by season
 * @param correlation the rank correlation of density and prey
 * @param model how the density goes with prey, within waters
 * @param caution what every reader of a pairing must know
 * @param warnings what would mislead a reader who did not know it
 */
public record BenthosAnswer(
        Species species,
        List<Sample> samples,
        Optional<BenthosScore.Effort> compared,
        List<Beside> beside,
        Correlation correlation,
        Model model,
        Message caution,
        List<Message> warnings) {

    /**
     * One sample.
     *
     * @param sample its label
     * @param date the local date
     * @param river name of its river
     * @param km distance from the mouth
     * @param minutes active kicking time
     * @param bmwp the sum of the scores
     * @param taxa scoring taxa
     * @param aspt the average score per taxon; {@code null} where nothing scores, and then {@code why}
     * @param eptFamilies families of mayflies, stoneflies and caddis flies
     * @param eptIndividuals animals of those families; {@code null} if one was not counted
     * @param individuals all animals; {@code null} if a taxon was not counted
     * @param preyRanks ranks of the classes of prey together
     * @param prey the class of each group of prey
     * @param table name and version of the score table
     * @param isComplete whether the table knows every name; if not, every figure is a lower limit
     * @param why why there is no average
     * @param warnings what is to be known of it
     */
    public record Sample(
            String sample,
            LocalDate date,
            String river,
            double km,
            OptionalDouble minutes,
            int bmwp,
            int taxa,
            OptionalDouble aspt,
            int eptFamilies,
            OptionalLong eptIndividuals,
            OptionalLong individuals,
            int preyRanks,
            List<Prey> prey,
            String table,
            boolean isComplete,
            Optional<Message> why,
            List<Message> warnings) {
        static Sample of(BenthosScore.Sample one, SurveyRecords records) {
            SampleScore score = one.score();
            return new Sample(
                    one.sample().label(),
                    one.sample().date(),
                    records.rivers().river(one.sample().place().riverId()).name(),
                    one.sample().place().chainage().km(),
                    one.sample().minutes(),
                    score.score(),
                    score.scoringTaxa(),
                    score.average(),
                    score.eptFamilies(),
                    score.eptIndividuals(),
                    score.individuals(),
                    score.preyRanks(),
                    score.prey().entrySet().stream()
                            .map(entry ->
                                    new Prey(entry.getKey(), entry.getValue().name()))
                            .toList(),
                    score.table().name() + " " + score.table().version(),
                    score.unknown().isEmpty(),
                    score.average().isEmpty() ? Optional.of(Message.of("benthos.noAverage")) : Optional.empty(),
                    one.warnings());
        }
    }

    /**
     * A group of prey in a sample.
     *
     * @param group the group
     * @param abundance its class, A to D
     */
    public record Prey(PreyGroup group, String abundance) {}

    /**
     * Density beside prey.
     *
     * @param water name of the reach, or of the river
     * @param season the season
     * @param territories territories by rule
     * @param surveyedKm km surveyed
     * @param perKm territories per km
     * @param samples comparable samples
     * @param preyRanks mean of their prey ranks
     * @param bmwp mean of their sums
     * @param aspt mean of their averages
     */
    public record Beside(
            String water,
            Year season,
            int territories,
            double surveyedKm,
            double perKm,
            int samples,
            double preyRanks,
            double bmwp,
            OptionalDouble aspt) {
        static Beside of(BenthosScore.Beside one) {
            return new Beside(
                    one.water(),
                    Year.of(one.season()),
                    one.territories(),
                    one.km(),
                    one.perKm(),
                    one.samples(),
                    one.prey(),
                    one.score(),
                    one.average());
        }
    }

    /**
     * The rank correlation.
     *
     * @param rho Spearman's coefficient
     * @param p its two-sided probability by chance
     * @param isExact whether every pairing was tried
     * @param pairs how many pairs
     * @param why why there is none
     */
    public record Correlation(
            OptionalDouble rho, OptionalDouble p, Optional<Boolean> isExact, OptionalInt pairs, Optional<Message> why) {
        static Correlation of(Answer<RankCorrelation> answer) {
            Optional<RankCorrelation> found = answer.found();
            return new Correlation(
                    Numbers.of(found, RankCorrelation::coefficient),
                    Numbers.of(found, RankCorrelation::p),
                    found.map(RankCorrelation::isExact),
                    found.map(one -> OptionalInt.of(one.pairs())).orElse(OptionalInt.empty()),
                    refusal(answer));
        }
    }

    /**
     * The log-linear Poisson model with an effect of each water.
     *
     * @param percent how much higher the density is with one more of prey, in %
     * @param lower lower limit
     * @param upper upper limit
     * @param level confidence level
     * @param why why there is none
     */
    public record Model(
            OptionalDouble percent, OptionalDouble lower, OptionalDouble upper, double level, Optional<Message> why) {
        static Model of(Answer<Estimate> answer, double level) {
            Optional<Estimate> percent = answer.found().map(slope -> slope.on(beta -> 100 * Math.expm1(beta)));
            return new Model(
                    Numbers.of(percent, Estimate::value),
                    Numbers.of(percent, Estimate::lower),
                    Numbers.of(percent, Estimate::upper),
                    level,
                    refusal(answer));
        }
    }

    private static Optional<Message> refusal(Answer<?> answer) {
        return answer instanceof Answer.NotEstimable<?> none
                ? Optional.of(CautionMessage.of(none.because()))
                : Optional.empty();
    }

    /**
     * {@return the scores of a book's kick samples}
     *
     * @param book an open book
     * @param scope what is asked
     * @param change what is changed in the usual settings of the species
     * @throws WrongRequest if the book has no such river or reach, or no kick sample there and then
     */
    public static BenthosAnswer of(Book book, Scope scope, UnaryOperator<MapSettings> change) {
        SurveyReading reading = SurveyReading.of(book, scope.inItsYear());
        Water water = reading.water();
        SurveyRecords records = reading.records();
        BenthosScore found = BenthosScore.of(
                records, scope.species(), change.apply(MapSettings.usualFor(scope.species())), water, scope.level());
        return of(found, records, scope);
    }

    /**
     * {@return the scores of the kick samples of a book that is read and mapped already, by the usual settings}
     *
     * @param maps the maps of its seasons, and its records
     * @param scope what is asked, of all days
     * @param progress hears how far the work has come, and may stop it
     * @throws CancellationException if it is stopped
     * @throws WrongRequest as for a book
     */
    public static BenthosAnswer of(SeasonMaps maps, Scope scope, Progress progress) {
        SurveyReading reading = SurveyReading.of(maps.records(), scope);
        List<Integer> sampled = reading.records().kickSamples().stream()
                .map(sample -> sample.date().getYear())
                .distinct()
                .sorted()
                .toList();
        List<TerritoryMap> mapped = maps.all(sampled, Water.ALL, progress);
        return of(BenthosScore.of(reading.records(), mapped, reading.water(), scope.level()), reading.records(), scope);
    }

    private static BenthosAnswer of(BenthosScore found, SurveyRecords records, Scope scope) {
        if (found.samples().isEmpty()) {
            throw new WrongRequest(Message.of("benthos.none"));
        }
        return new BenthosAnswer(
                scope.species(),
                found.samples().stream().map(one -> Sample.of(one, records)).toList(),
                found.compared(),
                found.beside().stream().map(Beside::of).toList(),
                Correlation.of(found.correlation()),
                Model.of(found.slope(), scope.level()),
                found.caution(),
                found.warnings());
    }

    /** {@return whether a name was written that the score table does not know} */
    public boolean hasProblems() {
        return samples.stream().anyMatch(sample -> !sample.isComplete());
    }
}

package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.CancellationException;
import java.util.function.UnaryOperator;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.exposure.ExposureDays;
import org.ouzelbook.stats.estimator.exposure.LogisticExposure;
import org.ouzelbook.stats.estimator.trend.RankTrend;
import org.ouzelbook.stats.survey.BreedingPace;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.NestAttempt;
import org.ouzelbook.stats.survey.NestSuccess;
import org.ouzelbook.stats.survey.SampleMean;
import org.ouzelbook.stats.survey.SeasonMaps;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.estimate.EstimateNests.Figure;

/**
 * How nests fare: the answer of {@code nests}. Its names are those that scripts rely on. It names nests, which are private.
 *
 * @param species whose nests
 * @param pace how long an attempt takes
 * @param attempts attempts that were computed with
 * @param exposureDays their exposure days; days before a success count to the middle of the last interval
 * @param exposureDaysSeenAlive the same to the last check that found the nest alive
 * @param losses nests lost while watched
 * @param dailySurvival from exposure days
 * @param periodDays days of an attempt, from the first egg
 * @param success of an attempt, from exposure days
 * @param eggsDailySurvival daily survival with eggs, by logistic exposure
 * @param youngDailySurvival daily survival with young, by logistic exposure
 * @param successByStage success from both stages
 * @param apparent the share of known ends that were a success, too high
 * @param firstEgg for each nest, when its first egg was laid
 * @param clutch mean clutch
 * @param fledgedPerAttempt mean young fledged an attempt
 * @param fledgedPerTerritory mean young fledged a territory
 * @param seasons each season
 * @param firstEggShift days a year by which the medians of the seasons have become later
 * @param nests each nest
 * @param warnings what would mislead a reader who did not know it
 */
public record NestsAnswer(
        Species species,
        BreedingPace pace,
        int attempts,
        double exposureDays,
        double exposureDaysSeenAlive,
        long losses,
        Figure dailySurvival,
        double periodDays,
        Figure success,
        Figure eggsDailySurvival,
        Figure youngDailySurvival,
        Figure successByStage,
        Figure apparent,
        List<FirstEgg> firstEgg,
        Mean clutch,
        Mean fledgedPerAttempt,
        Mean fledgedPerTerritory,
        List<Season> seasons,
        Figure firstEggShift,
        List<OneNest> nests,
        List<Message> warnings) {

    /**
     * When a first egg was laid.
     *
     * @param nest name of the nest
     * @param earliest the first possible day
     * @param latest the last possible day
     */
    public record FirstEgg(String nest, LocalDate earliest, LocalDate latest) {}

    /**
     * A mean.
     *
     * @param mean the mean; empty with {@code why}
     * @param se its standard error
     * @param lower lower limit
     * @param upper upper limit
     * @param n how many values
     * @param why why there is none
     */
    public record Mean(
            OptionalDouble mean,
            OptionalDouble se,
            OptionalDouble lower,
            OptionalDouble upper,
            int n,
            Optional<Message> why) {
        private static Mean of(Answer<SampleMean> answer) {
            Optional<SampleMean> found = answer.found();
            return new Mean(
                    Numbers.of(found, SampleMean::mean),
                    Numbers.of(found, SampleMean::standardError),
                    Numbers.of(found, SampleMean::lower),
                    Numbers.of(found, SampleMean::upper),
                    found.map(SampleMean::n).orElse(0),
                    answer instanceof Answer.NotEstimable<SampleMean> not
                            ? Optional.of(CautionMessage.of(not.because()))
                            : Optional.empty());
        }
    }

    /**
     * One season.
     *
     * @param season the calendar year
     * @param attempts attempts that were computed with
     * @param succeeded of them, known to have succeeded
     * @param failed of them, known to have failed
     * @param unknown of them, with an unknown end
     * @param medianFirstEgg the median of first attempts whose first egg is known within 14 days
     * @param dated how many those are
     */
    public record Season(
            int season,
            int attempts,
            long succeeded,
            long failed,
            long unknown,
            Optional<LocalDate> medianFirstEgg,
            int dated) {}

    /**
     * One nest.
     *
     * @param nest its name
     * @param season the calendar year
     * @param outcome how it ended
     * @param clutch eggs, if known
     * @param brood young at the last count
     * @param fledged young fledged, if known
     * @param problems what cannot have been so
     */
    public record OneNest(
            String nest,
            int season,
            NestOutcome outcome,
            OptionalInt clutch,
            OptionalInt brood,
            OptionalInt fledged,
            List<Message> problems) {}

    /**
     * {@return how the nests of a book fared}
     *
     * @param book an open book
     * @param scope what is asked; without a season, of all seasons
     * @param rules what is changed in the mapping rules, by which nests are of one territory
     * @param pace what is changed in the usual pace of the species
     * @throws WrongRequest if the book has no such river or reach, or no checked nest of the species
     */
    public static NestsAnswer of(
            Book book, Scope scope, UnaryOperator<MapSettings> rules, UnaryOperator<BreedingPace> pace) {
        SurveyReading reading = SurveyReading.of(book, scope);
        return of(
                SeasonMaps.of(reading.records(), scope.species(), rules.apply(MapSettings.usualFor(scope.species()))),
                reading,
                pace.apply(BreedingPace.usualFor(scope.species())),
                Progress.NONE);
    }

    /**
     * {@return how the nests of a book fared that is read and mapped already, at the usual pace}
     *
     * @param maps the maps of its seasons, and its records
     * @param scope what is asked, of all days
     * @param progress hears how far the work has come, and may stop it
     * @throws CancellationException if it is stopped
     * @throws WrongRequest as for a book
     */
    public static NestsAnswer of(SeasonMaps maps, Scope scope, Progress progress) {
        return of(maps, SurveyReading.of(maps.records(), scope), BreedingPace.usualFor(scope.species()), progress);
    }

    private static NestsAnswer of(SeasonMaps maps, SurveyReading reading, BreedingPace pace, Progress progress) {
        Scope scope = reading.scope();
        List<Integer> seasons = scope.season()
                .map(List::of)
                .orElseGet(() -> reading.records().nestChecks().stream()
                        .map(NestCheck::date)
                        .map(LocalDate::getYear)
                        .distinct()
                        .sorted()
                        .toList());
        NestSuccess found = NestSuccess.of(maps, seasons, reading.water(), pace, scope.level(), progress);
        if (found.attempts().isEmpty()) {
            throw new WrongRequest(Message.of("app.nests.none", scope.species()));
        }
        return of(found);
    }

    private static NestsAnswer of(NestSuccess found) {
        List<NestAttempt> sound =
                found.attempts().stream().filter(NestAttempt::isSound).toList();
        return new NestsAnswer(
                found.species(),
                found.pace(),
                sound.size(),
                found.exposure().found().map(ExposureDays::days).orElse(0.0),
                found.daysSeenAlive(),
                found.exposure().found().map(ExposureDays::losses).orElse(0L),
                Figure.of(map(found.exposure())),
                found.pace().eggDays() + found.pace().youngDays(),
                Figure.of(found.success()),
                Figure.of(stage(found, 0)),
                Figure.of(stage(found, 1)),
                Figure.of(found.successByStage()),
                Figure.of(found.apparent()),
                sound.stream()
                        .flatMap(attempt -> attempt.dates().stream()
                                .map(dates -> new FirstEgg(
                                        attempt.nest().label(),
                                        dates.firstEgg().earliest(),
                                        dates.firstEgg().latest())))
                        .toList(),
                Mean.of(found.clutch()),
                Mean.of(found.fledgedPerAttempt()),
                Mean.of(found.fledgedPerTerritory()),
                found.seasons().stream()
                        .map(one -> new Season(
                                one.season(),
                                one.attempts(),
                                one.succeeded(),
                                one.failed(),
                                one.unknown(),
                                one.medianFirstEgg(),
                                one.dated()))
                        .toList(),
                shift(found.shift()),
                found.attempts().stream()
                        .map(one -> new OneNest(
                                one.nest().label(),
                                one.season(),
                                one.outcome(),
                                one.clutch(),
                                one.brood(),
                                one.fledged(),
                                one.problems()))
                        .toList(),
                found.warnings());
    }

    private static Answer<Estimate> map(Answer<ExposureDays> exposure) {
        return exposure instanceof Answer.NotEstimable<ExposureDays> not
                ? new Answer.NotEstimable<>(not.because())
                : Answer.of(exposure.found().orElseThrow().dailySurvival());
    }

    private static Answer<Estimate> stage(NestSuccess found, int stage) {
        return found.byStage() instanceof Answer.NotEstimable<LogisticExposure> not
                ? new Answer.NotEstimable<>(not.because())
                : found.byStage()
                        .found()
                        .orElseThrow()
                        .dailySurvival()
                        .get(stage)
                        .estimate();
    }

    private static Figure shift(Answer<RankTrend> shift) {
        return Figure.of(
                shift instanceof Answer.NotEstimable<RankTrend> not
                        ? new Answer.NotEstimable<>(not.because())
                        : Answer.of(shift.found().orElseThrow().slope()));
    }
}

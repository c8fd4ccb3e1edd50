package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.exposure.ExposureDays;
import org.ouzelbook.stats.estimator.exposure.LogisticExposure;
import org.ouzelbook.stats.estimator.exposure.WatchedNest;
import org.ouzelbook.stats.estimator.interval.WilsonInterval;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.stats.estimator.trend.RankTrend;
import org.ouzelbook.stats.estimator.trend.RankTrend.Ranks;
import org.ouzelbook.stats.survey.NestAttempt.Watch;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;

/**
 * How nests fare: daily survival, success, first eggs, clutches and young, from the nests and checks of a book. An unknown end stays
 * unknown; attempts whose checks cannot have been so are named and not computed with.
 *
 * @param species whose nests
 * @param pace how long an attempt takes
 * @param attempts every attempt, by season and name, sound or not
 * @param exposure daily survival from exposure days
 * @param daysSeenAlive exposure days if those before a success are not counted: to the last check that found the nest alive
 * @param success of an attempt from the first egg, by exposure days
 * @param byStage daily survival with eggs and with young
 * @param successByStage success from both stages
 * @param apparent the share of nests with a known end that succeeded: too high, since nests that fail early are seldom found
 * @param clutch mean clutch
 * @param fledgedPerAttempt mean young fledged of attempts whose number is known
 * @param fledgedPerTerritory mean young fledged of territories all of whose nests are known
 * @param seasons each season
 * @param shift days a year by which first eggs have become later, by ranks of the seasons' medians
 * @param warnings what would mislead a reader who did not know it
 */
public record NestSuccess(
        Species species,
        BreedingPace pace,
        List<NestAttempt> attempts,
        Answer<ExposureDays> exposure,
        double daysSeenAlive,
        Answer<Estimate> success,
        Answer<LogisticExposure> byStage,
        Answer<Estimate> successByStage,
        Answer<Estimate> apparent,
        Answer<SampleMean> clutch,
        Answer<SampleMean> fledgedPerAttempt,
        Answer<SampleMean> fledgedPerTerritory,
        List<Season> seasons,
        Answer<RankTrend> shift,
        List<Message> warnings) {
    /** First-egg dates that are known no better than this enter no median. Common practice, no source. */
    private static final long WIDEST_WINDOW = 14;

    private static final int EGGS = 0;
    private static final int YOUNG = 1;
    static final int FEW_LOSSES = 10;

    /** Copies the lists. */
    public NestSuccess {
        attempts = List.copyOf(attempts);
        seasons = List.copyOf(seasons);
        warnings = List.copyOf(warnings);
    }

    /**
     * One season.
     *
     * @param season the calendar year
     * @param attempts sound attempts
     * @param succeeded how many are known to have succeeded
     * @param failed how many are known to have failed
     * @param unknown how many ended nobody knows how
     * @param dated first attempts of a territory whose first egg is known well enough
     * @param medianFirstEgg the median of the middles of their first-egg dates; empty without any
     */
    public record Season(
            int season,
            int attempts,
            long succeeded,
            long failed,
            long unknown,
            int dated,
            Optional<LocalDate> medianFirstEgg) {}

    /**
     * {@return how the nests of a species fared}
     *
     * @param records the records of the book
     * @param species whose nests
     * @param seasons calendar years that are asked about
     * @param water the water that is asked about
     * @param settings the rules of the map that says which nests are of one territory
     * @param pace how long an attempt takes
     * @param level level of the limits, between 0 and 1
     */
    public static NestSuccess of(
            SurveyRecords records,
            Species species,
            List<Integer> seasons,
            Water water,
            MapSettings settings,
            BreedingPace pace,
            double level) {
        return of(SeasonMaps.of(records, species, settings), seasons, water, pace, level, Progress.NONE);
    }

    /**
     * {@return how nests fare, with the maps that are there already}
     *
     * @param maps the maps of the species, and the records
     * @param seasons the seasons that are asked about
     * @param water the water that is asked about
     * @param pace how long an attempt takes
     * @param level level of the limits, between 0 and 1
     * @param progress hears how many seasons are mapped, and may stop the work
     * @throws CancellationException if it is stopped
     */
    public static NestSuccess of(
            SeasonMaps maps, List<Integer> seasons, Water water, BreedingPace pace, double level, Progress progress) {
        SurveyRecords records = maps.records();
        Species species = maps.species();
        List<NestAttempt> attempts = attempts(records, species, seasons, water, pace);
        List<NestAttempt> sound = attempts.stream().filter(NestAttempt::isSound).toList();
        NestTerritories territories = NestTerritories.of(maps, sound, progress);
        List<Watch> watched =
                sound.stream().flatMap(attempt -> attempt.watched().stream()).toList();
        Answer<ExposureDays> exposure = exposure(sound, level);
        Answer<LogisticExposure> byStage = byStage(watched, level);
        List<Season> bySeason = seasons(sound, territories);
        double period = pace.eggDays() + pace.youngDays();
        return new NestSuccess(
                species,
                pace,
                attempts,
                exposure,
                watched.stream()
                        .filter(Watch::seen)
                        .mapToDouble(watch -> watch.days() * (watch.survived() ? 1 : ExposureDays.HALF))
                        .sum(),
                exposure instanceof Answer.NotEstimable<ExposureDays> not
                        ? new Answer.NotEstimable<>(not.because())
                        : Answer.of(exposure.found().orElseThrow().success(period)),
                byStage,
                successByStage(byStage, pace, level),
                apparent(sound, level),
                SampleMean.of(numbers(sound.stream().map(NestAttempt::clutch).toList()), level),
                SampleMean.of(numbers(sound.stream().map(NestAttempt::fledged).toList()), level),
                SampleMean.of(territories.fledged(), level),
                bySeason,
                shift(bySeason, level),
                warnings(attempts, sound, exposure, territories));
    }

    /** Every attempt that was checked, sound or not, by season and name. */
    static List<NestAttempt> attempts(
            SurveyRecords records, Species species, List<Integer> seasons, Water water, BreedingPace pace) {
        Map<UUID, List<NestCheck>> checks =
                records.nestChecks().stream().collect(Collectors.groupingBy(NestCheck::nestId));
        return records.nests().stream()
                .filter(nest -> nest.species().equals(species))
                .filter(nest ->
                        water.contains(nest.place().riverId(), nest.place().chainage()))
                .filter(nest -> checks.containsKey(nest.id()))
                .map(nest -> NestAttempt.of(nest, checks.getOrDefault(nest.id(), List.of()), pace))
                .filter(attempt -> seasons.contains(attempt.season()))
                .sorted(Comparator.comparingInt(NestAttempt::season)
                        .thenComparing(attempt -> attempt.nest().label()))
                .toList();
    }

    /** Daily survival from the exposure days of sound attempts. */
    static Answer<ExposureDays> exposure(List<NestAttempt> sound, double level) {
        return ExposureDays.of(
                sound.stream()
                        .flatMap(attempt -> attempt.watched().stream())
                        .map(watch -> nest(watch).interval())
                        .toList(),
                ExposureDays.HALF,
                level);
    }

    private static WatchedNest nest(Watch watch) {
        List<WatchedNest.Days> days = new ArrayList<>();
        if (watch.eggDays() > 0) {
            days.add(new WatchedNest.Days(EGGS, watch.eggDays()));
        }
        if (watch.youngDays() > 0) {
            days.add(new WatchedNest.Days(YOUNG, watch.youngDays()));
        }
        return new WatchedNest(days, watch.survived());
    }

    private static Answer<LogisticExposure> byStage(List<Watch> watched, double level) {
        boolean eggs = watched.stream().anyMatch(watch -> watch.eggDays() > 0);
        boolean young = watched.stream().anyMatch(watch -> watch.youngDays() > 0);
        if (!eggs || !young) {
            return Answer.notEstimable(Reason.ONE_STAGE);
        }
        return LogisticExposure.of(
                watched.stream().map(NestSuccess::nest).toList(),
                2,
                List.of(Covariate.levels("stage", List.of("eggs", "young"))),
                level);
    }

    private static Answer<Estimate> successByStage(Answer<LogisticExposure> byStage, BreedingPace pace, double level) {
        if (byStage instanceof Answer.NotEstimable<LogisticExposure> not) {
            return new Answer.NotEstimable<>(not.because());
        }
        return byStage.found()
                .orElseThrow()
                .success(
                        List.of(
                                new WatchedNest.Days(EGGS, pace.eggDays()),
                                new WatchedNest.Days(YOUNG, pace.youngDays())),
                        level);
    }

    static long count(List<NestAttempt> attempts, NestOutcome outcome) {
        return attempts.stream().filter(attempt -> attempt.outcome() == outcome).count();
    }

    private static Answer<Estimate> apparent(List<NestAttempt> sound, double level) {
        long succeeded = count(sound, NestOutcome.SUCCESS);
        return WilsonInterval.of(succeeded, succeeded + count(sound, NestOutcome.FAILURE), level);
    }

    private static List<Integer> numbers(List<OptionalInt> numbers) {
        return numbers.stream().flatMap(number -> number.stream().boxed()).toList();
    }

    private static List<Season> seasons(List<NestAttempt> sound, NestTerritories territories) {
        return sound.stream()
                .collect(Collectors.groupingBy(NestAttempt::season, TreeMap::new, Collectors.toList()))
                .entrySet()
                .stream()
                .map(season -> season(season.getKey(), season.getValue(), territories))
                .toList();
    }

    private static Season season(int year, List<NestAttempt> attempts, NestTerritories territories) {
        List<LocalDate> first = territories.first(attempts).stream()
                .flatMap(attempt -> attempt.dates().stream())
                .map(BreedingDates::firstEgg)
                .filter(window -> window.days() <= WIDEST_WINDOW)
                .map(BreedingDates.Window::middle)
                .sorted()
                .toList();
        return new Season(
                year,
                attempts.size(),
                count(attempts, NestOutcome.SUCCESS),
                count(attempts, NestOutcome.FAILURE),
                count(attempts, NestOutcome.UNKNOWN),
                first.size(),
                median(first));
    }

    private static Optional<LocalDate> median(List<LocalDate> days) {
        if (days.isEmpty()) {
            return Optional.empty();
        }
        LocalDate lower = days.get((days.size() - 1) / 2);
        LocalDate upper = days.get(days.size() / 2);
        return Optional.of(LocalDate.ofEpochDay((lower.toEpochDay() + upper.toEpochDay()) / 2));
    }

    private static Answer<RankTrend> shift(List<Season> seasons, double level) {
        List<Season> dated = seasons.stream()
                .filter(season -> season.medianFirstEgg().isPresent())
                .toList();
        return RankTrend.of(
                dated.stream().mapToDouble(Season::season).toArray(),
                dated.stream()
                        .mapToDouble(
                                season -> season.medianFirstEgg().orElseThrow().getDayOfYear())
                        .toArray(),
                level,
                Ranks.INTERPOLATED);
    }

    private static List<Message> warnings(
            List<NestAttempt> attempts,
            List<NestAttempt> sound,
            Answer<ExposureDays> exposure,
            NestTerritories territories) {
        List<Message> warnings = new ArrayList<>();
        attempts.forEach(attempt -> warnings.addAll(attempt.problems()));
        long losses = exposure.found().map(ExposureDays::losses).orElse(0L);
        if (losses > 0 && losses < FEW_LOSSES) {
            warnings.add(Message.of("estimate.nests.fewLosses", losses));
        }
        long unknown = count(sound, NestOutcome.UNKNOWN);
        if (unknown > 0) {
            warnings.add(Message.of("nests.warning.unknown", unknown));
        }
        long unwatched =
                sound.stream().filter(attempt -> attempt.watched().isEmpty()).count();
        if (unwatched > 0) {
            warnings.add(Message.of("nests.warning.unwatched", unwatched));
        }
        if (!territories.twoAtOnce().isEmpty()) {
            warnings.add(Message.of("nests.warning.twoAtOnce", territories.twoAtOnce()));
        }
        if (territories.loose() > 0) {
            warnings.add(Message.of("nests.warning.loose", territories.loose()));
        }
        return warnings;
    }
}

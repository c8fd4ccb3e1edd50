package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.score.FoundTaxon;
import org.ouzelbook.stats.estimator.score.RankCorrelation;
import org.ouzelbook.stats.estimator.score.SampleScore;
import org.ouzelbook.stats.estimator.score.ScoreSlope;
import org.ouzelbook.stats.estimator.score.ScoreTable;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;

/**
 * What the kick samples score, and the birds' density beside the prey, reach by reach and season by season.
 *
 * <p>A score rises with the time kicked, so only samples of one effort, the commonest, are set beside the birds: the same
 * minutes and the same method. Prey is the ranks of the abundance classes of the groups that dippers eat, added up, the mean
 * of a season's samples. It is descriptive: a link is no cause, and no link is no proof that food does not matter.
 *
 * @param samples every sample, by date
 * @param compared the effort of the samples that were compared; empty if none told its minutes
 * @param beside density beside prey, by water, then by season; seasons without two visits or a comparable sample are left out
 * @param correlation the rank correlation of density and prey over those rows
 * @param slope how the log density goes with one more of prey, within waters
 * @param caution what every reader of a pairing must know
 * @param warnings what would mislead a reader who did not know it
 */
public record BenthosScore(
        List<Sample> samples,
        Optional<Effort> compared,
        List<Beside> beside,
        Answer<RankCorrelation> correlation,
        Answer<Estimate> slope,
        Message caution,
        List<Message> warnings) {
    /** Copies the lists. */
    public BenthosScore {
        samples = List.copyOf(samples);
        beside = List.copyOf(beside);
        warnings = List.copyOf(warnings);
    }

    /**
     * How a sample was taken.
     *
     * @param minutes active kicking time
     * @param method how, as written
     */
    public record Effort(double minutes, String method) {}

    /**
     * One sample.
     *
     * @param sample the sample
     * @param score what it scores
     * @param effort how it was taken; empty if the minutes were not written down
     * @param warnings what is to be known of it
     */
    public record Sample(KickSample sample, SampleScore score, Optional<Effort> effort, List<Message> warnings) {
        /** Copies the list. */
        public Sample {
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * Density beside prey on one water in one season.
     *
     * @param water name of the reach, or of the river
     * @param season the calendar year
     * @param territories territories that count, by rule
     * @param km km surveyed
     * @param samples comparable samples taken there in that year
     * @param prey mean of their prey ranks
     * @param score mean of their scores
     * @param average mean of their average scores per taxon; empty if one is undefined
     */
    public record Beside(
            String water,
            int season,
            int territories,
            double km,
            int samples,
            double prey,
            double score,
            OptionalDouble average) {
        /** {@return territories per km} */
        public double perKm() {
            return territories / km;
        }
    }

    /**
     * {@return the scores of all samples, beside the density of a species}
     *
     * @param records the records of the book
     * @param species whose density
     * @param settings the thresholds of the maps
     * @param asked the water asked about: samples elsewhere are left out
     * @param level level of the interval, between 0 and 1
     */
    public static BenthosScore of(
            SurveyRecords records, Species species, MapSettings settings, Water asked, double level) {
        return of(
                records,
                waters(records, asked),
                asked,
                (water, season) -> TerritoryMap.of(records, species, season, settings, water)
                        .rivers()
                        .get(0),
                level);
    }

    /**
     * {@return the scores of all samples, beside the density of each whole river that maps show}
     *
     * @param records the records that the maps were made from
     * @param maps maps of one species by the same settings, one a season; samples of other years are left out
     * @param asked the water that they were made for
     * @param level level of the interval, between 0 and 1
     */
    public static BenthosScore of(SurveyRecords records, List<TerritoryMap> maps, Water asked, double level) {
        Map<Integer, TerritoryMap> bySeason =
                maps.stream().collect(Collectors.toMap(TerritoryMap::season, Function.identity()));
        List<Water> rivers = records.rivers().rivers().stream()
                .map(River::id)
                .filter(asked::includes)
                .map(river -> asked.stretch().isPresent() ? asked : Water.ofRiver(river))
                .toList();
        SurveyRecords ofTheseSeasons = records.withKickSamples(records.kickSamples().stream()
                .filter(sample -> bySeason.containsKey(sample.date().getYear()))
                .toList());
        return of(
                ofTheseSeasons,
                rivers,
                asked,
                (water, season) -> Objects.requireNonNull(bySeason.get(season)).rivers().stream()
                        .filter(map -> water.includes(map.river().id()))
                        .findFirst()
                        .orElseThrow(),
                level);
    }

    private static BenthosScore of(
            SurveyRecords records,
            List<Water> waters,
            Water asked,
            BiFunction<Water, Integer, RiverMap> map,
            double level) {
        List<Sample> samples = records.kickSamples().stream()
                .filter(sample ->
                        asked.contains(sample.place().riverId(), sample.place().chainage()))
                .sorted(Comparator.comparing(KickSample::date).thenComparing(KickSample::label))
                .map(BenthosScore::sample)
                .toList();
        Optional<Effort> compared = commonest(samples);
        List<Sample> comparable = samples.stream()
                .filter(sample -> sample.effort().isPresent() && sample.effort().equals(compared))
                .toList();
        List<Beside> beside = new ArrayList<>();
        for (Water water : waters) {
            beside.addAll(beside(records, water, map, comparable));
        }
        return new BenthosScore(
                samples,
                compared,
                beside,
                RankCorrelation.of(
                        beside.stream().mapToDouble(Beside::prey).toArray(),
                        beside.stream().mapToDouble(Beside::perKm).toArray()),
                ScoreSlope.of(
                        beside.stream()
                                .map(one -> new ScoreSlope.Cell(one.water(), one.territories(), one.km(), one.prey()))
                                .toList(),
                        level),
                Message.of("benthos.caution"),
                warnings(samples, comparable, compared, beside));
    }

    /**
     * {@return what one sample scores}
     *
     * @param sample a kick sample
     */
    public static Sample sample(KickSample sample) {
        List<FoundTaxon> found = sample.taxa().stream()
                .flatMap(taxon -> FoundTaxon.of(taxon.name(), taxon.abundance()).stream())
                .toList();
        SampleScore score = SampleScore.of(found, ScoreTable.bmwp());
        List<Message> warnings = new ArrayList<>();
        score.unknown()
                .forEach((name, nearest) -> warnings.add(
                        nearest.isEmpty()
                                ? Message.of("benthos.unknown", name)
                                : Message.of("benthos.misspelt", name, nearest)));
        if (!score.notScoring().isEmpty()) {
            warnings.add(Message.of("benthos.notScoring", score.notScoring()));
        }
        if (score.average().isEmpty()) {
            warnings.add(Message.of("benthos.noAverage"));
        }
        if (sample.minutes().isEmpty()) {
            warnings.add(Message.of("benthos.noMinutes"));
        }
        Optional<Effort> effort = sample.minutes().isPresent()
                ? Optional.of(new Effort(
                        sample.minutes().getAsDouble(), sample.method().strip().toLowerCase(Locale.ROOT)))
                : Optional.empty();
        return new Sample(sample, score, effort, warnings);
    }

    private static Optional<Effort> commonest(List<Sample> samples) {
        Map<Effort, Long> times = samples.stream()
                .flatMap(sample -> sample.effort().stream())
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
        return times.entrySet().stream()
                .max(Map.Entry.<Effort, Long>comparingByValue()
                        .thenComparing(entry -> entry.getKey().minutes())
                        .thenComparing(entry -> entry.getKey().method()))
                .map(Map.Entry::getKey);
    }

    /** The reaches that the asked water holds; each river whole where it has none. */
    private static List<Water> waters(SurveyRecords records, Water asked) {
        if (asked.stretch().isPresent()) {
            return List.of(asked);
        }
        List<Water> waters = new ArrayList<>();
        records.rivers().rivers().stream()
                .map(River::id)
                .filter(asked::includes)
                .forEach(river -> {
                    List<Water> reaches = records.reaches().stream()
                            .filter(reach -> reach.riverId().equals(river))
                            .map(reach -> Water.ofReach(reach, records.reaches()))
                            .toList();
                    waters.addAll(reaches.isEmpty() ? List.of(Water.ofRiver(river)) : reaches);
                });
        return waters;
    }

    private static List<Beside> beside(
            SurveyRecords records, Water water, BiFunction<Water, Integer, RiverMap> maps, List<Sample> comparable) {
        UUID river = water.riverId().orElseThrow();
        Map<Integer, List<Sample>> seasons = comparable.stream()
                .filter(one -> water.contains(
                        one.sample().place().riverId(), one.sample().place().chainage()))
                .collect(Collectors.groupingBy(one -> one.sample().date().getYear()));
        List<Beside> rows = new ArrayList<>();
        seasons.keySet().stream().sorted().forEach(season -> {
            RiverMap map = maps.apply(water, season);
            if (map.isCounted() && map.surveyedKm() > 0) {
                rows.add(row(
                        water.name().orElse(records.rivers().river(river).name()),
                        season,
                        map,
                        seasons.getOrDefault(season, List.of())));
            }
        });
        return rows;
    }

    private static Beside row(String water, int season, RiverMap map, List<Sample> samples) {
        List<SampleScore> scores = samples.stream().map(Sample::score).toList();
        boolean defined = scores.stream().allMatch(score -> score.average().isPresent());
        return new Beside(
                water,
                season,
                map.count().likely(),
                map.surveyedKm(),
                samples.size(),
                scores.stream().mapToInt(SampleScore::preyRanks).average().orElseThrow(),
                scores.stream().mapToInt(SampleScore::score).average().orElseThrow(),
                defined
                        ? scores.stream()
                                .mapToDouble(score -> score.average().orElseThrow())
                                .average()
                        : OptionalDouble.empty());
    }

    private static List<Message> warnings(
            List<Sample> samples, List<Sample> comparable, Optional<Effort> compared, List<Beside> beside) {
        List<Message> warnings = new ArrayList<>();
        int others = samples.size() - comparable.size();
        if (others > 0 && compared.isPresent()) {
            warnings.add(Message.of(
                    "benthos.otherEffort",
                    others,
                    compared.get().minutes(),
                    compared.get().method()));
        }
        List<String> unknown = samples.stream()
                .flatMap(sample -> sample.score().unknown().keySet().stream())
                .distinct()
                .toList();
        if (!unknown.isEmpty()) {
            warnings.add(Message.of("benthos.atLeast", unknown));
        }
        List<String> fromMemory = samples.stream()
                .flatMap(sample -> sample.score().fromMemory().stream())
                .distinct()
                .sorted()
                .toList();
        if (!fromMemory.isEmpty()) {
            warnings.add(Message.of("benthos.fromMemory", fromMemory));
        }
        long seasons = beside.stream().mapToInt(Beside::season).distinct().count();
        if (!beside.isEmpty()) {
            warnings.add(Message.of("benthos.notIndependent", beside.size(), seasons));
        }
        return warnings;
    }
}

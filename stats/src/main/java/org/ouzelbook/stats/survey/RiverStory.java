package org.ouzelbook.stats.survey;

import java.time.Year;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.LongSummaryStatistics;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.interval.GarwoodInterval;
import org.ouzelbook.stats.estimator.rate.RateComparison;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.stats.survey.TerritoryMap.Total;
import org.ouzelbook.tracker.domain.BreedingCode.EvidenceClass;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;

/**
 * What a season tells, in sentences: the first is the finding, the second which way numbers go, the others what stands behind.
 * The report and the window tell the same story. No sentence names a nest, a ringed bird, a person or a single record.
 *
 * @param species whose story
 * @param season the calendar year
 * @param findings the sentences, the most important first
 */
public record RiverStory(Species species, int season, List<Finding> findings) {
    private static final double USUAL_POWER = 0.8;

    /** Warnings that may stand beside a count in public, the strongest first. */
    private static final List<String> STRONGEST = List.of(
            "map.warning.noEffort",
            "map.warning.lowEfficiency",
            "map.warning.fewVisits",
            "map.warning.thinWater",
            "map.warning.otherEffort",
            "map.warning.fairEfficiency",
            "map.warning.otherRules",
            "map.warning.roundedPlaces");

    /** Copies the list. */
    public RiverStory {
        findings = List.copyOf(findings);
    }

    /** What a sentence is about. */
    public enum Topic {
        /** How many territories. */
        COUNT,
        /** How many by the model, with pairs that no visit found. */
        MODEL,
        /** Which way numbers go. */
        DIRECTION,
        /** How sure breeding is. */
        BREEDING,
        /** How many nests succeeded. */
        NESTS,
        /** Territories per km. */
        DENSITY,
        /** How much of the water birds used. */
        OCCUPANCY,
        /** The season before. */
        CHANGE,
        /** What the trend may hide. */
        TREND,
        /** Ringed birds from year to year. */
        SURVIVAL,
        /** What the surveyor decided. */
        DECISIONS,
        /** The prey on the river bed. */
        FOOD
    }

    /** What a sentence rests on. */
    public enum Basis {
        /** Records, counted by the rules. */
        COUNTED,
        /** A model or an interval. */
        ESTIMATED,
        /** A rule of words, or a person. */
        JUDGED
    }

    /**
     * One sentence.
     *
     * @param topic what it is about
     * @param basis what it rests on
     * @param sentence the sentence
     * @param records keys of the records behind it; empty where they are too many to name, as for a trend
     * @param n how many observations it rests on: records, seasons or pairs
     * @param caveat the strongest thing that speaks against it; empty where nothing does
     */
    public record Finding(
            Topic topic, Basis basis, Message sentence, List<UUID> records, long n, Optional<Message> caveat) {
        /** Copies the list. */
        public Finding {
            records = List.copyOf(records);
        }
    }

    /**
     * {@return the story of the last of some seasons}
     *
     * @param records the records that everything was made from
     * @param seasons the territories of this and earlier seasons, by season; one or more
     * @param trend the trend of the same seasons
     * @param benthos the kick samples beside the birds of the same seasons; empty if there are none
     * @param water the water that the territories are of
     * @param level level of the intervals, between 0 and 1
     * @throws IllegalArgumentException if there is no season
     */
    public static RiverStory of(
            SurveyRecords records,
            List<TerritoryMap> seasons,
            CountTrend trend,
            Optional<BenthosScore> benthos,
            Water water,
            double level) {
        if (seasons.isEmpty()) {
            throw new IllegalArgumentException("A story needs a season");
        }
        TerritoryMap map = seasons.get(seasons.size() - 1);
        LifeStory life = new LifeStory(records, map.species(), map.season(), water, map.settings(), level);
        List<Finding> findings = new ArrayList<>();
        findings.add(count(map));
        modelled(trend, map.season()).ifPresent(findings::add);
        findings.add(direction(trend));
        breeding(map).ifPresent(findings::add);
        findings.addAll(life.nests());
        density(map, level).ifPresent(findings::add);
        life.occupancy().ifPresent(findings::add);
        change(seasons, level).ifPresent(findings::add);
        findings.addAll(trend(trend));
        life.survival().ifPresent(findings::add);
        decisions(records, map).ifPresent(findings::add);
        benthos.flatMap(RiverStory::food).ifPresent(findings::add);
        return new RiverStory(map.species(), map.season(), findings);
    }

    /**
     * {@return the sentences about something}
     *
     * @param topic what they are about
     */
    public List<Finding> about(Topic topic) {
        return findings.stream().filter(finding -> finding.topic() == topic).toList();
    }

    private static Finding count(TerritoryMap map) {
        List<UUID> behind = counted(map).stream()
                .flatMap(territory -> territory.registrations().stream())
                .map(Sighting::id)
                .toList();
        Message sentence = map.total()
                .map(total -> Message.of(
                        total.min() == total.max() ? "story.count" : "story.countWithRange",
                        total.likely(),
                        map.species(),
                        total.surveyedKm(),
                        Year.of(map.season()),
                        total.perKm(),
                        total.min(),
                        total.max()))
                .orElseGet(() ->
                        Message.of("story.noCount", map.species(), Year.of(map.season()), CountTrend.VISITS_TO_COUNT));
        Message caveat = map.warnings().stream()
                .filter(warning -> STRONGEST.contains(warning.key()))
                .min(Comparator.comparingInt(warning -> STRONGEST.indexOf(warning.key())))
                .orElseGet(() -> Message.of("story.caveat.missed"));
        return new Finding(Topic.COUNT, Basis.COUNTED, sentence, behind, behind.size(), Optional.of(caveat));
    }

    /** In whole numbers: a tenth of a territory could tell where a nest is. */
    private static Optional<Finding> modelled(CountTrend trend, int season) {
        return trend.seasons().stream()
                .filter(total -> total.season() == season)
                .flatMap(total -> total.model().stream())
                .findFirst()
                .map(model -> new Finding(
                        Topic.MODEL,
                        Basis.ESTIMATED,
                        Message.of(
                                "story.model",
                                Math.round(model.expected()),
                                model.lower(),
                                model.upper(),
                                model.level()),
                        List.of(),
                        model.draws().size(),
                        Optional.of(Message.of("story.caveat.model"))));
    }

    private static List<Territory> counted(TerritoryMap map) {
        return map.rivers().stream()
                .filter(RiverMap::isCounted)
                .flatMap(river -> river.territories().stream())
                .filter(territory -> territory.standing() == Standing.COUNTED)
                .toList();
    }

    private static Finding direction(CountTrend trend) {
        List<Long> counts = trend.seasons().stream()
                .flatMap(season -> season.count().stream().boxed())
                .toList();
        Message verdict = trend.verdict().sentence();
        LongSummaryStatistics range = counts.stream().mapToLong(Long::longValue).summaryStatistics();
        Message sentence = counts.size() < 2
                ? Message.of("story.direction", verdict)
                : Message.of(
                        range.getMin() < range.getMax() ? "story.directionSince" : "story.directionSame",
                        Year.of(trend.seasons().get(0).season()),
                        range.getMin(),
                        range.getMax(),
                        verdict);
        Optional<Message> caveat = trend.warnings().stream()
                .filter(warning -> warning.key().startsWith("trend.warning."))
                .filter(warning -> !warning.key().equals("trend.warning.gap"))
                .findFirst();
        return new Finding(Topic.DIRECTION, Basis.JUDGED, sentence, List.of(), counts.size(), caveat);
    }

    private static Optional<Finding> breeding(TerritoryMap map) {
        List<Territory> counted = counted(map);
        return counted.isEmpty()
                ? Optional.empty()
                : Optional.of(new Finding(
                        Topic.BREEDING,
                        Basis.COUNTED,
                        Message.of(
                                "story.breeding",
                                showing(counted, EvidenceClass.CONFIRMED),
                                showing(counted, EvidenceClass.PROBABLE),
                                showing(counted, EvidenceClass.POSSIBLE)),
                        List.of(),
                        counted.size(),
                        Optional.of(Message.of("story.caveat.breeding"))));
    }

    private static int showing(List<Territory> counted, EvidenceClass evidence) {
        return (int) counted.stream()
                .filter(territory -> territory
                        .evidence()
                        .flatMap(shown -> shown.code().evidenceClass())
                        .equals(Optional.of(evidence)))
                .count();
    }

    private static Optional<Finding> density(TerritoryMap map, double level) {
        return map.total()
                .flatMap(total -> GarwoodInterval.of(total.likely(), total.surveyedKm(), level)
                        .found())
                .map(perKm -> new Finding(
                        Topic.DENSITY,
                        Basis.ESTIMATED,
                        Message.of("story.density", perKm.value(), perKm.lower(), perKm.upper(), perKm.level()),
                        List.of(),
                        perKm.n(),
                        Optional.of(Message.of("story.caveat.chance"))));
    }

    /** The season before, if both were counted on all their waters; an exact comparison of two Poisson rates. */
    private static Optional<Finding> change(List<TerritoryMap> seasons, double level) {
        if (seasons.size() < 2) {
            return Optional.empty();
        }
        TerritoryMap now = seasons.get(seasons.size() - 1);
        TerritoryMap before = seasons.get(seasons.size() - 2);
        Optional<Total> here = now.total();
        Optional<Total> there = before.total();
        boolean sameWaters = now.rivers().stream().allMatch(RiverMap::isCounted)
                && before.rivers().stream().allMatch(RiverMap::isCounted);
        if (here.isEmpty() || there.isEmpty() || !sameWaters) {
            return Optional.empty();
        }
        return RateComparison.of(
                        here.get().likely(),
                        here.get().surveyedKm(),
                        there.get().likely(),
                        there.get().surveyedKm(),
                        level)
                .found()
                .map(compared -> new Finding(
                        Topic.CHANGE,
                        Basis.ESTIMATED,
                        Message.of(
                                compared.p() < 1 - level ? "story.changed" : "story.unchanged",
                                there.get().likely(),
                                Year.of(before.season()),
                                here.get().likely(),
                                Year.of(now.season()),
                                compared.p()),
                        List.of(),
                        (long) here.get().likely() + there.get().likely(),
                        Optional.of(Message.of("story.caveat.neighbours"))));
    }

    private static List<Finding> trend(CountTrend trend) {
        List<Finding> findings = new ArrayList<>();
        trend.line().found().ifPresent(line -> {
            int n = (int) trend.seasons().stream()
                    .filter(season -> season.count().isPresent())
                    .count();
            trend.verdict()
                    .likelihood()
                    .ifPresent(word -> findings.add(estimated(
                            n,
                            "trend.sure.falling",
                            Year.of(line.firstSeason()),
                            Year.of(line.lastSeason()),
                            line.probabilityFalling(),
                            word)));
            Estimate period = line.percentOverPeriod();
            findings.add(
                    period.upper() == Double.POSITIVE_INFINITY
                            ? estimated(n, "trend.sure.periodOpen", period.value(), period.lower())
                            : estimated(n, "trend.sure.period", period.value(), period.lower(), period.upper()));
            findings.add(estimated(
                    n,
                    "trend.sure.detectable",
                    -line.smallestDetectable(USUAL_POWER).fall()));
        });
        return findings;
    }

    private static Finding estimated(int seasons, String key, Object... facts) {
        return new Finding(Topic.TREND, Basis.ESTIMATED, Message.of(key, facts), List.of(), seasons, Optional.empty());
    }

    private static Optional<Finding> decisions(SurveyRecords records, TerritoryMap map) {
        List<UUID> followed = SeasonDecisions.of(records, map.species(), map.season()).followed().stream()
                .filter(decision -> decision.kind() != DecisionKind.NOTE)
                .filter(decision -> map.rivers().stream()
                        .anyMatch(river -> river.river().id().equals(decision.riverId())))
                .map(Decision::id)
                .toList();
        return followed.isEmpty()
                ? Optional.empty()
                : Optional.of(new Finding(
                        Topic.DECISIONS,
                        Basis.JUDGED,
                        Message.of("story.decisions", followed.size()),
                        followed,
                        followed.size(),
                        Optional.of(Message.of("story.caveat.decisions"))));
    }

    private static Optional<Finding> food(BenthosScore benthos) {
        return benthos.correlation()
                .found()
                .map(found -> new Finding(
                        Topic.FOOD,
                        Basis.ESTIMATED,
                        Message.of("story.food", found.coefficient(), found.p(), found.pairs()),
                        benthos.samples().stream()
                                .map(sample -> sample.sample().id())
                                .toList(),
                        found.pairs(),
                        Optional.of(benthos.caution())));
    }
}

package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sighting;

/** Warns of clusters that the rules may have lumped, split or counted wrongly. */
final class ClusterWarnings {
    /** A territory this near the longest allowed may be two. Common practice, no source. */
    private static final double NEARLY_LONGEST = 0.9;

    /**
     * Svensson (1979), J. Appl. Ecol. 16, abstract: accurate above 60 % visit efficiency, with caution from 40 to 60 %, unreliable
     * below.
     */
    private static final double GOOD_EFFICIENCY = 0.6;

    private static final double FAIR_EFFICIENCY = 0.4;

    private final Season season;
    private final Field field;
    private final List<Message> warnings = new ArrayList<>();

    private ClusterWarnings(Season season, Field field) {
        this.season = season;
        this.field = field;
    }

    static List<Message> of(Season season, Field field, List<Cluster> clusters) {
        ClusterWarnings warnings = new ClusterWarnings(season, field);
        for (River river : season.records().rivers().rivers()) {
            if (season.water().includes(river.id())) {
                warnings.of(
                        river,
                        clusters.stream()
                                .filter(cluster -> cluster.riverId().equals(river.id()))
                                .toList());
            }
        }
        warnings.links(clusters);
        warnings.decisions();
        return warnings.warnings;
    }

    private void of(River river, List<Cluster> listed) {
        List<Object> lateSingles = new ArrayList<>();
        for (int place = 0; place < listed.size(); place++) {
            Cluster cluster = listed.get(place);
            String letter = MapMaker.letter(place);
            double length = cluster.stretch().length();
            if (cluster.accepted()
                    && length >= NEARLY_LONGEST * season.settings().maximumLengthMetres()) {
                warn("map.warning.long", river.name(), letter, length / 1000);
            }
            crowd(cluster).ifPresent(birds -> warn("map.warning.crowd", river.name(), letter, birds.size(), birds));
            if (season.standing(cluster) == Standing.ELSEWHERE) {
                warn("map.warning.shared", river.name(), letter);
            }
            if (!cluster.accepted()
                    && season.settings().juvenilesOnTheirOwn(cluster.days().get(0))) {
                cluster.sightings().forEach(seen -> lateSingles.add(seen.name()));
            }
        }
        if (!lateSingles.isEmpty()) {
            warn("map.warning.lateSingles", lateSingles.size(), lateSingles);
        }
        splitByLength(river, listed);
        VisitEfficiency.of(listed, season.effort(river.id())).ifPresent(efficiency -> {
            if (efficiency < FAIR_EFFICIENCY) {
                warn("map.warning.lowEfficiency", river.name(), efficiency);
            } else if (efficiency < GOOD_EFFICIENCY) {
                warn("map.warning.fairEfficiency", river.name(), efficiency);
            }
        });
    }

    private void warn(String key, Object... facts) {
        warnings.add(Message.of(key, facts));
    }

    /** More sightings on one visit than a pair can give, if no young explain them and nobody said that they were two pairs. */
    private Optional<List<Object>> crowd(Cluster cluster) {
        Map<UUID, List<Sighting>> byVisit = new HashMap<>();
        for (Member.Seen seen : cluster.sightings()) {
            Sighting sighting = seen.sighting();
            if (sighting.visitId().isPresent()
                    && sighting.age() != Age.DEPENDENT_JUVENILE
                    && seen.code().number() != 12) {
                byVisit.computeIfAbsent(sighting.visitId().get(), id -> new ArrayList<>())
                        .add(sighting);
            }
        }
        return byVisit.values().stream()
                .filter(birds -> birds.stream().mapToInt(Sighting::count).sum() > 2)
                .max((one, other) -> Integer.compare(one.size(), other.size()))
                .map(birds -> birds.stream().map(Member::name).toList());
    }

    /** Neighbours that only the longest territory keeps apart: no bird, nest or turn-back shows that they are two. */
    private void splitByLength(River river, List<Cluster> listed) {
        List<Object> pairs = new ArrayList<>();
        for (int place = 1; place < listed.size(); place++) {
            Cluster lower = listed.get(place - 1);
            Cluster upper = listed.get(place);
            boolean reachable = lower.highest().distanceTo(upper.lowest())
                    <= season.settings().doubtfulGapMetres();
            if (lower.accepted()
                    && upper.accepted()
                    && reachable
                    && Separation.between(lower, upper, field, season).isEmpty()) {
                pairs.add(MapMaker.letter(place - 1) + "–" + MapMaker.letter(place));
            }
        }
        if (!pairs.isEmpty()) {
            warn(
                    "map.warning.splitByLength",
                    river.name(),
                    pairs,
                    season.settings().maximumLengthMetres() / 1000);
        }
    }

    private void decisions() {
        List<Decision> effective = season.decisions().followed().stream()
                .filter(decision -> decision.kind() != DecisionKind.NOTE)
                .filter(decision -> season.water().includes(decision.riverId()))
                .toList();
        if (!effective.isEmpty()) {
            warn("map.warning.decided", effective.size());
        }
        season.decisions()
                .contradicting()
                .forEach(decision ->
                        warn("map.warning.decidedContradiction", decision.kind(), SeasonDecisions.where(decision)));
    }

    private void links(List<Cluster> clusters) {
        for (Field.Link link : field.droppedLinks()) {
            warn("map.warning.notTwoBirds", link.one().name(), link.other().name());
        }
        for (Field.Link link : field.links()) {
            boolean together =
                    clusters.stream().anyMatch(cluster -> cluster.holds(link.one()) && cluster.holds(link.other()));
            switch (link.kind()) {
                case TWO_NESTS -> {
                    if (season.metresBetween(link.one(), link.other())
                            <= season.settings().maximumLengthMetres()) {
                        warn(
                                "map.warning.twoNests",
                                link.one().name(),
                                link.other().name());
                    }
                }
                case SAME_RINGS -> {
                    if (!together) {
                        warn(
                                "map.warning.oneBirdTwoTerritories",
                                link.one().name(),
                                link.other().name());
                    }
                }
                case SIMULTANEOUS -> {
                    if (together) {
                        warn(
                                "map.warning.decidedTwoBirds",
                                link.one().name(),
                                link.other().name());
                    }
                }
                case BROOD -> {}
            }
        }
    }
}

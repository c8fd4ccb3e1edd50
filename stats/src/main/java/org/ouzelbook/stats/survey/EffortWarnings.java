package org.ouzelbook.stats.survey;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;

/** Warns of effort that makes a map or a comparison weaker than it looks. */
final class EffortWarnings {
    /** Fewer visits make no count: trade practice for dippers, D'Amico and Hémery (2003), Ibis 145:83–86, found all in three. */
    private static final int VISITS_FOR_A_COUNT = 3;

    private final Season season;
    private final List<Message> warnings = new ArrayList<>();

    private EffortWarnings(Season season) {
        this.season = season;
    }

    static List<Message> of(Season season) {
        EffortWarnings warnings = new EffortWarnings(season);
        for (River river : season.records().rivers().rivers()) {
            if (season.water().includes(river.id())) {
                warnings.of(river);
            }
        }
        if (!season.settings().equals(MapSettings.usualFor(season.species()))) {
            warnings.warnings.add(Message.of("map.warning.otherRules"));
        }
        return warnings.warnings;
    }

    private void of(River river) {
        Effort effort = season.effort(river.id()).within(season.water(), river.id());
        int days = effort.effective().size();
        boolean birds = season.sightings().stream()
                .anyMatch(sighting -> sighting.place().riverId().equals(river.id()));
        if (days == 0 && birds) {
            warnings.add(Message.of("map.warning.noEffort", river.name(), season.species()));
        } else if (days > 0 && days < VISITS_FOR_A_COUNT) {
            warnings.add(Message.of("map.warning.fewVisits", river.name(), days));
        }
        for (Effort.Day day : effort.effective()) {
            if (day.visits().size() > 1 && overlap(day.visits())) {
                warnings.add(Message.of(
                        "map.warning.twoObservers",
                        day.visits().stream().map(Visit::label).toList(),
                        day.date()));
            }
        }
        partCoverage(river, effort);
        otherEffort(river, days);
    }

    private static boolean overlap(List<Visit> visits) {
        List<Stretch> walked =
                visits.stream().map(visit -> visit.walked().orElseThrow()).toList();
        return Stretch.totalLength(Stretch.union(walked)) < Stretch.totalLength(walked);
    }

    private void partCoverage(River river, Effort effort) {
        double all = Stretch.totalLength(effort.surveyed());
        List<Object> part = new ArrayList<>();
        for (Effort.Day day : effort.effective()) {
            if (Stretch.totalLength(day.walked()) < 0.99 * all) {
                day.visits().forEach(visit -> part.add(visit.label()));
            }
        }
        List<Stretch> thin = thinlyCovered(effort);
        if (!part.isEmpty()) {
            warnings.add(Message.of("map.warning.partVisits", river.name(), part.size(), part));
        }
        if (!thin.isEmpty()) {
            warnings.add(Message.of("map.warning.thinWater", river.name(), thin));
        }
    }

    /** Surveyed water that fewer than two effective visits covered: no territory can be accepted there by dates. */
    private List<Stretch> thinlyCovered(Effort effort) {
        TreeSet<Chainage> ends = new TreeSet<>();
        for (Effort.Day day : effort.effective()) {
            day.walked().forEach(stretch -> ends.addAll(List.of(stretch.lower(), stretch.upper())));
        }
        List<Stretch> thin = new ArrayList<>();
        for (Chainage end : ends) {
            Chainage next = ends.higher(end);
            if (next != null) {
                Stretch piece = new Stretch(end, next);
                long days = effort.effective().stream()
                        .filter(day -> day.walked().stream().anyMatch(walked -> walked.contains(piece.middle())))
                        .count();
                if (days == 1) {
                    thin.add(piece);
                }
            }
        }
        return Stretch.union(thin);
    }

    private void otherEffort(River river, int days) {
        int yearBefore = season.year() - 1;
        int before = Effort.of(season.records().visits(), river.id(), season.species(), yearBefore, season.settings())
                .within(season.water(), river.id())
                .effective()
                .size();
        if (before > 0 && days > 0 && before != days) {
            warnings.add(Message.of(
                    "map.warning.otherEffort",
                    river.name(),
                    days,
                    Year.of(season.year()),
                    before,
                    Year.of(yearBefore)));
        }
    }
}

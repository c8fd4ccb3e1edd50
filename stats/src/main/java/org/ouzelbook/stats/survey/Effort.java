package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.ouzelbook.stats.estimator.segmentation.VisitedWater;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;

/**
 * The effort of one season on one river for one species.
 *
 * @param visits visits of the season, effective or not
 * @param effective days with effective visits, by date; two observers on one day make one visit
 * @param surveyed the water that those covered, going upstream
 * @param visitedWater the same by day, for the estimator
 */
record Effort(List<Visit> visits, List<Day> effective, List<Stretch> surveyed, List<VisitedWater> visitedWater) {

    /**
     * The effective visits of one day.
     *
     * @param date the day
     * @param walked what they covered between them
     * @param visits the visits
     */
    record Day(LocalDate date, List<Stretch> walked, List<Visit> visits) {}

    static Effort of(List<Visit> all, UUID riverId, Species species, int season, MapSettings settings) {
        List<Visit> visits = all.stream()
                .filter(visit -> visit.riverId().equals(riverId) && visit.date().getYear() == season)
                .filter(visit -> settings.inSeason(visit.date()))
                .toList();
        Map<LocalDate, List<Visit>> byDay = new TreeMap<>();
        for (Visit visit : visits) {
            if (visit.effective()
                    && visit.walked().isPresent()
                    && visit.lookedFor().contains(species)) {
                byDay.computeIfAbsent(visit.date(), date -> new ArrayList<>()).add(visit);
            }
        }
        List<Day> effective = new ArrayList<>();
        byDay.forEach((date, ofDay) -> effective.add(new Day(date, walked(ofDay), List.copyOf(ofDay))));
        List<Stretch> surveyed = Stretch.union(
                effective.stream().flatMap(day -> day.walked().stream()).toList());
        return new Effort(visits, List.copyOf(effective), surveyed, visitedWater(effective));
    }

    private static List<Stretch> walked(List<Visit> visits) {
        return Stretch.union(
                visits.stream().map(visit -> visit.walked().orElseThrow()).toList());
    }

    /** The part of this effort that went over the water asked about; a visit of unknown extent is part of all. */
    Effort within(Water water, UUID riverId) {
        return new Effort(
                visits.stream()
                        .filter(visit -> visit.walked().isEmpty()
                                || !water.partOf(riverId, List.of(visit.walked().get()))
                                        .isEmpty())
                        .toList(),
                effective.stream()
                        .filter(day -> !water.partOf(riverId, day.walked()).isEmpty())
                        .toList(),
                water.partOf(riverId, surveyed),
                visitedWater);
    }

    /** The place of a day among the effective ones; −1 if it is none. */
    int visit(LocalDate date) {
        for (int i = 0; i < effective.size(); i++) {
            if (effective.get(i).date().equals(date)) {
                return i;
            }
        }
        return -1;
    }

    boolean surveyed(Chainage point) {
        return surveyed.stream().anyMatch(stretch -> stretch.contains(point));
    }

    private static List<VisitedWater> visitedWater(List<Day> days) {
        return days.stream()
                .map(day -> new VisitedWater(day.walked().stream()
                        .map(stretch -> new VisitedWater.Piece(
                                stretch.lower().metres(), stretch.upper().metres()))
                        .toList()))
                .toList();
    }
}

package org.ouzelbook.ui.strip;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;

/**
 * What one season's strip shows. Nests are no part of it: where they are is private.
 *
 * @param waters the rivers
 * @param landmarks known places along them
 * @param map the territories
 * @param visits visits of the season that looked for the species, by date
 * @param sightings sightings of the species in the season, by date
 */
public record SeasonScene(
        Waters waters, List<Landmark> landmarks, TerritoryMap map, List<Visit> visits, List<Sighting> sightings) {
    /** Copies the lists. */
    public SeasonScene {
        landmarks = List.copyOf(landmarks);
        visits = List.copyOf(visits);
        sightings = List.copyOf(sightings);
    }

    /**
     * {@return the scene of a map's species and season}
     *
     * @param records the records of the book, of all seasons
     * @param map the territories
     */
    public static SeasonScene of(SurveyRecords records, TerritoryMap map) {
        List<Visit> visits = records.visits().stream()
                .filter(visit -> visit.date().getYear() == map.season()
                        && visit.lookedFor().contains(map.species()))
                .sorted((one, other) -> one.date().compareTo(other.date()))
                .toList();
        List<Sighting> sightings = records.sightings().stream()
                .filter(sighting -> sighting.date().getYear() == map.season()
                        && sighting.species().equals(map.species()))
                .sorted((one, other) -> one.date().compareTo(other.date()))
                .toList();
        return new SeasonScene(Waters.of(records), records.landmarks(), map, visits, sightings);
    }

    Optional<TerritoryMap.RiverMap> mapOf(UUID riverId) {
        return map.rivers().stream()
                .filter(river -> river.river().id().equals(riverId))
                .findFirst();
    }

    List<Visit> visitsOf(UUID riverId) {
        return visits.stream().filter(visit -> visit.riverId().equals(riverId)).toList();
    }

    List<Sighting> sightingsOf(UUID riverId) {
        return sightings.stream()
                .filter(sighting -> sighting.place().riverId().equals(riverId))
                .toList();
    }
}

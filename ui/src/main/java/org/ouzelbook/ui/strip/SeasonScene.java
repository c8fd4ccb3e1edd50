package org.ouzelbook.ui.strip;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.ui.app.ModelShading;

/**
 * What one season's strip shows. Nests are no part of it unless they are asked for: where they are is private.
 *
 * @param waters the rivers
 * @param landmarks known places along them
 * @param map the territories
 * @param visits visits of the season that looked for the species, by date
 * @param sightings sightings of the species in the season, by date
 * @param samples kick samples of the season, by date
 * @param shading what the model makes of the season; empty where it was not asked, or is not ready
 * @param nests nests of the season; none unless asked for
 */
public record SeasonScene(
        Waters waters,
        List<Landmark> landmarks,
        TerritoryMap map,
        List<Visit> visits,
        List<Sighting> sightings,
        List<ShownSample> samples,
        Optional<ModelShading> shading,
        List<ShownNest> nests) {
    /** Copies the lists. */
    public SeasonScene {
        landmarks = List.copyOf(landmarks);
        visits = List.copyOf(visits);
        sightings = List.copyOf(sightings);
        samples = List.copyOf(samples);
        nests = List.copyOf(nests);
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
                .sorted(Comparator.comparing(Visit::date))
                .toList();
        List<Sighting> sightings = records.sightings().stream()
                .filter(sighting -> sighting.date().getYear() == map.season()
                        && sighting.species().equals(map.species()))
                .sorted(Comparator.comparing(Sighting::date))
                .toList();
        return new SeasonScene(
                Waters.of(records),
                records.landmarks(),
                map,
                visits,
                sightings,
                ShownSample.of(records, map.season()),
                Optional.empty(),
                List.of());
    }

    /**
     * {@return the same scene of other water}
     *
     * @param others the rivers, some of them folded away
     */
    public SeasonScene on(Waters others) {
        return new SeasonScene(others, landmarks, map, visits, sightings, samples, shading, nests);
    }

    /**
     * {@return the same scene with what the model makes of it}
     *
     * @param model what the model makes of the season
     */
    public SeasonScene shaded(Optional<ModelShading> model) {
        return new SeasonScene(waters, landmarks, map, visits, sightings, samples, model, nests);
    }

    /**
     * {@return the same scene with its nests; such a strip is private}
     *
     * @param records the records of the book
     */
    public SeasonScene withNests(SurveyRecords records) {
        return new SeasonScene(
                waters,
                landmarks,
                map,
                visits,
                sightings,
                samples,
                shading,
                ShownNest.of(records, map.species(), map.season()));
    }

    Optional<TerritoryMap.RiverMap> mapOf(UUID riverId) {
        return map.rivers().stream()
                .filter(river -> river.river().id().equals(riverId))
                .findFirst();
    }
}

package org.ouzelbook.ui.strip;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.ui.app.ModelShading;

/**
 * What the strip of all seasons shows. Nests are no part of it unless they are asked for: where they are is private.
 *
 * @param waters the rivers
 * @param landmarks known places along them
 * @param maps the territories of one species, one map a season, by season
 * @param samples kick samples of those seasons
 * @param shadings what the model makes of the seasons, by season; empty where it was not asked, or is not ready
 * @param nests nests of those seasons; none unless asked for
 */
public record SeasonsScene(
        Waters waters,
        List<Landmark> landmarks,
        List<TerritoryMap> maps,
        List<ShownSample> samples,
        Map<Integer, ModelShading> shadings,
        List<ShownNest> nests) {
    /**
     * Sorts the maps and checks that they are of one species.
     *
     * @throws IllegalArgumentException if there is no map, or they are of several species
     */
    public SeasonsScene {
        landmarks = List.copyOf(landmarks);
        maps = maps.stream()
                .sorted(Comparator.comparingInt(TerritoryMap::season))
                .toList();
        samples = List.copyOf(samples);
        shadings = Map.copyOf(shadings);
        nests = List.copyOf(nests);
        if (maps.stream().map(TerritoryMap::species).distinct().count() != 1) {
            throw new IllegalArgumentException("A strip shows the seasons of one species");
        }
    }

    /**
     * {@return the scene of these seasons}
     *
     * @param records the records of the book, of all seasons
     * @param maps the territories of one species, one map a season
     */
    public static SeasonsScene of(SurveyRecords records, List<TerritoryMap> maps) {
        List<ShownSample> samples = maps.stream()
                .flatMap(map -> ShownSample.of(records, map.season()).stream())
                .toList();
        return new SeasonsScene(Waters.of(records), records.landmarks(), maps, samples, Map.of(), List.of());
    }

    /**
     * {@return the same scene of other water}
     *
     * @param others the rivers, some of them folded away
     */
    public SeasonsScene on(Waters others) {
        return new SeasonsScene(others, landmarks, maps, samples, shadings, nests);
    }

    /**
     * {@return the same scene with what the model makes of it}
     *
     * @param models what the model makes of each season
     */
    public SeasonsScene shaded(Map<Integer, ModelShading> models) {
        return new SeasonsScene(waters, landmarks, maps, samples, models, nests);
    }

    /**
     * {@return the same scene with its nests; such a strip is private}
     *
     * @param records the records of the book
     */
    public SeasonsScene withNests(SurveyRecords records) {
        List<ShownNest> shown = maps.stream()
                .flatMap(map -> ShownNest.of(records, map.species(), map.season()).stream())
                .toList();
        return new SeasonsScene(waters, landmarks, maps, samples, shadings, shown);
    }
}

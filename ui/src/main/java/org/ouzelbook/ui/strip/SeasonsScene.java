package org.ouzelbook.ui.strip;

import java.util.Comparator;
import java.util.List;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Landmark;

/**
 * What the strip of all seasons shows.
 *
 * @param waters the rivers
 * @param landmarks known places along them
 * @param maps the territories of one species, one map a season, by season
 */
public record SeasonsScene(Waters waters, List<Landmark> landmarks, List<TerritoryMap> maps) {
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
        return new SeasonsScene(Waters.of(records), records.landmarks(), maps);
    }
}

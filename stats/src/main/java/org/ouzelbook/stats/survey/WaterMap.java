package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.tracker.domain.Species;

/**
 * A map and the water that was asked about when it was made.
 *
 * @param water the water
 * @param map its territories in one season
 */
record WaterMap(Water water, TerritoryMap map) {

    /** {@return the maps of every season and water, by season} */
    static List<WaterMap> all(
            SurveyRecords records, Species species, List<Integer> seasons, MapSettings settings, List<Water> waters) {
        List<WaterMap> maps = new ArrayList<>();
        for (int season : seasons) {
            for (Water water : waters) {
                maps.add(new WaterMap(water, TerritoryMap.of(records, species, season, settings, water)));
            }
        }
        return maps;
    }

    /**
     * {@return maps that are there already}
     *
     * @throws IllegalArgumentException if there is none
     */
    static List<WaterMap> of(List<TerritoryMap> maps, Water water) {
        if (maps.isEmpty()) {
            throw new IllegalArgumentException("Without a map there is nothing to count");
        }
        return maps.stream().map(map -> new WaterMap(water, map)).toList();
    }
}

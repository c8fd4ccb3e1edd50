package org.ouzelbook.stats.survey;

import java.util.List;

/**
 * A map and the water that was asked about when it was made.
 *
 * @param water the water
 * @param map its territories in one season
 */
record WaterMap(Water water, TerritoryMap map) {

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

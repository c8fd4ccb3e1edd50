package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;

/**
 * The maps of a species by one set of thresholds: those of all water that are there already, and others made as they are asked for.
 *
 * @param records the records that maps are made from
 * @param species whose territories
 * @param settings the thresholds
 * @param known maps of all water made of these records by these thresholds, by season
 */
public record SeasonMaps(
        SurveyRecords records, Species species, MapSettings settings, Map<Integer, TerritoryMap> known) {
    /** Copies the maps. */
    public SeasonMaps {
        known = Map.copyOf(known);
    }

    /**
     * {@return maps of which none is there yet}
     *
     * @param records the records that maps are made from
     * @param species whose territories
     * @param settings the thresholds
     */
    public static SeasonMaps of(SurveyRecords records, Species species, MapSettings settings) {
        return new SeasonMaps(records, species, settings, Map.of());
    }

    private TerritoryMap map(int season, Water water) {
        TerritoryMap there = water.equals(Water.ALL) ? known.get(season) : null;
        return there == null ? TerritoryMap.of(records, species, season, settings, water) : there;
    }

    /**
     * {@return the maps of several seasons}
     *
     * @param seasons calendar years
     * @param water the water
     * @param progress hears how many are done, and may stop the work
     * @throws CancellationException if it is stopped
     */
    public List<TerritoryMap> all(List<Integer> seasons, Water water, Progress progress) {
        return all(seasons, List.of(water), progress).stream()
                .map(WaterMap::map)
                .toList();
    }

    /** {@return the maps of every season and water, by season} */
    List<WaterMap> all(List<Integer> seasons, List<Water> waters, Progress progress) {
        List<WaterMap> maps = new ArrayList<>();
        long all = (long) seasons.size() * waters.size();
        for (int season : seasons) {
            for (Water water : waters) {
                if (!progress.goOn(maps.size(), all)) {
                    throw new CancellationException("Stopped while seasons were mapped");
                }
                maps.add(new WaterMap(water, map(season, water)));
            }
        }
        return maps;
    }
}

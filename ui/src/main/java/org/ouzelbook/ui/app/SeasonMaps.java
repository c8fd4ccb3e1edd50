package org.ouzelbook.ui.app;

import java.util.List;
import java.util.function.UnaryOperator;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.store.Book;

/**
 * The territories of one species in every season that was surveyed for it.
 *
 * @param records what the maps were made from
 * @param maps one map a season, by season
 */
public record SeasonMaps(SurveyRecords records, List<TerritoryMap> maps) {
    /** Copies the maps. */
    public SeasonMaps {
        maps = List.copyOf(maps);
    }

    /**
     * {@return the maps of every season with a visit that looked for the species}
     *
     * @param book an open book
     * @param scope what is asked; its season is passed over
     * @param change what is changed in the usual settings of the species
     * @throws WrongRequest if the book has no such river or reach
     */
    public static SeasonMaps of(Book book, Scope scope, UnaryOperator<MapSettings> change) {
        SurveyReading reading = SurveyReading.of(book, scope);
        MapSettings settings = change.apply(MapSettings.usualFor(scope.species()));
        List<TerritoryMap> maps = reading.seasons().stream()
                .map(season -> TerritoryMap.of(reading.records(), scope.species(), season, settings, reading.water()))
                .toList();
        return new SeasonMaps(reading.records(), maps);
    }
}

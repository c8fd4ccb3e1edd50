package org.ouzelbook.ui.app;

import java.util.function.UnaryOperator;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.store.Book;

/** Maps the territories of one season. */
public final class MapSeason {
    private MapSeason() {}

    /**
     * {@return the territories of the season that was asked about, or of the last one}
     *
     * @param book an open book
     * @param scope what is asked
     * @param change what is changed in the usual settings of the species
     * @throws WrongRequest if the book has no such river or reach, or no records of the species
     */
    public static MapAnswer of(Book book, Scope scope, UnaryOperator<MapSettings> change) {
        SurveyReading reading = SurveyReading.of(book, scope);
        TerritoryMap map = TerritoryMap.of(
                reading.records(),
                scope.species(),
                reading.season(),
                change.apply(MapSettings.usualFor(scope.species())),
                reading.water());
        return MapAnswer.of(map, scope.level());
    }
}

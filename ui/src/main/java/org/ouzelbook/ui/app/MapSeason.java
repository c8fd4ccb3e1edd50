package org.ouzelbook.ui.app;

import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.UnaryOperator;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.tracker.domain.Progress;
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
     * @param progress hears how far the work has come, and may stop it
     * @throws WrongRequest if the book has no such river or reach, or no records of the species
     * @throws CancellationException if it is stopped
     */
    public static MapAnswer of(Book book, Scope scope, UnaryOperator<MapSettings> change, Progress progress) {
        SurveyReading reading = SurveyReading.of(book, scope);
        int season = reading.season();
        SurveyRecords records = reading.records();
        MapSettings settings = change.apply(MapSettings.usualFor(scope.species()));
        TerritoryModel model = TerritoryModel.of(records, scope.species(), settings, progress);
        MapAnswer answer = answer(reading, records, settings, model);
        List<DecisionAnswer> decisions = DecisionAnswer.all(records.decisions(), records.rivers()).stream()
                .filter(decision -> decision.species().equals(scope.species())
                        && decision.season().getValue() == season)
                .toList();
        return decisions.isEmpty()
                ? answer
                : answer.beside(
                        answer(reading, records.withoutDecisions(), settings, model.withoutDecisions()), decisions);
    }

    private static MapAnswer answer(
            SurveyReading reading, SurveyRecords records, MapSettings settings, TerritoryModel model) {
        Scope scope = reading.scope();
        TerritoryMap map = TerritoryMap.of(records, scope.species(), reading.season(), settings, reading.water());
        return MapAnswer.of(map, model, reading.water(), scope.level());
    }
}

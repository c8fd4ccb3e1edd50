package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.UnaryOperator;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.PlainSeason;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.ui.app.MapAnswer;

/** The territories of every river and season of two plain tables, sightings and visits. */
public final class EstimateTerritories {
    private EstimateTerritories() {}

    /**
     * {@return one map a river and season, in the order of the visits}
     *
     * <p>Whatever stands in the tables is in season: the window of the species plays no part unless the settings are given one.
     *
     * @param sightings the table of sightings
     * @param visits the table of visits
     * @param species what the birds are
     * @param change what is changed in the usual settings of the species
     * @param level confidence level of the intervals
     * @param progress hears how far the work has come, and may stop it
     * @throws BadTable if a table must be mended first
     */
    public static List<MapAnswer> of(
            Path sightings,
            Path visits,
            Species species,
            UnaryOperator<MapSettings> change,
            double level,
            Progress progress) {
        TerritoryTables tables = TerritoryTables.read(sightings, visits);
        SurveyRecords records = PlainSeason.records(tables.seasons(), tables.mouths(), species);
        Map<String, UUID> rivers = new LinkedHashMap<>();
        for (River river : records.rivers().rivers()) {
            rivers.put(river.name(), river.id());
        }
        MapSettings settings =
                change.apply(MapSettings.usualFor(species).withSeason(MonthDay.of(1, 1), MonthDay.of(12, 31)));
        TerritoryModel model = TerritoryModel.of(records, species, settings, progress);
        List<MapAnswer> answers = new ArrayList<>();
        for (PlainSeason season : tables.seasons()) {
            UUID river = rivers.get(season.river());
            if (river != null) {
                Water water = Water.ofRiver(river);
                TerritoryMap map = TerritoryMap.of(records, species, season.season(), settings, water);
                MapAnswer answer = MapAnswer.of(map, model, water, level);
                answers.add(answer.withWarnings(warnings(tables, answer)));
            }
        }
        return answers;
    }

    private static List<Message> warnings(TerritoryTables tables, MapAnswer answer) {
        List<Message> warnings = new ArrayList<>(tables.warnings());
        answer.warnings().stream()
                .filter(warning -> !warning.key().equals("map.warning.otherRules"))
                .forEach(warnings::add);
        return warnings;
    }
}

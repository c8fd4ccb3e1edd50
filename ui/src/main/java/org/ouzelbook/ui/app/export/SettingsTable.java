package org.ouzelbook.ui.app.export;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.exchange.export.DataTable;
import org.ouzelbook.ui.app.Texts;

/** The rules by which territories are counted, for each species; whoever counts again from the tables needs them. */
final class SettingsTable {
    private SettingsTable() {}

    static DataTable of() {
        List<List<Object>> rows = new ArrayList<>();
        for (Species species : Species.all()) {
            MapSettings settings = MapSettings.usualFor(species);
            for (RecordComponent component : MapSettings.class.getRecordComponents()) {
                rows.add(List.of(species.englishName(), name(component), value(component, settings)));
            }
        }
        return new DataTable(
                "settings",
                List.of(
                        Texts.of("export.settings.species"),
                        Texts.of("export.settings.setting"),
                        Texts.of("export.settings.value")),
                rows);
    }

    private static String name(RecordComponent component) {
        return component.getName().replaceAll("([A-Z])", "_$1").toLowerCase(Locale.ROOT);
    }

    private static String value(RecordComponent component, MapSettings settings) {
        try {
            Object value = component.getAccessor().invoke(settings);
            return String.valueOf(
                    value instanceof Optional<?> optional
                            ? optional.map(Object::toString).orElse("")
                            : value);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("A record tells all of itself", e);
        }
    }
}

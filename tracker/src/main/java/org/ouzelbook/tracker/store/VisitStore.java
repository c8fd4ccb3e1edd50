package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.date;
import static org.ouzelbook.tracker.store.Table.decimal;
import static org.ouzelbook.tracker.store.Table.key;
import static org.ouzelbook.tracker.store.Table.text;
import static org.ouzelbook.tracker.store.Table.texts;
import static org.ouzelbook.tracker.store.Table.time;
import static org.ouzelbook.tracker.store.Table.yesNo;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.TravelMode;
import org.ouzelbook.tracker.domain.Visit;

/** Keeps visits. */
final class VisitStore {
    private static final String ORDER = "walked_on, started_at NULLS LAST, label";

    static final EntryTable<Visit> VISITS = new EntryTable<>(
            Visit.class,
            Table.ofRecords(
                    "visit",
                    text("label"),
                    key("river_id", "river"),
                    date("walked_on"),
                    time("started_at"),
                    time("ended_at"),
                    decimal("walked_lower_m"),
                    decimal("walked_upper_m"),
                    text("direction"),
                    text("travel_mode"),
                    texts("observers"),
                    texts("looked_for"),
                    text("water_level"),
                    text("weather"),
                    yesNo("effective"),
                    text("note")),
            VisitStore::write,
            VisitStore::read);

    private VisitStore() {}

    private static void write(Visit visit, Row row) {
        row.set("label", visit.label())
                .set("river_id", visit.riverId())
                .set("walked_on", visit.date())
                .set("started_at", visit.start())
                .set("ended_at", visit.end())
                .set(
                        "walked_lower_m",
                        visit.walked().map(walked -> walked.lower().metres()))
                .set(
                        "walked_upper_m",
                        visit.walked().map(walked -> walked.upper().metres()))
                .set("direction", visit.direction())
                .set("travel_mode", visit.mode())
                .set("observers", visit.observers())
                .set(
                        "looked_for",
                        visit.lookedFor().stream().map(Species::scientificName).toList())
                .set("water_level", visit.level())
                .set("weather", visit.weather())
                .set("effective", visit.effective())
                .set("note", visit.note());
    }

    private static Visit read(Row row) {
        Optional<Stretch> walked = row.optional("walked_lower_m", Double.class)
                .map(lower -> new Stretch(new Chainage(lower), new Chainage(row.decimal("walked_upper_m"))));
        return new Visit(
                row.id(),
                row.text("label"),
                row.key("river_id"),
                row.date("walked_on"),
                row.optionalTime("started_at"),
                row.optionalTime("ended_at"),
                walked,
                row.optionalConstant("direction", Direction.class),
                row.optionalConstant("travel_mode", TravelMode.class),
                row.texts("observers"),
                row.texts("looked_for").stream().map(SpeciesNames::species).toList(),
                row.text("water_level"),
                row.text("weather"),
                row.yes("effective"),
                row.text("note"));
    }

    static List<Visit> visits(Database database) {
        return VISITS.all(database, ORDER);
    }

    static List<Visit> visits(Database database, LocalDate from, LocalDate to) {
        return VISITS.where(database, "WHERE walked_on BETWEEN ? AND ? ORDER BY " + ORDER, from, to);
    }

    static Optional<Visit> labelled(Database database, String label) {
        return VISITS.where(database, "WHERE label = ?", label).stream().findFirst();
    }
}

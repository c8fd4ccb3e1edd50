package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.date;
import static org.ouzelbook.tracker.store.Table.decimal;
import static org.ouzelbook.tracker.store.Table.key;
import static org.ouzelbook.tracker.store.Table.text;
import static org.ouzelbook.tracker.store.Table.texts;
import static org.ouzelbook.tracker.store.Table.time;
import static org.ouzelbook.tracker.store.Table.whole;
import static org.ouzelbook.tracker.store.Table.yesNo;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;

/** Keeps sightings; the links between simultaneous ones are kept by {@link SimultaneousLinks}. */
final class SightingStore {
    static final EntryTable<Sighting> SIGHTINGS = new EntryTable<>(
            Sighting.class,
            Table.ofRecords(
                    "sighting",
                    Places.and(
                            text("label"),
                            key("visit_id", "visit"),
                            date("seen_on"),
                            time("seen_at"),
                            text("species"),
                            whole("individuals"),
                            text("age"),
                            text("sex"),
                            texts("activities"),
                            whole("breeding_code"),
                            text("rings"),
                            decimal("flew_to_m"),
                            yesNo("turned_back"),
                            text("observer"),
                            text("note"))),
            SightingStore::write,
            row -> sighting(row, Set.of()));

    /** Every column of the table, and then the keys of the sightings that were simultaneous. */
    private static final String SELECT = SIGHTINGS
            .table()
            .select()
            .replace(
                    " FROM sighting",
                    ", ARRAY(SELECT other_id FROM simultaneous WHERE one_id = sighting.id"
                            + " UNION ALL SELECT one_id FROM simultaneous WHERE other_id = sighting.id) FROM sighting");

    private SightingStore() {}

    private static void write(Sighting sighting, Row row) {
        Places.write(sighting.place(), row)
                .set("label", sighting.label().isBlank() ? null : sighting.label())
                .set("visit_id", sighting.visitId())
                .set("seen_on", sighting.date())
                .set("seen_at", sighting.time())
                .set("species", sighting.species().scientificName())
                .set("individuals", sighting.count())
                .set("age", sighting.age())
                .set("sex", sighting.sex())
                .set("activities", sighting.activities().stream().sorted().toList())
                .set("breeding_code", sighting.breedingCode().map(BreedingCode::number))
                .set("rings", sighting.rings())
                .set("flew_to_m", sighting.flewTo().map(Chainage::metres))
                .set("turned_back", sighting.turnedBack())
                .set("observer", sighting.observer())
                .set("note", sighting.note());
    }

    private static Sighting sighting(Row row, Set<UUID> simultaneousWith) {
        return new Sighting(
                row.id(),
                row.optional("label", String.class).orElse(""),
                row.optionalKey("visit_id"),
                row.date("seen_on"),
                row.optionalTime("seen_at"),
                Places.read(row),
                SpeciesNames.species(row.text("species")),
                row.whole("individuals"),
                row.constant("age", Age.class),
                row.constant("sex", Sex.class),
                row.texts("activities").stream().map(Activity::valueOf).collect(Collectors.toSet()),
                row.optional("breeding_code", Integer.class).map(BreedingCode::new),
                row.text("rings"),
                simultaneousWith,
                row.optional("flew_to_m", Double.class).map(Chainage::new),
                row.yes("turned_back"),
                row.text("observer"),
                row.text("note"));
    }

    private static Sighting read(ResultSet result) throws SQLException {
        Row row = Row.of(SIGHTINGS.table(), result);
        Object[] others = (Object[])
                result.getArray(SIGHTINGS.table().columns().size() + 1).getArray();
        return sighting(row, Arrays.stream(others).map(UUID.class::cast).collect(Collectors.toSet()));
    }

    static List<Sighting> where(Database database, String clause, @Nullable Object... parameters) {
        return database.list(SELECT + " " + clause, SightingStore::read, parameters);
    }

    static void each(Database database, SightingQuery query, Consumer<? super Sighting> reader) {
        database.each(
                SELECT + " " + query.clause(),
                SightingStore::read,
                reader,
                query.parameters().toArray());
    }

    /** {@return the rows with the species, day and fingerprint of a sighting} */
    static List<Row> withFingerprint(Database database, Sighting sighting, long fingerprint) {
        return SIGHTINGS
                .table()
                .rows(
                        database,
                        "WHERE species = ? AND seen_on = ? AND fingerprint = ?",
                        sighting.species().scientificName(),
                        sighting.date(),
                        fingerprint);
    }

    static Optional<Sighting> byId(Database database, UUID id) {
        return where(database, "WHERE id = ?", id).stream().findFirst();
    }

    static List<Sighting> labelled(Database database, String label) {
        return where(database, "WHERE label = ? ORDER BY seen_on, id", label);
    }
}

package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.date;
import static org.ouzelbook.tracker.store.Table.decimal;
import static org.ouzelbook.tracker.store.Table.key;
import static org.ouzelbook.tracker.store.Table.text;
import static org.ouzelbook.tracker.store.Table.time;
import static org.ouzelbook.tracker.store.Table.whole;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.NestStage;

/** Keeps nests and the checks of them. */
final class NestStore {
    static final EntryTable<Nest> NESTS = new EntryTable<>(
            Nest.class,
            Table.ofRecords(
                    "nest",
                    Places.and(
                            text("label"),
                            text("species"),
                            text("site"),
                            decimal("height_m"),
                            date("found_on"),
                            text("note"))),
            (nest, row) -> Places.write(nest.place(), row)
                    .set("label", nest.label())
                    .set("species", nest.species().scientificName())
                    .set("site", nest.site())
                    .set("height_m", nest.heightMetres())
                    .set("found_on", nest.found())
                    .set("note", nest.note()),
            row -> new Nest(
                    row.id(),
                    row.text("label"),
                    Places.read(row),
                    SpeciesNames.species(row.text("species")),
                    row.constant("site", NestSite.class),
                    row.optionalDecimal("height_m"),
                    row.optionalDate("found_on"),
                    row.text("note")));

    static final EntryTable<NestCheck> CHECKS = new EntryTable<>(
            NestCheck.class,
            Table.ofRecords(
                    "nest_check",
                    key("nest_id", "nest"),
                    date("checked_on"),
                    time("checked_at"),
                    text("stage"),
                    text("stage_text"),
                    whole("eggs"),
                    whole("young"),
                    whole("adults"),
                    text("outcome"),
                    text("note")),
            (check, row) -> row.set("nest_id", check.nestId())
                    .set("checked_on", check.date())
                    .set("checked_at", check.time())
                    .set("stage", check.stage())
                    .set("stage_text", check.stageText())
                    .set("eggs", check.eggs())
                    .set("young", check.young())
                    .set("adults", check.adults())
                    .set("outcome", check.outcome())
                    .set("note", check.note()),
            row -> new NestCheck(
                    row.id(),
                    row.key("nest_id"),
                    row.date("checked_on"),
                    row.optionalTime("checked_at"),
                    row.constant("stage", NestStage.class),
                    row.text("stage_text"),
                    row.optionalWhole("eggs"),
                    row.optionalWhole("young"),
                    row.optionalWhole("adults"),
                    row.optionalConstant("outcome", NestOutcome.class),
                    row.text("note")));

    private NestStore() {}

    static List<Nest> nests(Database database) {
        return NESTS.all(database, "label");
    }

    static Optional<Nest> labelled(Database database, String label) {
        return NESTS.where(database, "WHERE label = ?", label).stream().findFirst();
    }

    static List<NestCheck> checks(Database database) {
        return CHECKS.all(database, "checked_on, checked_at NULLS LAST, id");
    }

    static List<NestCheck> checks(Database database, UUID nestId) {
        return CHECKS.where(database, "WHERE nest_id = ? ORDER BY checked_on, checked_at NULLS LAST, id", nestId);
    }
}

package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.date;
import static org.ouzelbook.tracker.store.Table.decimal;
import static org.ouzelbook.tracker.store.Table.key;
import static org.ouzelbook.tracker.store.Table.text;
import static org.ouzelbook.tracker.store.Table.whole;

import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/** Keeps what surveyors decided about territories, and no two decisions that contradict each other. */
final class DecisionStore {
    private static final String ORDER = "season, species, river_id, lower_m, upper_m, id";

    static final EntryTable<Decision> DECISIONS = new EntryTable<>(
            Decision.class,
            Table.ofRecords(
                    "decision",
                    text("species"),
                    whole("season"),
                    key("river_id", "river"),
                    text("kind"),
                    decimal("lower_m"),
                    decimal("upper_m"),
                    text("note"),
                    text("decided_by"),
                    date("decided_on")),
            (decision, row) -> row.set("species", decision.species().scientificName())
                    .set("season", decision.season())
                    .set("river_id", decision.riverId())
                    .set("kind", decision.kind())
                    .set("lower_m", decision.stretch().lower().metres())
                    .set("upper_m", decision.stretch().upper().metres())
                    .set("note", decision.note())
                    .set("decided_by", decision.by())
                    .set("decided_on", decision.on()),
            row -> new Decision(
                    row.id(),
                    SpeciesNames.species(row.text("species")),
                    row.whole("season"),
                    row.key("river_id"),
                    row.constant("kind", DecisionKind.class),
                    new Stretch(new Chainage(row.decimal("lower_m")), new Chainage(row.decimal("upper_m"))),
                    row.optional("note", String.class),
                    row.text("decided_by"),
                    row.date("decided_on")));

    private DecisionStore() {}

    static List<Decision> decisions(Database database) {
        return DECISIONS.all(database, ORDER);
    }

    static List<Decision> decisions(Database database, Species species, int season) {
        return DECISIONS.where(
                database, "WHERE species = ? AND season = ? ORDER BY " + ORDER, species.scientificName(), season);
    }

    /**
     * Makes sure that all decisions can be followed.
     *
     * @throws BookException if two cannot, naming both
     */
    static void refuseContradiction(Database database) {
        contradiction(database).ifPresent(told -> {
            throw new BookException(told, null);
        });
    }

    /** {@return what to tell of two decisions that contradict each other, the older first; empty if all can be followed} */
    static Optional<Message> contradiction(Database database) {
        List<Decision> decisions = DECISIONS.all(database, "step, id");
        for (int i = 0; i < decisions.size(); i++) {
            for (Decision later : decisions.subList(i + 1, decisions.size())) {
                if (decisions.get(i).contradicts(later)) {
                    return Optional.of(Message.of(
                            "book.decisions.contradict", EntryWords.of(decisions.get(i)), EntryWords.of(later)));
                }
            }
        }
        return Optional.empty();
    }
}

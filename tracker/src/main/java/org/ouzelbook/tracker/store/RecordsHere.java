package org.ouzelbook.tracker.store;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** The records of the book into which another is put, with the state that each is in now. */
final class RecordsHere {
    private final Database database;
    private final Ledger ledger;
    private final Map<Table, Map<UUID, Long>> states = new HashMap<>();

    RecordsHere(Database database, Ledger ledger) {
        this.database = database;
        this.ledger = ledger;
        for (Table table : Bundle.RECORDS) {
            Map<UUID, Long> now = new HashMap<>();
            database.each(table.select(), result -> Row.of(table, result), row -> now.put(row.id(), Lineage.hash(row)));
            states.put(table, now);
        }
    }

    boolean has(Table table, UUID key) {
        return state(table, key).isPresent();
    }

    Optional<Long> state(Table table, UUID key) {
        return Optional.ofNullable(states.getOrDefault(table, Map.of()).get(key));
    }

    /** {@return the row that has the key of this one now} */
    Row stored(Row row) {
        return row.table().row(database, row.id()).orElseThrow();
    }

    void add(Row row) {
        ledger.add(row);
        states.computeIfAbsent(row.table(), table -> new HashMap<>()).put(row.id(), Lineage.hash(row));
    }

    void replace(Row row) {
        ledger.replace(row);
        states.computeIfAbsent(row.table(), table -> new HashMap<>()).put(row.id(), Lineage.hash(row));
    }

    void remove(Table table, UUID key) {
        ledger.remove(table, key);
        states.getOrDefault(table, new HashMap<>()).remove(key);
    }

    Database database() {
        return database;
    }

    Ledger ledger() {
        return ledger;
    }
}

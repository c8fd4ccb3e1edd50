package org.ouzelbook.tracker.store;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** What a book remembers of another that was put into it: under which keys that has the same records, and in which states. */
final class MergeMemory {
    private final RecordsHere here;
    private final Bundle bundle;
    private final Lineage lineage;
    private final Map<UUID, UUID> stored;

    /** From keys there to keys here, where they differ. */
    private final Map<UUID, UUID> keys;

    MergeMemory(RecordsHere here, Bundle bundle) {
        this.here = here;
        this.bundle = bundle;
        lineage = Lineage.of(here.database());
        stored = Together.otherKeys(here.database());
        keys = new HashMap<>(stored);
        learnKeys();
    }

    /** The other book may know records of this one under keys of its own. */
    private void learnKeys() {
        bundle.rows(Together.OTHER_KEYS).forEach(row -> {
            Table table = Schema.table(row.text("table_name"));
            UUID there = row.key("record_id");
            if (here.has(table, row.id()) && !here.has(table, there)) {
                keys.putIfAbsent(there, row.id());
            }
        });
    }

    /** {@return the key that a record of the other book has here, or would have} */
    UUID key(UUID there, Table table) {
        return here.has(table, there) ? there : keys.getOrDefault(there, there);
    }

    /** Takes up that a record of the other book is one here. */
    void meet(UUID there, UUID key) {
        keys.put(there, key);
    }

    /** Writes down under which key the other book has a record. */
    void storeKey(Row there, UUID key) {
        storeKey(there.table(), there.id(), key);
    }

    private void storeKey(Table table, UUID there, UUID key) {
        if (!there.equals(key) && stored.putIfAbsent(there, key) == null) {
            here.ledger().add(Together.otherKey(table, there, key));
        }
    }

    /** Writes down the keys of third books, so that their bundles are known here too. */
    void passOnKeys() {
        for (Row row : bundle.rows(Together.OTHER_KEYS)) {
            Table table = Schema.table(row.text("table_name"));
            UUID key = key(row.key("record_id"), table);
            if (here.has(table, key) && !here.has(table, row.id())) {
                storeKey(table, row.id(), key);
            }
        }
    }

    /** Remembers what the other book said of a record, and what that is here; nothing if it was decided against. */
    void remember(Row there, UUID key, Optional<Long> now) {
        bundle.heads(there).stream()
                .sorted()
                .filter(state -> now.isEmpty() || !state.equals(now.get()))
                .forEach(state -> put(there.table(), key, state, now));
        remember(there.table(), key, bundle.earlier(there.id()));
    }

    /** Remembers states that were superseded. */
    void remember(Table table, UUID key, Set<Long> states) {
        states.stream()
                .sorted()
                .filter(state -> !lineage.earlier(key).contains(state))
                .filter(state -> !here.state(table, key).equals(Optional.of(state)))
                .forEach(state -> put(table, key, state, Optional.empty()));
    }

    /** Remembers a state of a record, and which state here it is the same as, if it is. */
    void put(Table table, UUID key, long state, Optional<Long> now) {
        Row row = Together.state(table, key, state, now);
        boolean known = lineage.earlier(key).contains(state);
        if (known && row.table().row(here.database(), row.id()).isPresent()) {
            here.ledger().replace(row);
        } else if (!known || now.isPresent()) {
            here.ledger().add(row);
        }
        lineage.add(key, state);
        now.ifPresent(same -> lineage.alike(key, same, state));
    }

    Lineage lineage() {
        return lineage;
    }
}

package org.ouzelbook.tracker.store;

import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What a book knows of the earlier states of its records, by which a later state of another book is told from an older one and
 * from one that was changed apart. A state is the hash of what the record says. A putting-together that was undone never was.
 */
final class Lineage {
    /** What the history says of a step that put books together. */
    static final String MERGE = "history.merge";

    private final Map<UUID, Set<Long>> earlier = new HashMap<>();
    private final Map<UUID, Map<Long, Long>> same = new HashMap<>();
    private final Map<UUID, Removal> removed = new LinkedHashMap<>();

    /**
     * A record that somebody removed.
     *
     * @param table its table
     * @param last its last state
     */
    record Removal(Table table, long last) {
        /** {@return the state of being gone, which is another for every last state} */
        long state() {
            return ~last;
        }
    }

    /** {@return what the book knows now} */
    static Lineage of(Database database) {
        Lineage lineage = new Lineage();
        lineage.readHistory(database);
        Together.STATES.rows(database, "").forEach(row -> {
            lineage.add(row.key("record_id"), row.number("state"));
            row.optional("state_here", Long.class)
                    .ifPresent(here -> lineage.alike(row.key("record_id"), here, row.number("state")));
        });
        return lineage;
    }

    private void readHistory(Database database) {
        Steps steps = Steps.of(database);
        database.each(
                RowChange.TABLE.select() + " WHERE row_before IS NOT NULL ORDER BY nr",
                result -> RowChange.of(Row.of(RowChange.TABLE, result)),
                change -> {
                    if (isRecord(change.table())) {
                        read(change, steps);
                    }
                });
        removed.entrySet()
                .removeIf(entry ->
                        entry.getValue().table().row(database, entry.getKey()).isPresent());
    }

    private void read(RowChange change, Steps steps) {
        long state = hash(Row.ofJson(change.table(), change.rowBefore().orElseThrow()));
        if (!steps.undoneMerges.contains(change.stepBefore().orElseThrow())) {
            add(change.rowId(), state);
        }
        if (change.stepAfter().isEmpty() && !steps.undoesMerge(change.nr())) {
            removed.put(change.rowId(), new Removal(change.table(), state));
        } else {
            removed.remove(change.rowId());
        }
    }

    /** Which steps put books together, and which of those were undone: what they brought never was. */
    private record Steps(NavigableMap<Long, Step> byFirstChange, Map<Long, Step> byNumber, Set<Long> undoneMerges) {
        static Steps of(Database database) {
            NavigableMap<Long, Step> byFirstChange = new TreeMap<>();
            Map<Long, Step> byNumber = new HashMap<>();
            Step.TABLE.rows(database, "ORDER BY nr").stream().map(Step::of).forEach(step -> {
                byFirstChange.put(step.firstChange(), step);
                byNumber.put(step.nr(), step);
            });
            Set<Long> undone = new History(database).undone();
            undone.removeIf(nr -> !isMerge(byNumber.get(nr)));
            return new Steps(byFirstChange, byNumber, undone);
        }

        private static boolean isMerge(@Nullable Step step) {
            return step != null && step.what().key().equals(MERGE);
        }

        /** {@return whether a change took back what putting books together had brought} */
        private boolean undoesMerge(long change) {
            Map.Entry<Long, Step> entry = byFirstChange.floorEntry(change);
            if (entry == null || entry.getValue().lastChange() < change) {
                return false;
            }
            Step step = entry.getValue();
            boolean odd = false;
            while (step != null && step.undoes().isPresent()) {
                step = byNumber.get(step.undoes().get());
                odd = !odd;
            }
            return odd && isMerge(step);
        }
    }

    /** {@return whether a table holds what people wrote, and not what putting together needs} */
    static boolean isRecord(Table table) {
        return table.has("fingerprint") || table.equals(SimultaneousLinks.TABLE);
    }

    static long hash(Row row) {
        return row.table().has("fingerprint") ? row.number("fingerprint") : RowHash.fingerprint(row);
    }

    /** Takes up a state that a record had, or that was judged. */
    void add(UUID record, long state) {
        earlier.computeIfAbsent(record, key -> new HashSet<>()).add(state);
    }

    /** Takes up that a state here is what another book has as another state. */
    void alike(UUID record, long here, long there) {
        same.computeIfAbsent(record, key -> new HashMap<>()).put(there, here);
    }

    /** {@return every state that the record had or that was judged, its present one perhaps left out} */
    Set<Long> earlier(UUID record) {
        return earlier.getOrDefault(record, Collections.emptySet());
    }

    /** {@return the states of any book that are the same as this one here} */
    Set<Long> heads(UUID record, long now) {
        Set<Long> heads = new HashSet<>(Set.of(now));
        same.getOrDefault(record, Map.of()).forEach((there, here) -> {
            if (here == now) {
                heads.add(there);
            }
        });
        return heads;
    }

    /** {@return whether the record has a state besides its present one} */
    boolean knows(UUID record) {
        return earlier.containsKey(record);
    }

    /** {@return the record's removal, if somebody removed it and it is not there} */
    Optional<Removal> removal(UUID record) {
        return Optional.ofNullable(removed.get(record));
    }

    /** {@return what was removed, by key} */
    Map<UUID, Removal> removed() {
        return Collections.unmodifiableMap(removed);
    }
}

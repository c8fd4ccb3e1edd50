package org.ouzelbook.tracker.store;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Message;

/** Asks about records that the other book removed, and removes those that a person lets go. */
final class MergeRemovals {
    private final Merge merge;
    private final Map<Table, List<UUID>> agreed = new HashMap<>();

    MergeRemovals(Merge merge) {
        this.merge = merge;
    }

    void run() {
        merge.bundle().removed().forEach(this::ask);
        List<Table> childrenFirst = new ArrayList<>(Bundle.RECORDS);
        java.util.Collections.reverse(childrenFirst);
        childrenFirst.forEach(table -> agreed.getOrDefault(table, List.of()).forEach(key -> remove(table, key)));
    }

    private void ask(UUID there, Bundle.Known removed) {
        Table table = removed.table();
        if (table.equals(RiverStore.LINES.table())) {
            // lines are told apart by their points and not by their number; and places may be measured on one that
            // somebody took back
            return;
        }
        UUID key = merge.memory().key(there, table);
        Optional<Long> now = merge.here().state(table, key);
        Set<Long> gone = removed.now().stream().map(last -> ~last).collect(Collectors.toSet());
        if (now.isEmpty() || Merge.intersect(gone, merge.memory().lineage().earlier(key))) {
            return;
        }
        Set<Long> knownThere = new HashSet<>(removed.earlier());
        knownThere.addAll(removed.now());
        boolean unchanged = Merge.intersect(merge.memory().lineage().heads(key, now.get()), knownThere);
        Row row = table.row(merge.here().database(), key).orElseThrow();
        merge.tally()
                .ask(
                        MergeQuestion.About.REMOVED_THERE,
                        key + " " + gone.stream().sorted().toList(),
                        Message.of(
                                unchanged ? "merge.ask.removed" : "merge.ask.removedChanged",
                                Merge.words(row),
                                merge.bundle().from()),
                        List.of(),
                        List.of(MergeAnswer.MINE, MergeAnswer.THEIRS))
                .ifPresent(answer -> {
                    merge.memory().remember(table, key, gone);
                    if (answer == MergeAnswer.THEIRS) {
                        agreed.computeIfAbsent(table, any -> new ArrayList<>()).add(key);
                    }
                });
    }

    private void remove(Table table, UUID key) {
        if (!merge.here().has(table, key)) {
            return;
        }
        Message words = Merge.words(table.row(merge.here().database(), key).orElseThrow());
        if (isNeeded(table, key)) {
            merge.tally().notes.add(Message.of("merge.note.needed", words));
            return;
        }
        if (table.equals(SightingStore.SIGHTINGS.table())) {
            SimultaneousLinks.links(merge.here().database(), key)
                    .forEach(link -> merge.remove(link.table(), link.id()));
        }
        merge.remove(table, key);
        merge.tally().removed.add(words);
    }

    /** {@return whether another record, a mere link apart, points to this one} */
    private boolean isNeeded(Table table, UUID key) {
        return Schema.ENTRIES.stream()
                .map(EntryTable::table)
                .anyMatch(other -> other.columns().stream()
                        .filter(column -> table.name().equals(column.target()))
                        .anyMatch(column -> merge.here()
                                .database()
                                .first(
                                        "SELECT 1 FROM " + other + " WHERE " + column.name()
                                                + " = ? FETCH FIRST 1 ROW ONLY",
                                        result -> true,
                                        key)
                                .isPresent()));
    }
}

package org.ouzelbook.tracker.store;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;

/**
 * Keeps names apart that two people gave to different things: visits, nests, birds, samples, reaches, rivers. The keeper's own
 * stay as they are; those from other books carry their owner's name in brackets, whichever came first, so the order in which books
 * are put together does not matter.
 */
final class Labels {
    private static final Map<String, String> COLUMNS = Map.of(
            "river",
            "name",
            "reach",
            "name",
            "visit",
            "label",
            "nest",
            "label",
            "ringed_bird",
            "label",
            "kick_sample",
            "label");

    private final Database database;
    private final Map<UUID, String> owners;
    private final Map<Table, Map<String, Map<UUID, String>>> bases = new HashMap<>();

    Labels(Database database, Map<UUID, String> owners) {
        this.database = database;
        this.owners = owners;
    }

    private static Optional<String> column(Table table) {
        return Optional.ofNullable(COLUMNS.get(table.name()));
    }

    /**
     * Gives a row of another book a name that nothing else here has.
     *
     * @param row the row, under the key that it has or will have here
     * @param owner whose it is; empty for the keeper's own
     */
    void fit(Row row, Optional<String> owner) {
        Optional<String> column = column(row.table());
        if (column.isEmpty()) {
            return;
        }
        String base = base(row.text(column.get()), owner);
        Map<UUID, String> bearers = bearers(row, base);
        boolean alone = bearers.keySet().stream().allMatch(row.id()::equals);
        row.set(column.get(), alone ? base : free(bearers, row.id(), base, owner));
    }

    private static String label(Row row) {
        return row.text(column(row.table()).orElseThrow());
    }

    /** {@return the records that now clash with a row that is new here, and must carry their owners' names} */
    List<Row> toRename(Row row) {
        return column(row.table())
                .map(column -> bearers(row, base(row.text(column), Optional.ofNullable(owners.get(row.id())))))
                .orElseGet(Map::of)
                .keySet()
                .stream()
                .filter(id -> !id.equals(row.id()) && owners.containsKey(id))
                .flatMap(id -> row.table().row(database, id).stream())
                .filter(other -> base(label(other), owner(other.id())).equals(label(other)))
                .toList();
    }

    /** Takes up the name of a row that was written. */
    void written(Row row) {
        column(row.table()).ifPresent(column -> {
            Map<String, Map<UUID, String>> ofTable = ofTable(row.table());
            ofTable.values().forEach(bearers -> bearers.remove(row.id()));
            String base = base(row.text(column), owner(row.id()));
            ofTable.computeIfAbsent(group(row, base), key -> new TreeMap<>()).put(row.id(), row.text(column));
        });
    }

    private Optional<String> owner(UUID id) {
        return Optional.ofNullable(owners.get(id));
    }

    private Map<UUID, String> bearers(Row row, String base) {
        return ofTable(row.table()).getOrDefault(group(row, base), new TreeMap<>());
    }

    private Map<String, Map<UUID, String>> ofTable(Table table) {
        Map<String, Map<UUID, String>> found = bases.get(table);
        if (found == null) {
            found = new HashMap<>();
            bases.put(table, found);
            for (Row row : table.rows(database, "")) {
                String label = label(row);
                found.computeIfAbsent(group(row, base(label, owner(row.id()))), key -> new TreeMap<>())
                        .put(row.id(), label);
            }
        }
        return found;
    }

    /** Reaches of two rivers may have one name. */
    private static String group(Row row, String base) {
        return row.table().name().equals("reach") ? row.key("river_id") + " " + base : base;
    }

    private static String base(String label, Optional<String> owner) {
        return owner.map(name -> " (" + name + ")")
                .filter(ending -> label.endsWith(ending) && label.length() > ending.length())
                .map(ending -> label.substring(0, label.length() - ending.length()))
                .orElse(label);
    }

    /** The keeper's own name stays, unless another of the keeper's has it. */
    private static String free(Map<UUID, String> bearers, UUID id, String base, Optional<String> owner) {
        TreeSet<String> taken = new TreeSet<>();
        bearers.forEach((bearer, label) -> {
            if (!bearer.equals(id)) {
                taken.add(label);
            }
        });
        String wanted = owner.map(name -> base + " (" + name + ")").orElse(base);
        for (int i = 2; taken.contains(wanted); i++) {
            wanted = base + " (" + owner.map(name -> name + " ").orElse("") + i + ")";
        }
        return wanted;
    }
}

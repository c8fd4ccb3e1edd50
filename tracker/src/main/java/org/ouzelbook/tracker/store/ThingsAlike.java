package org.ouzelbook.tracker.store;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Finds which record here may be the same as a new one of another book, which has a key of its own. */
final class ThingsAlike {
    /** Two descriptions of one landmark or nest lie no farther apart than this. */
    private static final double NEAR_METRES = 50;

    private final Database database;
    private final Set<UUID> there = new HashSet<>();
    private final Map<Table, Map<Long, Deque<UUID>>> byContent = new HashMap<>();

    ThingsAlike(Database database, Bundle bundle) {
        this.database = database;
        Bundle.RECORDS.forEach(table -> bundle.rows(table).forEach(row -> there.add(row.id())));
        there.addAll(bundle.removed().keySet());
        bundle.rows(Together.OTHER_KEYS).forEach(row -> there.add(row.id()));
    }

    /** {@return a record here that the other book has not under its key, and that says exactly the same; each only once} */
    Optional<Row> identical(Row row) {
        if (row.table().has("sha256")) {
            return row.table().rows(database, "WHERE sha256 = ?", row.text("sha256")).stream()
                    .findFirst();
        }
        Deque<UUID> alike = contents(row.table()).getOrDefault(row.number("fingerprint"), new ArrayDeque<>());
        while (!alike.isEmpty()) {
            Optional<Row> found = row.table().row(database, alike.removeFirst());
            if (found.filter(row::saysTheSame).isPresent()) {
                return found;
            }
        }
        return Optional.empty();
    }

    private Map<Long, Deque<UUID>> contents(Table table) {
        Map<Long, Deque<UUID>> known = byContent.get(table);
        if (known == null) {
            known = new HashMap<>();
            byContent.put(table, known);
            for (Map.Entry<UUID, Long> row : database.list(
                    "SELECT id, fingerprint FROM " + table + " ORDER BY id",
                    result -> Map.entry(result.getObject(1, UUID.class), result.getLong(2)))) {
                if (!there.contains(row.getKey())) {
                    known.computeIfAbsent(row.getValue(), any -> new ArrayDeque<>())
                            .add(row.getKey());
                }
            }
        }
        return known;
    }

    /** {@return a record here that seems to describe the same landmark, nest or ringed bird in other words} */
    Optional<Row> sameThing(Row row) {
        return switch (row.table().name()) {
            case "landmark" ->
                near(row, "LOWER(name) = LOWER(?)", row.text("name")).stream().findFirst();
            case "nest" ->
                near(row, "species = ?", row.text("species")).stream()
                        .filter(other -> sameYear(row, other))
                        .findFirst();
            case "ringed_bird" -> sameRing(row);
            default -> Optional.empty();
        };
    }

    private List<Row> near(Row row, String condition, @Nullable Object value) {
        return row
                .table()
                .rows(
                        database,
                        "WHERE " + condition + " AND river_id = ? AND chainage_m BETWEEN ? AND ? ORDER BY id",
                        value,
                        row.key("river_id"),
                        row.decimal("chainage_m") - NEAR_METRES,
                        row.decimal("chainage_m") + NEAR_METRES)
                .stream()
                .filter(this::isOnlyHere)
                .collect(Collectors.toList());
    }

    private boolean isOnlyHere(Row mine) {
        return !there.contains(mine.id());
    }

    /** A nest without a day may be of any year. */
    private static boolean sameYear(Row one, Row other) {
        return one.optionalDate("found_on").isEmpty()
                || other.optionalDate("found_on").isEmpty()
                || one.date("found_on").getYear() == other.date("found_on").getYear();
    }

    private Optional<Row> sameRing(Row row) {
        String ring = plain(row.text("ring"));
        if (ring.isEmpty()) {
            return Optional.empty();
        }
        return row.table().rows(database, "ORDER BY id").stream()
                .filter(this::isOnlyHere)
                .filter(other -> plain(other.text("ring")).equals(ring))
                .findFirst();
    }

    private static String plain(String ring) {
        return ring.replaceAll("[\\s.-]", "").toUpperCase(Locale.ROOT);
    }
}

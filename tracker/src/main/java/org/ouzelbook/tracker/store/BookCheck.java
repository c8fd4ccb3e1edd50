package org.ouzelbook.tracker.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.river.MeasuredLine;

/** Looks for what cannot be right in a book: damage behind the program's back, and records that contradict each other. */
final class BookCheck {
    /** After so many of one kind, the others are only counted. */
    private static final int TOLD = 20;

    /** A place may lie this far beyond the end of its line: files print chainages rounded to 10 m. */
    private static final double ROUNDING_METRES = 10;

    private final Database database;
    private final List<Message> found = new ArrayList<>();

    BookCheck(Database database) {
        this.database = database;
    }

    /** {@return what was found; empty if the book is sound} */
    List<Message> run(Progress progress) {
        content(progress);
        if (found.isEmpty()) {
            references();
            history();
            places();
            visits();
            links();
            DecisionStore.contradiction(database).ifPresent(found::add);
        }
        return List.copyOf(found);
    }

    /** Every row against its fingerprint, and every table against its sum. */
    private void content(Progress progress) {
        Map<String, ContentSums.Sum> stored = ContentSums.stored(database);
        ContentSums.Count count = new ContentSums.Count(
                stored.values().stream().mapToLong(ContentSums.Sum::rows).sum(), progress);
        for (Table table : Schema.SUMMED) {
            try {
                List<Message> damaged = new ArrayList<>();
                ContentSums.Sum sum = ContentSums.counted(
                        database, table, count, row -> damage(row).ifPresent(damaged::add));
                tell(damaged);
                ContentSums.Sum expected = stored.getOrDefault(table.name(), ContentSums.Sum.NONE);
                if (sum.rows() != expected.rows()) {
                    found.add(Message.of("book.check.count", words(table), expected.rows(), sum.rows()));
                } else if (!sum.equals(expected) && damaged.isEmpty()) {
                    found.add(Message.of("book.check.sum", words(table)));
                }
            } catch (BookException e) {
                found.add(Message.of("book.check.unreadable", words(table)));
            }
        }
    }

    private static Message words(Table table) {
        return Message.of("book.table." + table.name());
    }

    private static Optional<Message> damage(Row row) {
        if (!row.table().has("fingerprint") || RowHash.fingerprint(row) == row.number("fingerprint")) {
            return Optional.empty();
        }
        try {
            Entry entry = Schema.entries(row.table()).entry(row);
            return Optional.of(Message.of("book.check.changed", EntryWords.of(entry)));
        } catch (RuntimeException e) {
            return Optional.of(Message.of(
                    "book.check.nonsense", words(row.table()), row.id().toString()));
        }
    }

    private void tell(List<Message> messages) {
        found.addAll(messages.subList(0, Math.min(TOLD, messages.size())));
        if (messages.size() > TOLD) {
            found.add(Message.of("book.check.more", messages.size() - TOLD));
        }
    }

    private void references() {
        for (Table table : Schema.TABLES) {
            for (Table.Column column : table.columns()) {
                String target = column.target();
                if (target != null) {
                    long lost = count("SELECT COUNT(*) FROM " + table + " WHERE " + column.name()
                            + " IS NOT NULL AND NOT EXISTS (SELECT 1 FROM " + column.target()
                            + " target WHERE target.id = "
                            + table + "." + column.name() + ")");
                    if (lost > 0) {
                        found.add(Message.of("book.check.lost", lost, words(table), words(Schema.table(target))));
                    }
                }
            }
        }
    }

    private void history() {
        long changes = count("SELECT COUNT(*) FROM row_change");
        long told = count("SELECT COALESCE(SUM(rows_added + rows_replaced + rows_removed), 0) FROM step");
        long last = count("SELECT COALESCE(MAX(nr), 0) FROM row_change");
        if (changes != told || changes != last) {
            found.add(Message.of("book.check.history", told, changes));
        }
        for (Table table : Schema.TABLES) {
            long now = count("SELECT COUNT(*) FROM " + table);
            long kept = count("SELECT COUNT(CASE WHEN step_before IS NULL THEN 1 END)"
                    + " - COUNT(CASE WHEN step_after IS NULL THEN 1 END) FROM row_change WHERE table_name = '" + table
                    + "'");
            if (now != kept) {
                found.add(Message.of("book.check.historyOf", words(table), kept, now));
            }
        }
    }

    /** Places beyond the ends of the line that they were measured on. */
    private void places() {
        for (RiverLine line : RiverStore.lines(database)) {
            Stretch extent = MeasuredLine.of(line).extent();
            for (EntryTable<?> entries : Schema.ENTRIES) {
                if (entries.table().has("chainage_m")) {
                    tell(database.list(
                            entries.table().select() + " WHERE river_id = ? AND line_version = ?"
                                    + " AND (chainage_m < ? OR chainage_m > ?)",
                            result -> beyond(entries.entry(Row.of(entries.table(), result)), extent),
                            line.riverId(),
                            line.version(),
                            extent.lower().metres() - ROUNDING_METRES,
                            extent.upper().metres() + ROUNDING_METRES));
                }
            }
        }
    }

    private static Message beyond(Entry entry, Stretch extent) {
        return Message.of("book.check.beyond", EntryWords.of(entry), extent);
    }

    /** Sightings that are not where or when their visit was. */
    private void visits() {
        tell(sightings(
                "JOIN visit ON visit.id = sighting.visit_id WHERE sighting.seen_on <> visit.walked_on"
                        + " OR sighting.river_id <> visit.river_id",
                "book.check.otherVisit"));
        tell(sightings(
                "JOIN visit ON visit.id = sighting.visit_id WHERE sighting.river_id = visit.river_id"
                        + " AND (sighting.chainage_m < visit.walked_lower_m - sighting.uncertainty_m"
                        + " OR sighting.chainage_m > visit.walked_upper_m + sighting.uncertainty_m)",
                "book.check.offVisit"));
    }

    /** Sightings that were at the same time, but on different days. */
    private void links() {
        tell(sightings(
                "JOIN simultaneous ON simultaneous.one_id = sighting.id"
                        + " JOIN sighting other ON other.id = simultaneous.other_id WHERE other.seen_on <> sighting.seen_on",
                "book.check.simultaneous"));
    }

    private List<Message> sightings(String clause, String key) {
        return database
                .list(
                        "SELECT sighting.id FROM sighting " + clause + " ORDER BY sighting.seen_on, sighting.id",
                        result -> result.getObject(1, UUID.class))
                .stream()
                .flatMap(id -> SightingStore.byId(database, id).stream())
                .map(sighting -> Message.of(key, EntryWords.of(sighting)))
                .toList();
    }

    private long count(String sql) {
        return database.first(sql, result -> result.getLong(1)).orElse(0L);
    }
}

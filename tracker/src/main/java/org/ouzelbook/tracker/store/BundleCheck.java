package org.ouzelbook.tracker.store;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Entry;

/** Makes sure that a bundle can be taken for what it says: every record is one, is whole, and points to others that are there. */
final class BundleCheck {
    private final Bundle bundle;
    private final Set<UUID> keys = new HashSet<>();

    BundleCheck(Bundle bundle) {
        this.bundle = bundle;
    }

    /**
     * Checks every row.
     *
     * @throws IllegalArgumentException if a record is none, two have one key, or one points to something that is not there
     * @throws IllegalStateException if a record lacks what it must have
     */
    void run() {
        for (Table table : Bundle.RECORDS) {
            for (Row row : bundle.rows(table)) {
                if (!keys.add(row.id())) {
                    throw refused(row);
                }
            }
        }
        Schema.ENTRIES.forEach(this::records);
        bundle.rows(SimultaneousLinks.TABLE).forEach(this::references);
        bundle.rows(Together.OWNERS).forEach(row -> whole(row, List.of("table_name", "owner")));
        bundle.rows(Together.OTHER_KEYS).forEach(row -> whole(row, List.of("table_name", "record_id")));
        bundle.rows(Together.PAIRS).forEach(BundleCheck::pair);
    }

    private void records(EntryTable<?> entries) {
        for (Row row : bundle.rows(entries.table())) {
            Entry entry = entries.entry(row);
            Row again = entries.row(entry);
            if (!again.id().equals(row.id())
                    || !again.saysTheSame(row)
                    || again.number("fingerprint") != row.number("fingerprint")) {
                throw refused(row);
            }
            references(row);
        }
    }

    private void references(Row row) {
        for (Table.Column column : row.table().columns()) {
            if (column.target() != null) {
                row.optionalKey(column.name())
                        .filter(key -> !keys.contains(key))
                        .ifPresent(key -> {
                            throw refused(row);
                        });
            }
        }
    }

    private static void pair(Row row) {
        List<String> columns = List.of("table_name", "one_id", "other_id", "is_same", "decided_by", "decided_on");
        if (!row.text("table_name").equals(Together.PEOPLE)) {
            whole(row, columns);
            return;
        }
        present(row, columns);
        present(row, List.of("one_name", "other_name"));
        Row again = Together.people(
                row.text("one_name"),
                row.text("other_name"),
                row.yes("is_same"),
                row.text("decided_by"),
                row.date("decided_on"));
        if (!again.id().equals(row.id()) || !again.saysTheSame(row)) {
            throw refused(row);
        }
    }

    private static void whole(Row row, List<String> columns) {
        present(row, columns);
        Schema.table(row.text("table_name"));
    }

    private static void present(Row row, List<String> columns) {
        row.id();
        for (String column : columns) {
            @Nullable Object value = row.values().get(row.table().position(column));
            if (value == null) {
                throw refused(row);
            }
        }
    }

    private static IllegalArgumentException refused(Row row) {
        return new IllegalArgumentException("A row of " + row.table() + " is not what it should be: " + row.values());
    }
}

package org.ouzelbook.tracker.store;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How many rows a table has, and the sum of their hashes, kept beside the rows and changed in the same transaction. The
 * sum doesn't depend on the order of the rows; it overflows on purpose.
 */
final class ContentSums {
    /**
     * Rows and the sum of their hashes.
     *
     * @param rows how many
     * @param sum the sum of their {@link RowHash}es
     */
    record Sum(long rows, long sum) {
        static final Sum NONE = new Sum(0, 0);

        Sum plus(Sum other) {
            return new Sum(rows + other.rows, sum + other.sum);
        }
    }

    private final Map<String, Sum> changes = new LinkedHashMap<>();

    void added(Row row) {
        change(row.table(), new Sum(1, RowHash.of(row)));
    }

    void removed(Row row) {
        change(row.table(), new Sum(-1, -RowHash.of(row)));
    }

    private void change(Table table, Sum change) {
        changes.merge(table.name(), change, Sum::plus);
    }

    /** Writes what was added and removed into the book. */
    void write(Database database) {
        changes.forEach((table, change) -> {
            Sum sum = stored(database, table).plus(change);
            int written = database.run(
                    "UPDATE content_sum SET row_count = ?, row_sum = ? WHERE table_name = ?",
                    sum.rows(),
                    sum.sum(),
                    table);
            if (written == 0) {
                database.run(
                        "INSERT INTO content_sum (table_name, row_count, row_sum) VALUES (?, ?, ?)",
                        table,
                        sum.rows(),
                        sum.sum());
            }
        });
    }

    /** {@return what the book says that a table holds} */
    static Sum stored(Database database, String table) {
        return database.first(
                        "SELECT row_count, row_sum FROM content_sum WHERE table_name = ?",
                        result -> new Sum(result.getLong(1), result.getLong(2)),
                        table)
                .orElse(Sum.NONE);
    }
}

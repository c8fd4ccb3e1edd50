package org.ouzelbook.tracker.store;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.function.Consumer;
import org.ouzelbook.tracker.domain.Progress;

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

    private static Sum stored(Database database, String table) {
        return stored(database).getOrDefault(table, Sum.NONE);
    }

    /** {@return what the book says that its tables hold, by their names} */
    static Map<String, Sum> stored(Database database) {
        Map<String, Sum> sums = new LinkedHashMap<>();
        database.list(
                        "SELECT table_name, row_count, row_sum FROM content_sum ORDER BY table_name",
                        result -> Map.entry(result.getString(1), new Sum(result.getLong(2), result.getLong(3))))
                .forEach(sum -> sums.put(sum.getKey(), sum.getValue()));
        return sums;
    }

    /**
     * {@return what the tables do hold, by their names, of those that the book says something of}
     *
     * @param progress hears how many rows have been counted
     */
    static Map<String, Sum> counted(Database database, Progress progress) {
        Map<String, Sum> stored = stored(database);
        Count count = new Count(stored.values().stream().mapToLong(Sum::rows).sum(), progress);
        Map<String, Sum> sums = new LinkedHashMap<>();
        stored.keySet().forEach(table -> sums.put(table, counted(database, Schema.table(table), count, row -> {})));
        return sums;
    }

    /**
     * {@return what a table does hold}
     *
     * @param count goes on with each row
     * @param reader hears each row
     */
    static Sum counted(Database database, Table table, Count count, Consumer<Row> reader) {
        ContentSums sums = new ContentSums();
        database.each(table.select(), result -> Row.of(table, result), row -> {
            sums.added(row);
            reader.accept(row);
            count.next();
        });
        return sums.changes.getOrDefault(table.name(), Sum.NONE);
    }

    /** Tells a listener how many rows of all have been seen. */
    static final class Count {
        private static final int PACE = 1000;

        private final long total;
        private final Progress progress;
        private long done;

        Count(long total, Progress progress) {
            this.total = total;
            this.progress = progress;
        }

        private void next() {
            done++;
            if (done % PACE == 0 && !progress.goOn(done, total)) {
                throw new CancellationException();
            }
        }
    }
}

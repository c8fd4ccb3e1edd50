package org.ouzelbook.tracker.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Entry;

/**
 * A table of one kind of record, and the way from the record to its row and back.
 *
 * @param type the kind of record
 * @param table its table
 * @param write puts a record into a row, key and row-keeping columns left out
 * @param read makes the record from its row
 */
record EntryTable<T extends Entry>(Class<T> type, Table table, BiConsumer<T, Row> write, Function<Row, T> read) {

    /** {@return the row that holds the record, with its key and its fingerprint} */
    Row row(Entry entry) {
        Row row = new Row(table).set("id", entry.id());
        write.accept(type.cast(entry), row);
        return row.set("fingerprint", RowHash.fingerprint(row));
    }

    T entry(Row row) {
        return read.apply(row);
    }

    List<T> all(Database database, String order) {
        return where(database, "ORDER BY " + order);
    }

    /** {@return the records that a WHERE and ORDER BY clause chooses} */
    List<T> where(Database database, String clause, @Nullable Object... parameters) {
        return database.list(table.select() + " " + clause, this::read, parameters);
    }

    /** Hands each record that the clause chooses to the reader, however many there are. */
    void each(Database database, Consumer<T> reader, String clause, List<? extends @Nullable Object> parameters) {
        database.each(table.select() + " " + clause, this::read, reader, parameters.toArray());
    }

    Optional<T> byId(Database database, UUID id) {
        return where(database, "WHERE id = ?", id).stream().findFirst();
    }

    private T read(ResultSet result) throws SQLException {
        return read.apply(Row.of(table, result));
    }
}

package org.ouzelbook.tracker.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** One connection to a book's file: runs SQL with bound parameters and turns rows into values. */
final class Database implements AutoCloseable {
    /** Makes a value of the row at which a result stands. */
    @FunctionalInterface
    interface RowReader<T> {
        T read(ResultSet result) throws SQLException;
    }

    /** Does something with a statement. */
    @FunctionalInterface
    private interface Work<T> {
        T with(PreparedStatement statement) throws SQLException;
    }

    private final Path file;
    private final Connection connection;
    private final Map<String, PreparedStatement> prepared = new HashMap<>();

    /** Takes over the connection, which from now on commits only when told to. */
    Database(Path file, Connection connection) throws SQLException {
        this.file = file;
        this.connection = connection;
        connection.setAutoCommit(false);
    }

    /** {@return how many rows the statement changed} */
    int run(String sql, @Nullable Object... parameters) {
        return with(sql, parameters, PreparedStatement::executeUpdate);
    }

    /** {@return what the query finds, in its order} */
    <T> List<T> list(String sql, RowReader<T> reader, @Nullable Object... parameters) {
        return with(sql, parameters, statement -> {
            List<T> found = new ArrayList<>();
            try (ResultSet result = statement.executeQuery()) {
                while (result.next()) {
                    found.add(reader.read(result));
                }
            }
            return found;
        });
    }

    /** {@return the first that the query finds} */
    <T> Optional<T> first(String sql, RowReader<T> reader, @Nullable Object... parameters) {
        return list(sql, reader, parameters).stream().findFirst();
    }

    /** Hands on what the query finds one by one; the consumer may run other statements meanwhile. */
    <T> void each(String sql, RowReader<T> reader, Consumer<? super T> consumer, @Nullable Object... parameters) {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            bind(statement, parameters);
            try (ResultSet result = statement.executeQuery()) {
                while (result.next()) {
                    consumer.accept(reader.read(result));
                }
            }
        } catch (SQLException e) {
            throw BookFailure.of(e, file, sql);
        }
    }

    private <T> T with(String sql, @Nullable Object[] parameters, Work<T> work) {
        try {
            PreparedStatement statement = prepared.get(sql);
            if (statement == null) {
                statement = connection.prepareStatement(sql);
                prepared.put(sql, statement);
            }
            bind(statement, parameters);
            return work.with(statement);
        } catch (SQLException e) {
            throw BookFailure.of(e, file, sql);
        }
    }

    private void bind(PreparedStatement statement, @Nullable Object[] parameters) throws SQLException {
        for (int i = 0; i < parameters.length; i++) {
            Object parameter = parameters[i];
            if (parameter instanceof List<?> several) {
                statement.setArray(i + 1, connection.createArrayOf("varchar", several.toArray()));
            } else {
                statement.setObject(i + 1, parameter);
            }
        }
    }

    /** From now on, everything read until the next rollback is as it stood at one moment. */
    void readAtOneMoment() {
        try {
            connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
        } catch (SQLException e) {
            throw BookFailure.of(e, file, "SET TRANSACTION");
        }
    }

    /** Makes the changes since the last commit last, on the disk. */
    void commit() {
        try {
            connection.commit();
        } catch (SQLException e) {
            throw BookFailure.of(e, file, "COMMIT");
        }
        run("CHECKPOINT SYNC");
    }

    /** Copies the whole file, as it stood at the last commit, into a zip file; nobody may write meanwhile. */
    void backup(Path zip) {
        run("BACKUP TO ?", zip.toString());
    }

    void rollback() {
        try {
            connection.rollback();
        } catch (SQLException e) {
            throw BookFailure.of(e, file, "ROLLBACK");
        }
    }

    Path file() {
        return file;
    }

    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            throw BookFailure.of(e, file, "CLOSE");
        }
    }
}

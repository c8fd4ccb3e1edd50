package org.ouzelbook.tracker.store;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A table whose rows have a key and a history: its columns, and the statements that write and read whole rows. */
final class Table {
    /** The columns that tell of the row, not of the field; a fingerprint leaves them out. */
    private static final Set<String> ABOUT_THE_ROW = Set.of("id", "fingerprint", "source_id", "source_row", "step");

    /**
     * One column.
     *
     * @param name its name
     * @param type what it holds
     * @param target the table whose keys it holds, if it points to one
     */
    record Column(String name, ColumnType type, @Nullable String target) {
        Column(String name, ColumnType type) {
            this(name, type, null);
        }

        boolean isContent() {
            return !ABOUT_THE_ROW.contains(name);
        }
    }

    private final String name;
    private final List<Column> columns;
    private final Map<String, Integer> positions = new HashMap<>();
    private final String select;
    private final String insert;
    private final String update;
    private final String delete;

    private Table(String name, List<Column> columns) {
        this.name = name;
        this.columns = List.copyOf(columns);
        for (int i = 0; i < columns.size(); i++) {
            positions.put(columns.get(i).name(), i);
        }
        List<String> names = columns.stream().map(Column::name).toList();
        String all = String.join(", ", names);
        select = "SELECT " + all + " FROM " + name;
        insert = "INSERT INTO " + name + " (" + all + ") VALUES ("
                + String.join(", ", Collections.nCopies(names.size(), "?")) + ")";
        update = "UPDATE " + name + " SET " + String.join(" = ?, ", names) + " = ? WHERE id = ?";
        delete = "DELETE FROM " + name + " WHERE id = ?";
    }

    /**
     * {@return a table of records}
     *
     * @param name its name
     * @param columns its own columns, the key and those that every table of records has left out
     */
    static Table ofRecords(String name, Column... columns) {
        List<Column> all = new ArrayList<>();
        all.add(new Column("id", ColumnType.KEY));
        all.addAll(List.of(columns));
        all.add(new Column("fingerprint", ColumnType.LONG));
        all.add(key("source_id", "imported_file"));
        all.add(new Column("source_row", ColumnType.WHOLE));
        all.add(new Column("step", ColumnType.LONG));
        return new Table(name, all);
    }

    /**
     * {@return a table of links between records}
     *
     * @param name its name
     * @param columns its own columns, the key and the step left out
     */
    static Table ofLinks(String name, Column... columns) {
        List<Column> all = new ArrayList<>();
        all.add(new Column("id", ColumnType.KEY));
        all.addAll(List.of(columns));
        all.add(new Column("step", ColumnType.LONG));
        return new Table(name, all);
    }

    /**
     * {@return a table of the history, which is only ever added to}
     *
     * @param name its name
     * @param columns all its columns
     */
    static Table ofHistory(String name, Column... columns) {
        return new Table(name, List.of(columns));
    }

    /** {@return a column that holds keys of another table} */
    static Column key(String name, String target) {
        return new Column(name, ColumnType.KEY, target);
    }

    static Column text(String name) {
        return new Column(name, ColumnType.TEXT);
    }

    static Column texts(String name) {
        return new Column(name, ColumnType.TEXTS);
    }

    static Column whole(String name) {
        return new Column(name, ColumnType.WHOLE);
    }

    static Column decimal(String name) {
        return new Column(name, ColumnType.DECIMAL);
    }

    static Column yesNo(String name) {
        return new Column(name, ColumnType.YES_NO);
    }

    static Column date(String name) {
        return new Column(name, ColumnType.DATE);
    }

    static Column time(String name) {
        return new Column(name, ColumnType.TIME);
    }

    String name() {
        return name;
    }

    List<Column> columns() {
        return columns;
    }

    boolean has(String column) {
        return positions.containsKey(column);
    }

    int position(String column) {
        Integer position = positions.get(column);
        if (position == null) {
            throw new IllegalArgumentException("Table " + name + " has no column " + column);
        }
        return position;
    }

    String insert() {
        return insert;
    }

    /** {@return the statement that writes every column of one row; its last parameter is the key} */
    String update() {
        return update;
    }

    String delete() {
        return delete;
    }

    String select() {
        return select;
    }

    /** {@return the row with this key} */
    Optional<Row> row(Database database, UUID id) {
        return rows(database, "WHERE id = ?", id).stream().findFirst();
    }

    /** {@return the rows that a WHERE and ORDER BY clause chooses} */
    List<Row> rows(Database database, String clause, @Nullable Object... parameters) {
        return database.list(select + " " + clause, result -> Row.of(this, result), parameters);
    }

    @Override
    public String toString() {
        return name;
    }
}

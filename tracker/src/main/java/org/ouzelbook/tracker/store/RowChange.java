package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.text;

import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.store.Table.Column;

/**
 * What one step did to one row. A row is told apart from its earlier and later states by the step that made it so.
 *
 * @param nr number of the change; changes of all steps are numbered from 1 without gaps
 * @param table the row's table
 * @param rowId the row's key
 * @param stepBefore the step that had made the row what it was; empty if this change added it
 * @param stepAfter the step that the row now carries; empty if this change removed it
 * @param rowBefore the row as it was; empty if this change added it
 */
record RowChange(
        long nr,
        Table table,
        UUID rowId,
        Optional<Long> stepBefore,
        Optional<Long> stepAfter,
        Optional<String> rowBefore) {
    static final Table TABLE = Table.ofHistory(
            "row_change",
            new Column("nr", ColumnType.LONG),
            text("table_name"),
            new Column("row_id", ColumnType.KEY),
            new Column("step_before", ColumnType.LONG),
            new Column("step_after", ColumnType.LONG),
            text("row_before"));

    static RowChange of(Row row) {
        return new RowChange(
                row.number("nr"),
                Schema.table(row.text("table_name")),
                row.key("row_id"),
                row.optional("step_before", Long.class),
                row.optional("step_after", Long.class),
                row.optional("row_before", String.class));
    }

    Row row() {
        return new Row(TABLE)
                .set("nr", nr)
                .set("table_name", table.name())
                .set("row_id", rowId)
                .set("step_before", stepBefore)
                .set("step_after", stepAfter)
                .set("row_before", rowBefore);
    }
}

package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.text;

import java.time.OffsetDateTime;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.store.Table.Column;

/**
 * One step of a book's history: one change that somebody made, all of it.
 *
 * @param nr its number, from 1
 * @param at when it was made, in UTC
 * @param who who made it
 * @param what what was done
 * @param undoes the step that this one undid; empty for an ordinary change
 * @param firstChange number of its first {@link RowChange}
 * @param added how many rows it added
 * @param replaced how many rows it changed
 * @param removed how many rows it removed
 */
public record Step(
        long nr,
        OffsetDateTime at,
        String who,
        Message what,
        Optional<Long> undoes,
        long firstChange,
        long added,
        long replaced,
        long removed) {
    static final Table TABLE = Table.ofHistory(
            "step",
            new Column("nr", ColumnType.LONG),
            new Column("made_at", ColumnType.MOMENT),
            text("made_by"),
            text("what"),
            new Column("undoes", ColumnType.LONG),
            new Column("first_change", ColumnType.LONG),
            new Column("rows_added", ColumnType.LONG),
            new Column("rows_replaced", ColumnType.LONG),
            new Column("rows_removed", ColumnType.LONG));

    static Step of(Row row) {
        return new Step(
                row.number("nr"),
                row.moment("made_at"),
                row.text("made_by"),
                MessageText.read(row.text("what")),
                row.optional("undoes", Long.class),
                row.number("first_change"),
                row.number("rows_added"),
                row.number("rows_replaced"),
                row.number("rows_removed"));
    }

    Row row() {
        return new Row(TABLE)
                .set("nr", nr)
                .set("made_at", at)
                .set("made_by", who)
                .set("what", MessageText.write(what))
                .set("undoes", undoes)
                .set("first_change", firstChange)
                .set("rows_added", added)
                .set("rows_replaced", replaced)
                .set("rows_removed", removed);
    }

    /** {@return how many rows it touched} */
    public long rows() {
        return added + replaced + removed;
    }

    long lastChange() {
        return firstChange + rows() - 1;
    }
}

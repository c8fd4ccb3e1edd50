package org.ouzelbook.tracker.store;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Message;

/**
 * Writes rows for one step of the history, and with each row what it was before and the table's sum. Every row of a record
 * that is ever written goes through here, so nothing can change without leaving its trace.
 */
final class Ledger {
    private final Database database;
    private final ContentSums sums = new ContentSums();
    private final long step;
    private final long firstChange;
    private long added;
    private long replaced;
    private long removed;

    Ledger(Database database) {
        this.database = database;
        step = 1 + last(Step.TABLE);
        firstChange = 1 + last(RowChange.TABLE);
    }

    private long last(Table table) {
        return database.first("SELECT COALESCE(MAX(nr), 0) FROM " + table, result -> result.getLong(1))
                .orElse(0L);
    }

    /** {@return whether the book has no history yet} */
    boolean isFirst() {
        return step == 1;
    }

    /** Writes a new row. */
    void add(Row row) {
        write(Optional.empty(), Optional.of(row.set("step", step)), row.table(), row.id());
    }

    /**
     * Writes a row over the one with its key, which keeps what it knows of its origin; nothing happens if both say the same.
     *
     * @throws IllegalArgumentException if the table has no row with this key
     */
    void replace(Row row) {
        Row before = stored(row.table(), row.id());
        if (row.table().has("source_id")) {
            row.set("source_id", before.optionalKey("source_id")).set("source_row", before.optionalWhole("source_row"));
        }
        if (!before.sameContent(row)) {
            write(Optional.of(before), Optional.of(row.set("step", step)), row.table(), row.id());
        }
    }

    /**
     * Removes a row.
     *
     * @throws IllegalArgumentException if the table has no row with this key
     */
    void remove(Table table, UUID id) {
        write(Optional.of(stored(table, id)), Optional.empty(), table, id);
    }

    /** Puts a row back into an earlier state, as it stood then, step and all. */
    void bringBack(Optional<Row> before, Optional<Row> earlier, Table table, UUID id) {
        write(before, earlier, table, id);
    }

    private void write(Optional<Row> before, Optional<Row> after, Table table, UUID id) {
        RowChange change = new RowChange(
                firstChange + added + replaced + removed,
                table,
                id,
                before.map(Row::step),
                after.map(Row::step),
                before.map(Row::toJson));
        if (before.isEmpty()) {
            insert(after.orElseThrow());
            added++;
        } else if (after.isEmpty()) {
            database.run(table.delete(), id);
            sums.removed(before.get());
            removed++;
        } else {
            update(before.get(), after.get());
            replaced++;
        }
        insert(change.row());
    }

    private void insert(Row row) {
        database.run(row.table().insert(), row.values().toArray());
        sums.added(row);
    }

    private void update(Row before, Row after) {
        Object[] parameters = new Object[after.values().size() + 1];
        after.values().toArray(parameters);
        parameters[parameters.length - 1] = after.id();
        database.run(after.table().update(), parameters);
        sums.removed(before);
        sums.added(after);
    }

    private Row stored(Table table, UUID id) {
        return table.row(database, id)
                .orElseThrow(() -> new IllegalArgumentException("There is no " + table + " with the key " + id));
    }

    /**
     * Ends the step.
     *
     * @param what what was done
     * @param who who did it
     * @param undoes the step that this one undid
     * @return the step; empty if it touched nothing, and then it is none
     */
    Optional<Step> close(Message what, String who, Optional<Long> undoes) {
        if (added + replaced + removed == 0) {
            return Optional.empty();
        }
        OffsetDateTime now = OffsetDateTime.now(ZoneOffset.UTC).truncatedTo(ChronoUnit.MICROS);
        Step made = new Step(step, now, who, what, undoes, firstChange, added, replaced, removed);
        insert(made.row());
        sums.write(database);
        return Optional.of(made);
    }
}

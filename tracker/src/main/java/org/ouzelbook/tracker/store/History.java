package org.ouzelbook.tracker.store;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.function.Function;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Sighting;

/** Reads the steps of a book and plays them backwards. */
final class History {
    /** How many row changes are held in memory at a time. */
    private static final int PAGE = 1000;

    /** Columns by which a row may stand in the way of another. */
    private static final List<String> UNIQUE = List.of("label", "name", "sha256");

    private final Database database;

    History(Database database) {
        this.database = database;
    }

    /** {@return the newest steps, newest first} */
    List<Step> steps(int most) {
        return steps("ORDER BY nr DESC FETCH FIRST " + most + " ROWS ONLY");
    }

    Optional<Step> step(long nr) {
        return steps("WHERE nr = " + nr).stream().findFirst();
    }

    /** {@return the number of the last step; 0 if there is none} */
    long lastStep() {
        return database.first("SELECT COALESCE(MAX(nr), 0) FROM step", result -> result.getLong(1))
                .orElse(0L);
    }

    /**
     * {@return the records that steps after this one touched, each once; empty where there are more changes than {@code most}, or
     * where what several people's books have in common was changed}
     */
    Optional<Set<TouchedRecord>> touchedAfter(long nr, int most) {
        List<Step> steps = steps("WHERE nr > " + nr + " ORDER BY nr");
        if (steps.stream().mapToLong(Step::rows).sum() > most) {
            return Optional.empty();
        }
        Set<TouchedRecord> touched = new LinkedHashSet<>();
        for (Step step : steps) {
            for (RowChange change : changes(step.firstChange(), step.lastChange())) {
                if (!keepsRecords(change.table()) && !change.table().equals(SimultaneousLinks.TABLE)) {
                    return Optional.empty();
                }
                touched.addAll(touched(change));
            }
        }
        return Optional.of(touched);
    }

    /** {@return how records differ from what they were after a step; links are left out, their sightings are not compared} */
    Optional<List<ChangedRecord>> changesAfter(long nr, int most, Function<TouchedRecord, Optional<Entry>> now) {
        List<Step> steps = steps("WHERE nr > " + nr + " ORDER BY nr");
        if (steps.stream().mapToLong(Step::rows).sum() > most) {
            return Optional.empty();
        }
        Map<TouchedRecord, Optional<Entry>> before = new LinkedHashMap<>();
        for (Step step : steps) {
            List<RowChange> changes = new ArrayList<>(changes(step.firstChange(), step.lastChange()));
            Collections.reverse(changes);
            for (RowChange change : changes) {
                if (keepsRecords(change.table())) {
                    EntryTable<?> kind = Schema.entries(change.table());
                    before.putIfAbsent(
                            new TouchedRecord(kind.type(), change.rowId()),
                            change.rowBefore().map(text -> kind.entry(Row.ofJson(change.table(), text))));
                }
            }
        }
        List<ChangedRecord> changed = new ArrayList<>();
        before.forEach((record, then) -> {
            Optional<Entry> today = now.apply(record);
            if (!saysTheSame(then, today)) {
                changed.add(new ChangedRecord(then, today));
            }
        });
        return Optional.of(changed);
    }

    private static boolean keepsRecords(Table table) {
        return Schema.ENTRIES.stream().anyMatch(entries -> entries.table().equals(table));
    }

    private static boolean saysTheSame(Optional<Entry> one, Optional<Entry> other) {
        return one.isPresent() == other.isPresent()
                && (one.isEmpty()
                        || Schema.of(one.get())
                                .row(one.get())
                                .saysTheSame(Schema.of(other.orElseThrow()).row(other.orElseThrow())));
    }

    /** {@return the record of a changed row; of a link, the sightings that it joins or joined} */
    private List<TouchedRecord> touched(RowChange change) {
        if (!change.table().equals(SimultaneousLinks.TABLE)) {
            return List.of(new TouchedRecord(Schema.entries(change.table()).type(), change.rowId()));
        }
        Optional<Row> link = change.rowBefore()
                .map(text -> Row.ofJson(change.table(), text))
                .or(() -> change.table().row(database, change.rowId()));
        return link.map(row -> List.of(
                        new TouchedRecord(Sighting.class, row.key("one_id")),
                        new TouchedRecord(Sighting.class, row.key("other_id"))))
                .orElse(List.of());
    }

    private List<Step> steps(String clause) {
        return database.list(Step.TABLE.select() + " " + clause, result -> Step.of(Row.of(Step.TABLE, result)));
    }

    /** {@return the numbers of the steps that are undone now; a step whose undoing was undone is not} */
    Set<Long> undone() {
        Set<Long> undone = new HashSet<>();
        for (Step undo : steps("WHERE undoes IS NOT NULL ORDER BY nr DESC")) {
            if (!undone.contains(undo.nr())) {
                undone.add(undo.undoes().orElseThrow());
            }
        }
        return undone;
    }

    /** {@return the newest ordinary step that is not undone} */
    Optional<Step> toUndo() {
        Set<Long> undone = undone();
        return newest("undoes IS NULL", undone);
    }

    /** {@return the newest undoing that is not undone itself, if nothing else was changed after it} */
    Optional<Step> toRedo() {
        Set<Long> undone = undone();
        Optional<Step> undo = newest("undoes IN (SELECT nr FROM step WHERE undoes IS NULL)", undone);
        return undo.filter(
                step -> database.first("SELECT 1 FROM step WHERE undoes IS NULL AND nr > ?", result -> true, step.nr())
                        .isEmpty());
    }

    /** {@return the undoing of the first step up to this one that is undone now} */
    Optional<Step> toRedo(long last) {
        Set<Long> undone = undone();
        List<Step> first = steps("WHERE undoes IS NULL AND nr <= " + last + " ORDER BY nr").stream()
                .filter(step -> undone.contains(step.nr()))
                .limit(1)
                .toList();
        return first.stream()
                .flatMap(step -> steps("WHERE undoes = " + step.nr() + " ORDER BY nr DESC").stream())
                .filter(undo -> !undone.contains(undo.nr()))
                .findFirst();
    }

    private Optional<Step> newest(String condition, Set<Long> undone) {
        long before = Long.MAX_VALUE;
        while (true) {
            List<Step> page =
                    steps("WHERE " + condition + " AND nr < " + before + " ORDER BY nr DESC FETCH FIRST 100 ROWS ONLY");
            for (Step step : page) {
                if (!undone.contains(step.nr())) {
                    return Optional.of(step);
                }
                before = step.nr();
            }
            if (page.isEmpty()) {
                return Optional.empty();
            }
        }
    }

    /**
     * Plays a step backwards, change by change.
     *
     * @throws BookException if a later step changed one of its rows, or needs one
     */
    void playBack(Step step, Ledger ledger, Progress progress) {
        for (long last = step.lastChange(); last >= step.firstChange(); last -= PAGE) {
            long first = Math.max(step.firstChange(), last - PAGE + 1);
            for (RowChange change : changes(first, last)) {
                playBack(step, change, ledger);
            }
            if (!progress.goOn(step.lastChange() - first + 1, step.rows())) {
                throw new CancellationException();
            }
        }
    }

    /** {@return the changes with these numbers, newest first} */
    private List<RowChange> changes(long first, long last) {
        return database.list(
                RowChange.TABLE.select() + " WHERE nr BETWEEN ? AND ? ORDER BY nr DESC",
                result -> RowChange.of(Row.of(RowChange.TABLE, result)),
                first,
                last);
    }

    private void playBack(Step step, RowChange change, Ledger ledger) {
        Optional<Row> now = change.table().row(database, change.rowId());
        if (!now.map(Row::step).equals(change.stepAfter())) {
            throw refused(step, now.map(Row::step).orElseGet(() -> removedBy(change.table(), change.rowId())));
        }
        Optional<Row> earlier = change.rowBefore().map(text -> Row.ofJson(change.table(), text));
        try {
            ledger.bringBack(now, earlier, change.table(), change.rowId());
        } catch (BookFailure.RuleBroken e) {
            throw refused(step, earlier.map(this::standsInTheWayOf).orElseGet(() -> neededBy(change)));
        }
    }

    /** {@return the step that removed a row} */
    private long removedBy(Table table, UUID id) {
        return database.first(
                        "SELECT MAX(nr) FROM step WHERE first_change <= (SELECT MAX(nr) FROM row_change"
                                + " WHERE row_id = ? AND table_name = ?)",
                        result -> result.getLong(1),
                        id,
                        table.name())
                .orElseThrow();
    }

    /** {@return the first step that left a row pointing to the one that the change added} */
    private long neededBy(RowChange change) {
        return Schema.TABLES.stream()
                .flatMap(table -> table.columns().stream()
                        .filter(column -> change.table().name().equals(column.target()))
                        .flatMap(column -> table
                                .rows(
                                        database,
                                        "WHERE " + column.name() + " = ? ORDER BY step FETCH FIRST 1 ROW ONLY",
                                        change.rowId())
                                .stream()))
                .mapToLong(Row::step)
                .min()
                .orElseThrow();
    }

    /** {@return the step that took the label of a row that was there before, or removed what that row pointed to} */
    private long standsInTheWayOf(Row earlier) {
        Table table = earlier.table();
        for (Table.Column column : table.columns()) {
            String target = column.target();
            Optional<UUID> key = target == null ? Optional.empty() : earlier.optionalKey(column.name());
            if (target != null
                    && key.isPresent()
                    && Schema.table(target).row(database, key.get()).isEmpty()) {
                return removedBy(Schema.table(target), key.get());
            }
        }
        return UNIQUE.stream()
                .filter(table::has)
                .flatMap(column -> table.rows(database, "WHERE " + column + " = ?", earlier.text(column)).stream())
                .mapToLong(Row::step)
                .max()
                .orElseThrow();
    }

    private BookException refused(Step step, long laterNr) {
        Step later = step(laterNr).orElseThrow();
        return BookException.of("book.undo.later", step.nr(), step.what(), later.nr(), later.what());
    }
}

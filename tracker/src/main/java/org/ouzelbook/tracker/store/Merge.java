package org.ouzelbook.tracker.store;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;

/**
 * Puts the records of a {@link Bundle} into a book. Record by record the states that each book knows tell whether the other's is
 * newer, older or changed apart; only the last is asked. What is new comes in under its own key, unless the book says exactly the
 * same already.
 */
final class Merge {
    private static final int PACE = 1000;

    private final RecordsHere here;
    private final Bundle bundle;
    private final Progress progress;
    private final MergeTally tally;
    private final MergeMemory memory;
    private final Lineage lineage;
    private final Map<UUID, String> owners;
    private final Labels labels;
    private final RiverMeeting rivers;
    private final ThingsAlike alike;

    /** Keys there of records that did not come in; what points to them cannot either. */
    private final Set<UUID> missing = new HashSet<>();

    private long done;

    Merge(Database database, Ledger ledger, Bundle bundle, MergeAnswers answers, Progress progress) {
        this.bundle = bundle;
        this.progress = progress;
        tally = new MergeTally(answers, bundle.from());
        here = new RecordsHere(database, ledger);
        memory = new MergeMemory(here, bundle);
        lineage = memory.lineage();
        owners = Together.owners(database);
        labels = new Labels(database, owners);
        rivers = new RiverMeeting(database, bundle, memory, tally);
        alike = new ThingsAlike(database, bundle);
    }

    /** {@return what was done, and what a person must answer} */
    MergeResult run() {
        rivers.run();
        missing.addAll(rivers.open());
        tally.matched += rivers.met().size();
        for (EntryTable<?> entries : Schema.ENTRIES) {
            if (entries.equals(RiverStore.LINES)) {
                rivers.toAdd().forEach(line -> addLine(RiverStore.LINES.row(line)));
                rivers.drawnFrom()
                        .forEach((drawing, before) -> memory.remember(RiverStore.LINES.table(), drawing, before));
                tally.known += rivers.known();
            } else {
                inOrder(entries.table()).forEach(this::take);
            }
        }
        bundle.rows(SimultaneousLinks.TABLE).forEach(this::takeLink);
        new MergeRemovals(this).run();
        new MergePairs(this).run();
        memory.passOnKeys();
        return tally.result(bundle);
    }

    /** Rivers, each after the one that it joins; everything else as it comes. */
    private List<Row> inOrder(Table table) {
        List<Row> rows = bundle.rows(table);
        if (!table.has("mouth_river_id")) {
            return rows;
        }
        List<Row> ordered = new ArrayList<>();
        Set<UUID> ready = new HashSet<>();
        for (int round = 0; round <= rows.size(); round++) {
            for (Row row : rows) {
                if (!ready.contains(row.id())
                        && row.optionalKey("mouth_river_id").stream().allMatch(ready::contains)) {
                    ordered.add(row);
                    ready.add(row.id());
                }
            }
        }
        if (ordered.size() < rows.size()) {
            throw BookException.of("bundle.damaged", bundle.name());
        }
        return ordered;
    }

    private void take(Row there) {
        done++;
        if (done % PACE == 0 && !progress.goOn(done, bundle.size())) {
            throw new CancellationException();
        }
        UUID key = memory.key(there.id(), there.table());
        if (missing.contains(there.id())) {
            tally.leftOut++;
            return;
        }
        Optional<Row> translated = translate(there, key);
        if (translated.isEmpty()) {
            leaveOut(there);
            return;
        }
        Row row = translated.get();
        Optional<Long> now = here.state(row.table(), key);
        if (now.isPresent()) {
            meet(there, row, now.get());
        } else if (lineage.knows(key)) {
            comeBack(there, row);
        } else {
            takeNew(there, row);
        }
    }

    private void leaveOut(Row there) {
        missing.add(there.id());
        tally.leftOut++;
    }

    /** {@return the row as it would stand here; empty if something that it points to does not} */
    private Optional<Row> translate(Row there, UUID key) {
        Row row = there.copy().set("id", key);
        if (!rivers.lines().translate(row)) {
            tally.notes.add(Message.of("merge.note.offLine", words(there)));
            return Optional.empty();
        }
        for (Table.Column column : row.table().columns()) {
            String target = column.target();
            Optional<UUID> pointed = target == null ? Optional.empty() : row.optionalKey(column.name());
            if (pointed.isPresent() && target != null) {
                UUID found = memory.key(pointed.get(), Schema.table(target));
                if (missing.contains(pointed.get()) || !here.has(Schema.table(target), found)) {
                    return Optional.empty();
                }
                row.set(column.name(), found);
            }
        }
        return Optional.of(hashed(row));
    }

    private static Row hashed(Row row) {
        return row.set("fingerprint", RowHash.fingerprint(row));
    }

    /** {@return the row with a name that nothing else here has} */
    private Row named(Row row, Optional<String> owner) {
        labels.fit(row, owner);
        return hashed(row);
    }

    private void meet(Row there, Row row, long now) {
        UUID key = row.id();
        named(row, Optional.ofNullable(owners.get(key)));
        long state = Lineage.hash(row);
        Set<Long> heads = bundle.heads(there);
        Set<Long> mine = lineage.heads(key, now);
        memory.storeKey(there, key);
        if (rivers.met().contains(there.id())) {
            tally.known++;
            memory.remember(there, key, Optional.of(now).filter(same -> same == state));
            return;
        }
        if (state == now || intersect(mine, heads)) {
            tally.known++;
            memory.remember(there, key, Optional.of(now));
            return;
        }
        boolean theyKnowMine = intersect(mine, bundle.earlier(there.id()));
        boolean iKnowTheirs = intersect(heads, lineage.earlier(key));
        if (iKnowTheirs && !theyKnowMine) {
            tally.older++;
        } else if (theyKnowMine && !iKnowTheirs) {
            replace(there, row);
        } else {
            Row before = here.stored(row);
            Optional<MergeAnswer> answer = tally.ask(
                    MergeQuestion.About.CHANGED_IN_BOTH,
                    key + " " + now + " " + heads.stream().sorted().toList(),
                    Message.of("merge.ask.changed", words(before), bundle.from()),
                    Differences.between(before, row),
                    List.of(MergeAnswer.MINE, MergeAnswer.THEIRS));
            answer.ifPresent(given -> {
                if (given == MergeAnswer.THEIRS) {
                    replace(there, row);
                } else {
                    memory.remember(there, key, Optional.empty());
                }
            });
        }
    }

    private void replace(Row there, Row row) {
        Row before = here.stored(row);
        if (contradicts(there, row)) {
            return;
        }
        lineage.add(row.id(), Lineage.hash(before));
        tally.changed.add(Message.of("merge.changed", words(before), Differences.between(before, row)));
        put(row, Optional.of(before));
        memory.remember(there, row.id(), Optional.of(Lineage.hash(row)));
    }

    /** A record that is not here, but was, or was refused. */
    private void comeBack(Row there, Row row) {
        UUID key = row.id();
        if (intersect(bundle.heads(there), lineage.earlier(key))) {
            tally.older++;
            missing.add(there.id());
            return;
        }
        Optional<MergeAnswer> answer = tally.ask(
                MergeQuestion.About.REMOVED_HERE,
                key + " " + bundle.heads(there).stream().sorted().toList(),
                Message.of("merge.ask.removedHere", words(row), bundle.from()),
                List.of(),
                List.of(MergeAnswer.MINE, MergeAnswer.THEIRS));
        if (answer.filter(MergeAnswer.THEIRS::equals).isPresent()) {
            add(there, row);
        } else {
            missing.add(there.id());
            answer.ifPresent(mine -> memory.remember(there, key, Optional.empty()));
        }
    }

    private void takeNew(Row there, Row row) {
        Optional<Row> twin = alike.identical(row);
        if (twin.isPresent()) {
            tally.duplicates++;
            memory.meet(there.id(), twin.get().id());
            memory.storeKey(there, twin.get().id());
            memory.remember(there, twin.get().id(), Optional.of(Lineage.hash(twin.get())));
            return;
        }
        Optional<Row> other = alike.sameThing(row);
        if (other.isEmpty()) {
            add(there, row);
            return;
        }
        Optional<MergeAnswer> answer = tally.ask(
                MergeQuestion.About.ONE_THING,
                row.id() + " " + other.get().id(),
                Message.of("merge.ask.oneThing", words(other.get()), bundle.from(), words(row)),
                Differences.between(other.get(), row),
                List.of(MergeAnswer.MINE, MergeAnswer.THEIRS, MergeAnswer.BOTH));
        if (answer.isEmpty()) {
            leaveOut(there);
        } else if (answer.get() == MergeAnswer.BOTH) {
            add(there, row);
        } else {
            UUID key = other.get().id();
            memory.meet(there.id(), key);
            memory.storeKey(there, key);
            tally.matched++;
            if (answer.get() == MergeAnswer.THEIRS) {
                replace(there, named(row.copy().set("id", key), Optional.ofNullable(owners.get(key))));
            } else {
                memory.remember(there, key, Optional.empty());
            }
        }
    }

    private void add(Row there, Row row) {
        if (contradicts(there, row)) {
            return;
        }
        String owner = bundle.owner(there.id());
        here.ledger().add(Together.owner(row.table(), row.id(), owner));
        owners.put(row.id(), owner);
        named(row, Optional.of(owner));
        put(row, Optional.empty());
        labels.toRename(row).forEach(this::rename);
        memory.storeKey(there, row.id());
        tally.added(row.table());
        memory.remember(there, row.id(), Optional.of(Lineage.hash(row)));
    }

    /** Puts its owner's name behind that of a record which has just ceased to be the only one with its name. */
    private void rename(Row clash) {
        Row renamed = named(clash.copy(), Optional.ofNullable(owners.get(clash.id())));
        lineage.add(clash.id(), Lineage.hash(clash));
        lineage.heads(clash.id(), Lineage.hash(clash))
                .forEach(state -> memory.put(renamed.table(), renamed.id(), state, Optional.of(Lineage.hash(renamed))));
        put(renamed, Optional.of(clash));
    }

    private void addLine(Row line) {
        if (!missing.contains(line.key("river_id")) && here.has(RiverStore.RIVERS.table(), line.key("river_id"))) {
            put(line, Optional.empty());
            tally.added(line.table());
        }
    }

    private void put(Row row, Optional<Row> before) {
        if (before.isPresent()) {
            here.replace(row);
        } else {
            here.add(row);
        }
        labels.written(row);
    }

    /** {@return whether a decision about territories cannot stand beside one that is here, and does not come in} */
    private boolean contradicts(Row there, Row row) {
        if (!row.table().equals(DecisionStore.DECISIONS.table())) {
            return false;
        }
        Decision theirs = DecisionStore.DECISIONS.entry(row);
        for (Decision mine : DecisionStore.decisions(here.database(), theirs.species(), theirs.season())) {
            if (!mine.id().equals(theirs.id()) && mine.contradicts(theirs)) {
                Optional<MergeAnswer> answer = tally.ask(
                        MergeQuestion.About.CONTRADICTION,
                        row.id() + " " + mine.id(),
                        Message.of("merge.ask.contradiction", EntryWords.of(mine), bundle.from(), words(row)),
                        List.of(),
                        List.of(MergeAnswer.MINE, MergeAnswer.THEIRS));
                if (answer.isEmpty() || answer.get() == MergeAnswer.MINE) {
                    missing.add(there.id());
                    answer.ifPresent(kept -> memory.remember(there, row.id(), Optional.empty()));
                    return true;
                }
                remove(row.table(), mine.id());
            }
        }
        return false;
    }

    /** Removes a record that nothing needs. */
    void remove(Table table, UUID key) {
        here.state(table, key).ifPresent(state -> lineage.add(key, state));
        here.remove(table, key);
    }

    private void takeLink(Row there) {
        Table sightings = SightingStore.SIGHTINGS.table();
        UUID one = memory.key(there.key("one_id"), sightings);
        UUID other = memory.key(there.key("other_id"), sightings);
        Row link = SimultaneousLinks.link(one, other);
        if (here.has(link.table(), link.id())) {
            tally.known++;
        } else if (one.equals(other)
                || !here.has(sightings, one)
                || !here.has(sightings, other)
                || missing.contains(there.key("one_id"))
                || missing.contains(there.key("other_id"))) {
            tally.leftOut++;
        } else if (lineage.removal(link.id()).isPresent()) {
            tally.older++;
        } else {
            put(link, Optional.empty());
            tally.added(link.table());
        }
    }

    static Message words(Row row) {
        return row.table().equals(SimultaneousLinks.TABLE)
                ? Message.of("book.entry.link")
                : EntryWords.of(Schema.entries(row.table()).entry(row));
    }

    static boolean intersect(Set<Long> some, Set<Long> others) {
        return some.stream().anyMatch(others::contains);
    }

    RecordsHere here() {
        return here;
    }

    Bundle bundle() {
        return bundle;
    }

    MergeTally tally() {
        return tally;
    }

    MergeMemory memory() {
        return memory;
    }
}

package org.ouzelbook.tracker.store;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Origin;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Sighting;

/**
 * A book while it is being changed: what is added, replaced or removed here becomes one step of its history when the work
 * ends, or nothing if the work fails. Reading sees the changes made so far.
 */
public final class BookEdit extends BookView {
    private final Ledger ledger;
    private final SimultaneousLinks links;
    private boolean riversChanged;
    private boolean decisionsChanged;

    BookEdit(Database database, Ledger ledger) {
        super(database);
        this.ledger = ledger;
        this.links = new SimultaneousLinks(database, ledger);
    }

    /**
     * Adds a record made in the program.
     *
     * @param entry the record; what it points to must be in the book, except that a simultaneous sighting may come later
     *     in the same change
     * @throws BookException if the book has another record with its label
     * @throws IllegalArgumentException if it points to something that is not in the book
     */
    public void add(Entry entry) {
        add(entry, Schema.of(entry).row(entry));
    }

    /**
     * Adds a record taken from a file.
     *
     * @param entry the record, as for {@link #add(Entry)}
     * @param origin the file, which must have been added before, and the row
     * @throws BookException if the book has another record with its label
     * @throws IllegalArgumentException if it points to something that is not in the book
     */
    public void add(Entry entry, Origin origin) {
        add(
                entry,
                Schema.of(entry).row(entry).set("source_id", origin.file().id()).set("source_row", origin.row()));
    }

    private void add(Entry entry, Row row) {
        byTheRules(entry, () -> ledger.add(row));
        if (entry instanceof Sighting sighting) {
            links.add(sighting);
        } else if (entry instanceof RiverLine line) {
            LineDrawings.remember(database(), ledger, line);
        }
    }

    /**
     * Writes a record over the one with its key; where that came from stays known.
     *
     * @param entry the record as it is to be
     * @throws BookException if the book has another record with its label
     * @throws IllegalArgumentException if the book has none with its key, or it points to something that is not there
     */
    public void replace(Entry entry) {
        byTheRules(entry, () -> ledger.replace(Schema.of(entry).row(entry)));
        if (entry instanceof Sighting sighting) {
            links.replace(sighting);
        }
    }

    /**
     * Removes a record; the history keeps it.
     *
     * @param entry a record of the book
     * @throws BookException if another record needs it, as sightings need their visit
     * @throws IllegalArgumentException if the book has none with its key
     */
    public void remove(Entry entry) {
        if (entry instanceof Sighting) {
            links.remove(entry.id());
        }
        try {
            ledger.remove(Schema.of(entry).table(), entry.id());
        } catch (BookFailure.RuleBroken e) {
            throw new BookException(Message.of("book.needed", EntryWords.of(entry)), e);
        }
        riversChanged |= entry instanceof RiverLine;
    }

    private void byTheRules(Entry entry, Runnable write) {
        riversChanged |= entry instanceof River || entry instanceof RiverLine;
        decisionsChanged |= entry instanceof Decision;
        try {
            write.run();
        } catch (BookFailure.RuleBroken e) {
            if (e.rule() == BookFailure.Rule.UNIQUE) {
                throw new BookException(Message.of("book.taken", EntryWords.of(entry)), e);
            }
            throw new IllegalArgumentException(entry + " points to something that is not in the book", e);
        }
    }

    /**
     * Puts another book's records into this one.
     *
     * @param bundle the other book's content
     * @param answers what a person answered
     * @param progress hears how far it is
     * @return what was done, and what is still to be answered; records in question stay as they are here
     */
    public MergeResult merge(Bundle bundle, MergeAnswers answers, Progress progress) {
        links.write();
        MergeResult result = new Merge(database(), ledger, bundle, answers, progress).run();
        riversChanged = true;
        decisionsChanged = true;
        return result;
    }

    /**
     * Remembers whether two records of different people are of one bird, or one visit, or whether two names are one person's.
     *
     * @param pair the two
     * @param same whether they are
     * @param by who says so
     * @param on the day
     */
    public void decide(SamePair pair, boolean same, String by, LocalDate on) {
        Row row = pair.ofPeople()
                ? SamePeople.decided(database(), pair, same, by, on)
                : Together.pair(pair.table(), pair.one(), pair.other(), same, by, on);
        if (row.table().row(database(), row.id()).isPresent()) {
            ledger.replace(row);
        } else {
            ledger.add(row);
        }
    }

    /**
     * Writes what has waited for the end of the change, and looks at what can only be judged then.
     *
     * @throws BookException if two decisions contradict each other
     */
    void finish() {
        links.writeAll();
        if (riversChanged) {
            network();
        }
        if (decisionsChanged) {
            DecisionStore.refuseContradiction(database());
        }
    }

    @Override
    public void eachSighting(SightingQuery query, Consumer<? super Sighting> reader) {
        links.write();
        super.eachSighting(query, reader);
    }

    @Override
    public Optional<Sighting> sighting(UUID id) {
        links.write();
        return super.sighting(id);
    }

    @Override
    public List<Sighting> sightings(String label) {
        links.write();
        return super.sightings(label);
    }
}

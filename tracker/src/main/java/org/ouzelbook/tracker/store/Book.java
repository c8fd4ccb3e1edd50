package org.ouzelbook.tracker.store;

import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;

/**
 * One book: every record of a group's rivers, in one file, with the history of every change.
 *
 * <p>A change is on the disk when {@link #change} returns, and nothing of it is if it fails or the machine stops before.
 * Several threads may use a book: they read at the same time as one of them changes it, and see what the last finished
 * change left. One program at a time may have a book open.
 */
public final class Book implements AutoCloseable {
    private static final Set<Path> OPEN = ConcurrentHashMap.newKeySet();

    private final Path file;
    private final ReentrantLock writing = new ReentrantLock();
    private final ReentrantLock reading = new ReentrantLock();
    private final Database writer;
    private final Backups backups;
    private final Clock clock;
    private @Nullable Database reader;

    private Book(Path file, Database writer, Clock clock) {
        this.file = file;
        this.writer = writer;
        this.backups = new Backups(file);
        this.clock = clock;
    }

    /**
     * Makes a new, empty book.
     *
     * @param path where, with or without the ending {@code .mv.db}
     * @return the book, open
     * @throws BookException if there is a file already, or the folder is missing or cannot be written
     */
    public static Book create(Path path) {
        Path file = BookFile.of(path);
        BookFile.checkNew(file);
        return connect(file, Clock.system(ZoneId.systemDefault()), () -> {
            Database database = BookFile.connect(file, false);
            Migrations.ALL.run(database, 0);
            return database;
        });
    }

    /**
     * Opens a book.
     *
     * @param path its file, with or without the ending {@code .mv.db}
     * @return the book
     * @throws BookException if there is none, it is open elsewhere, damaged, something else, or from a newer program
     */
    public static Book open(Path path) {
        return open(path, Migrations.ALL, Clock.system(ZoneId.systemDefault()));
    }

    static Book open(Path path, Migrations migrations, Clock clock) {
        Path file = BookFile.of(path);
        BookFile.checkExisting(file);
        return connect(file, clock, () -> {
            Database database = BookFile.connect(file, true);
            try {
                bringUpToDate(database, migrations);
                return database;
            } catch (RuntimeException e) {
                database.close();
                throw e;
            }
        });
    }

    private static Book connect(Path file, Clock clock, Supplier<Database> connection) {
        if (!OPEN.add(file)) {
            throw BookException.of("book.inUse", file.toString());
        }
        try {
            return new Book(file, connection.get(), clock);
        } catch (RuntimeException e) {
            OPEN.remove(file);
            throw e;
        }
    }

    private static void bringUpToDate(Database database, Migrations migrations) {
        Path file = database.file();
        int version = Migrations.version(database).orElseThrow(() -> BookException.of("book.foreign", file.toString()));
        if (version > migrations.newest()) {
            throw BookException.of("book.newer", file.toString());
        }
        if (version < migrations.newest()) {
            new Backups(file).beforeVersion(database, migrations.newest());
            migrations.run(database, version);
        }
    }

    /** {@return the full name of its file} */
    public Path file() {
        return file;
    }

    /**
     * Reads, at one moment of the book.
     *
     * @param work what to read; it must not keep the view
     * @return what the work returns
     */
    public <T extends @Nullable Object> T read(Function<? super BookView, ? extends T> work) {
        reading.lock();
        try {
            Database database = reader();
            try {
                return work.apply(new BookView(database));
            } finally {
                database.rollback();
            }
        } finally {
            reading.unlock();
        }
    }

    private Database reader() {
        Database database = reader;
        if (database == null) {
            database = BookFile.connect(file, true);
            database.readAtOneMoment();
            reader = database;
        }
        return database;
    }

    /**
     * Changes the book: all of the work becomes one step of the history, or, if it throws, nothing.
     *
     * @param what what is done, for the history
     * @param who who does it
     * @param work the change; it must not keep the edit
     * @return what the work returns; by then the change is on the disk
     */
    public <T extends @Nullable Object> T change(
            Message what, String who, Function<? super BookEdit, ? extends T> work) {
        return inTransaction(ledger -> {
            backUpToday(ledger);
            T result = edit(ledger, work);
            if (ledger.close(what, who, Optional.empty()).isPresent()) {
                writer.commit();
            }
            return result;
        });
    }

    /**
     * Does the work as {@link #change} would, and then leaves the book as it was: a dry run.
     *
     * @param work the change
     * @return what the work returns
     */
    public <T extends @Nullable Object> T rehearse(Function<? super BookEdit, ? extends T> work) {
        return inTransaction(ledger -> edit(ledger, work));
    }

    /** Copies a book that holds something before the first change of a day. */
    private void backUpToday(Ledger ledger) {
        if (!ledger.isFirst()) {
            backups.daily(writer, LocalDate.now(clock));
        }
    }

    private <T extends @Nullable Object> T edit(Ledger ledger, Function<? super BookEdit, ? extends T> work) {
        BookEdit edit = new BookEdit(writer, ledger);
        T result = work.apply(edit);
        edit.finish();
        return result;
    }

    private <T extends @Nullable Object> T inTransaction(Function<Ledger, T> work) {
        writing.lock();
        try {
            if (writing.getHoldCount() > 1) {
                throw new IllegalStateException("A change cannot be made within another");
            }
            return work.apply(new Ledger(writer));
        } finally {
            if (writing.getHoldCount() == 1) {
                writer.rollback();
            }
            writing.unlock();
        }
    }

    /**
     * {@return the newest steps of the history, newest first}
     *
     * @param most how many at the most
     */
    public List<Step> history(int most) {
        return read(view -> new History(view.database()).steps(most));
    }

    /** {@return the numbers of the steps that are undone now} */
    public Set<Long> undoneSteps() {
        return read(view -> new History(view.database()).undone());
    }

    /**
     * Undoes the last step that is not undone yet. The undoing is a step too, so it can be undone itself.
     *
     * @param who who undoes it
     * @param progress hears how far it is
     * @return the new step
     * @throws BookException if there is nothing to undo
     */
    public Step undo(String who, Progress progress) {
        return playBack(
                history -> history.toUndo().orElseThrow(() -> BookException.of("book.undo.nothing")),
                "book.undo.done",
                who,
                progress);
    }

    /**
     * Undoes one step, be there later ones or not; undoing an undoing does the step again.
     *
     * @param step number of the step
     * @param who who undoes it
     * @param progress hears how far it is
     * @return the new step
     * @throws BookException if there is no such step, it is undone, or a later step changed or needs what it did
     */
    public Step undo(long step, String who, Progress progress) {
        return playBack(
                history -> {
                    Step wanted = history.step(step).orElseThrow(() -> BookException.of("book.undo.noStep", step));
                    if (history.undone().contains(step)) {
                        throw BookException.of("book.undo.already", step, wanted.what());
                    }
                    return wanted;
                },
                "book.undo.done",
                who,
                progress);
    }

    /**
     * Does again what was undone last, if nothing else was changed since.
     *
     * @param who who does it again
     * @param progress hears how far it is
     * @return the new step
     * @throws BookException if there is nothing to do again
     */
    public Step redo(String who, Progress progress) {
        return playBack(
                history -> history.toRedo().orElseThrow(() -> BookException.of("book.redo.nothing")),
                "book.redo.done",
                who,
                progress);
    }

    /**
     * Takes the book to where it was after a step: what was done later is undone, newest first, and what was undone up to there is
     * done again. All of it happens or nothing.
     *
     * @param step number of an ordinary step, not of an undoing; 0 for the book before its first step
     * @param who who does it
     * @param progress hears how far it is
     * @return the new steps, one for each step that was undone or done again; none if the book is there already
     * @throws BookException if there is no such step, or one of those to play back is held by another
     */
    public List<Step> goTo(long step, String who, Progress progress) {
        return inTransaction(ledger -> {
            if (step > 0) {
                Step wanted =
                        new History(writer).step(step).orElseThrow(() -> BookException.of("book.undo.noStep", step));
                if (wanted.undoes().isPresent()) {
                    throw BookException.of("book.undo.isUndoing", step, wanted.what());
                }
            }
            backUpToday(ledger);
            List<Step> done = new ArrayList<>();
            for (Optional<Step> next = undoneLater(step); next.isPresent(); next = undoneLater(step)) {
                done.add(playedBack(next.get(), "book.undo.done", who, progress));
            }
            for (Optional<Step> next = doneAgain(step); next.isPresent(); next = doneAgain(step)) {
                done.add(playedBack(next.get(), "book.redo.done", who, progress));
            }
            DecisionStore.refuseContradiction(writer);
            if (!done.isEmpty()) {
                writer.commit();
            }
            return done;
        });
    }

    private Optional<Step> undoneLater(long step) {
        return new History(writer).toUndo().filter(newest -> newest.nr() > step);
    }

    private Optional<Step> doneAgain(long step) {
        return new History(writer).toRedo(step);
    }

    private Step playedBack(Step step, String key, String who, Progress progress) {
        Ledger ledger = new Ledger(writer);
        new History(writer).playBack(step, ledger, progress);
        return ledger.close(Message.of(key, step.nr(), step.what()), who, Optional.of(step.nr()))
                .orElseThrow();
    }

    private Step playBack(Function<History, Step> choice, String key, String who, Progress progress) {
        return inTransaction(ledger -> {
            backUpToday(ledger);
            History history = new History(writer);
            Step step = choice.apply(history);
            history.playBack(step, ledger, progress);
            DecisionStore.refuseContradiction(writer);
            Step done = ledger.close(Message.of(key, step.nr(), step.what()), who, Optional.of(step.nr()))
                    .orElseThrow();
            writer.commit();
            return done;
        });
    }

    /**
     * Copies the book as it is now into a zip file, and proves the copy by restoring it and summing every row. Nobody can
     * change the book meanwhile.
     *
     * @param zip the file to make, with or without its ending {@code .zip}
     * @param progress hears how far the proof is
     * @return the full name of the zip file
     * @throws BookException if the file is there already or cannot be written, or the copy is not like the book
     */
    public Path backup(Path zip, Progress progress) {
        writing.lock();
        try {
            return backups.to(zip, writer, progress);
        } finally {
            writing.unlock();
        }
    }

    /**
     * Looks for damage and for records that contradict each other.
     *
     * @param progress hears how far it is
     * @return what was found; empty if the book is sound
     */
    public List<Message> check(Progress progress) {
        return read(view -> new BookCheck(view.database()).run(progress));
    }

    /** Closes the book; its file is then complete and other programs may open it. */
    @Override
    public void close() {
        writing.lock();
        reading.lock();
        try {
            if (reader != null) {
                reader.close();
            }
            writer.close();
        } finally {
            OPEN.remove(file);
            reading.unlock();
            writing.unlock();
        }
    }
}

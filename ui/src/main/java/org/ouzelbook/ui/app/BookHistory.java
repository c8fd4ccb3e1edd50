package org.ouzelbook.ui.app;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.Step;

/** The steps of a book's history, and undoing them. */
public final class BookHistory {
    private BookHistory() {}

    /**
     * One step, as people and scripts read it.
     *
     * @param step its number
     * @param date the local date
     * @param time the local time, to the second
     * @param who who made it
     * @param what what was done
     * @param added how many rows it added
     * @param changed how many rows it changed
     * @param removed how many rows it removed
     * @param undone whether it is undone now
     * @param undoes the step that it undid
     */
    public record Line(
            long step,
            LocalDate date,
            LocalTime time,
            String who,
            Message what,
            long added,
            long changed,
            long removed,
            boolean undone,
            Optional<Long> undoes) {
        static Line of(Step step, Set<Long> undone) {
            ZonedDateTime here = step.at().atZoneSameInstant(ZoneId.systemDefault());
            return new Line(
                    step.nr(),
                    here.toLocalDate(),
                    here.toLocalTime().truncatedTo(ChronoUnit.SECONDS),
                    step.who(),
                    step.what(),
                    step.added(),
                    step.replaced(),
                    step.removed(),
                    undone.contains(step.nr()),
                    step.undoes());
        }
    }

    /**
     * {@return the newest steps, newest first}
     *
     * @param path the book
     * @param most how many at the most
     */
    public static List<Line> steps(Path path, int most) {
        try (Book book = Book.open(path)) {
            return steps(book, most);
        }
    }

    /**
     * Undoes a step.
     *
     * @param path the book
     * @param step its number; empty for the last that is not undone
     * @param who who undoes it
     * @param progress hears how far it is
     * @return the step that undid it
     */
    public static Line undo(Path path, OptionalLong step, String who, Progress progress) {
        try (Book book = Book.open(path)) {
            Step done = step.isPresent() ? book.undo(step.getAsLong(), who, progress) : book.undo(who, progress);
            return Line.of(done, Set.of());
        }
    }

    /**
     * Takes the book to where it was after a step: undoes what was done later, or does again what was undone up to it.
     *
     * @param path the book
     * @param step number of the step; 0 for the book before its first step
     * @param who who does it
     * @param progress hears how far it is
     * @return the new steps, one for each that was undone or done again
     */
    public static List<Line> goTo(Path path, long step, String who, Progress progress) {
        try (Book book = Book.open(path)) {
            return book.goTo(step, who, progress).stream()
                    .map(done -> Line.of(done, Set.of()))
                    .toList();
        }
    }

    /**
     * {@return the newest steps of an open book, newest first}
     *
     * @param book the book
     * @param most how many at the most
     */
    public static List<Line> steps(Book book, int most) {
        Set<Long> undone = book.undoneSteps();
        return book.history(most).stream().map(step -> Line.of(step, undone)).toList();
    }

    /**
     * Does again what was undone last.
     *
     * @param path the book
     * @param who who does it again
     * @param progress hears how far it is
     * @return the step that did it again
     */
    public static Line redo(Path path, String who, Progress progress) {
        try (Book book = Book.open(path)) {
            return Line.of(book.redo(who, progress), Set.of());
        }
    }
}

package org.ouzelbook.ui.window;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.Step;
import org.ouzelbook.ui.app.BookHistory;
import org.ouzelbook.ui.app.Texts;

/** What was done to the book, step by step, and the way back to any of it. */
final class HistoryViewModel {
    private static final int MOST = 1000;

    private final BookViewModel book;
    private final Work work;
    private final ReadOnlyObjectWrapper<List<BookHistory.Line>> steps = new ReadOnlyObjectWrapper<>(List.of());
    private List<BookHistory.Line> undoings = List.of();

    HistoryViewModel(BookViewModel book, Work work) {
        this.book = book;
        this.work = work;
    }

    /** {@return the steps that did something, newest first; undoings are told by the steps that they undid} */
    ReadOnlyObjectProperty<List<BookHistory.Line>> steps() {
        return steps.getReadOnlyProperty();
    }

    /** Reads the history. */
    void read() {
        Book open = book.book();
        work.start("", progress -> BookHistory.steps(open, MOST), this::show, book::failed);
    }

    private void show(List<BookHistory.Line> all) {
        undoings = all.stream().filter(line -> line.undoes().isPresent()).toList();
        steps.set(all.stream().filter(line -> line.undoes().isEmpty()).toList());
    }

    /** {@return the step after which the book is now; empty before the first} */
    Optional<BookHistory.Line> here() {
        return steps.get().stream().filter(line -> !line.undone()).findFirst();
    }

    /**
     * Takes the book to where it was after a step: undoes what was done later, or does again what was undone up to it, as one.
     *
     * @param step a step of the list
     */
    void goTo(BookHistory.Line step) {
        play(
                progress -> book.book().goTo(step.step(), book.who(), progress),
                done -> done.isEmpty()
                        ? Texts.of("window.history.there")
                        : Texts.of("window.history.went", step.what(), done.size()));
    }

    /**
     * Undoes one step and leaves those after it; does it again if it is undone.
     *
     * @param step a step of the list
     */
    void turn(BookHistory.Line step) {
        long played = step.undone() ? undoingOf(step) : step.step();
        play(progress -> List.of(book.book().undo(played, book.who(), progress)), this::told);
    }

    private long undoingOf(BookHistory.Line step) {
        return undoings.stream()
                .filter(undoing -> !undoing.undone() && undoing.undoes().equals(Optional.of(step.step())))
                .findFirst()
                .map(BookHistory.Line::step)
                .orElse(step.step());
    }

    private String told(List<Step> done) {
        return Texts.of(done.get(0).what());
    }

    private void play(Function<Progress, List<Step>> job, Function<List<Step>, String> words) {
        work.start(
                Texts.of("window.work.undoing"),
                job,
                done -> {
                    book.done(words.apply(done));
                    read();
                },
                book::failed);
    }
}

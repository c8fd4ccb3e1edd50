package org.ouzelbook.ui.window;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.Step;
import org.ouzelbook.ui.app.LogLine;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.app.Texts;

/** An open book in the window: what it holds, what is seen of it, and what was just done to it. */
final class BookViewModel {
    private final Book book;
    private final Work work;
    private final String who;
    private final StripViewModel strip = new StripViewModel();
    private final NotebookViewModel notebook;
    private final ReadOnlyObjectWrapper<Optional<BookContents>> contents =
            new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<Finding>> finding = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<Explanation>> explanation =
            new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyStringWrapper notice = new ReadOnlyStringWrapper("");

    /**
     * @param book the book, open
     * @param work does the reading and changing
     * @param who the person at the keyboard, for the history
     */
    BookViewModel(Book book, Work work, String who) {
        this.book = book;
        this.work = work;
        this.who = who;
        this.notebook = new NotebookViewModel(this, work, this::notebookOf);
        strip.selected().addListener((property, before, now) -> tell());
        strip.season().addListener((property, before, now) -> tell());
        strip.path().addListener((property, before, now) -> tell());
    }

    private LogLine notebookOf(Optional<Visit> visit) {
        return new LogLine(
                book,
                new LogLine.Options(
                        visit.map(Visit::label),
                        Optional.empty(),
                        contents.get().map(BookContents::species),
                        visit.isEmpty(),
                        false,
                        LocalDate.now(ZoneId.systemDefault()),
                        who));
    }

    /** {@return the book itself, open} */
    Book book() {
        return book;
    }

    /** {@return the person at the keyboard, for the history} */
    String who() {
        return who;
    }

    /** {@return the species shown; the dipper until the book is read} */
    Species species() {
        return contents.get().map(BookContents::species).orElse(Species.DIPPER);
    }

    /** {@return the strip} */
    StripViewModel strip() {
        return strip;
    }

    /** {@return the notebook line} */
    NotebookViewModel notebook() {
        return notebook;
    }

    /** {@return what the book holds; empty until it is read} */
    ReadOnlyObjectProperty<Optional<BookContents>> contents() {
        return contents.getReadOnlyProperty();
    }

    /** {@return the finding at the top; empty where there is nothing to find} */
    ReadOnlyObjectProperty<Optional<Finding>> finding() {
        return finding.getReadOnlyProperty();
    }

    /** {@return what the right side tells} */
    ReadOnlyObjectProperty<Optional<Explanation>> explanation() {
        return explanation.getReadOnlyProperty();
    }

    /** {@return what was just done, or why it was not; blank if nothing} */
    ReadOnlyStringProperty notice() {
        return notice.getReadOnlyProperty();
    }

    /**
     * Reads the book.
     *
     * @param species the species to show; the one shown, or the first there is, if empty
     */
    void read(Optional<Species> species) {
        Optional<Species> wanted = species.or(() -> contents.get().map(BookContents::species));
        work.start(
                Texts.of("window.work.reading"),
                progress -> BookContents.read(book, wanted, progress),
                this::show,
                this::failed);
    }

    private void show(BookContents read) {
        contents.set(Optional.of(read));
        strip.show(read);
        tell();
    }

    /**
     * Takes what the model makes of the book.
     *
     * @param shadings what it makes of each season
     */
    void shade(Map<Integer, ModelShading> shadings) {
        strip.shade(shadings);
        tell();
    }

    private void tell() {
        Optional<BookContents> there = contents.get();
        finding.set(there.filter(book -> !book.maps().isEmpty()).flatMap(this::find));
        explanation.set(there.flatMap(this::explain));
    }

    private Optional<Finding> find(BookContents there) {
        return strip.place()
                .map(Finding::of)
                .or(() -> strip.bird().map(Finding::of))
                .or(() -> strip.allSeasons().get()
                        ? Optional.of(Finding.of(List.copyOf(there.maps().values())))
                        : strip.map().map(Finding::of));
    }

    private Optional<Explanation> explain(BookContents there) {
        WhyWords words = new WhyWords(there, strip::shading);
        WhyMarks marks = new WhyMarks(there);
        return strip.selected()
                .get()
                .flatMap(words::of)
                .or(() -> strip.place().map(marks::place))
                .or(() -> strip.bird().map(marks::bird))
                .or(() -> strip.allSeasons().get() ? there.trend().map(words::seasons) : Optional.empty())
                .or(() -> strip.map().map(words::season));
    }

    /**
     * Says what was done to the book, and reads it again.
     *
     * @param words what was done
     */
    void done(String words) {
        notice.set(words);
        read(Optional.empty());
    }

    /**
     * Says something that was done beside the book.
     *
     * @param words what
     */
    void say(String words) {
        notice.set(words);
    }

    /** Undoes the last change. */
    void undo() {
        work.start(Texts.of("window.work.undoing"), progress -> book.undo(who, progress), this::done, this::failed);
    }

    /** Does again what was undone last. */
    void redo() {
        work.start(Texts.of("window.work.redoing"), progress -> book.redo(who, progress), this::done, this::failed);
    }

    private void done(Step step) {
        done(Texts.of(step.what()));
    }

    /**
     * Says why something did not work.
     *
     * @param failure why
     */
    void failed(Throwable failure) {
        notice.set(FailureWords.of(failure));
    }
}

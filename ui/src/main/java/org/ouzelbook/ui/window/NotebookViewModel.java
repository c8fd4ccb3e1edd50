package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.ui.app.LogLine;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.VisitAnswer;

/** The notebook line: what is being typed, how it is understood, and the visit that it belongs to. */
final class NotebookViewModel {
    private final BookViewModel book;
    private final Work work;
    private final StringProperty line = new SimpleStringProperty("");
    private final ObjectProperty<Optional<Visit>> visit = new SimpleObjectProperty<>(Optional.empty());
    private final ReadOnlyObjectWrapper<List<Visit>> visits = new ReadOnlyObjectWrapper<>(List.of());
    private final ReadOnlyStringWrapper readBack = new ReadOnlyStringWrapper("");
    private final ReadOnlyBooleanWrapper clear = new ReadOnlyBooleanWrapper();
    private final ReadOnlyStringWrapper remark = new ReadOnlyStringWrapper("");
    private Optional<String> opened = Optional.empty();
    private LogLine notebook;

    /**
     * @param book the book
     * @param work does the reading and saving
     * @param notebooks makes the notebook of a visit, or of casual records
     */
    NotebookViewModel(BookViewModel book, Work work, Function<Optional<Visit>, LogLine> notebooks) {
        this.book = book;
        this.work = work;
        this.notebook = notebooks.apply(Optional.empty());
        line.addListener((property, before, now) -> read());
        visit.addListener((property, before, now) -> {
            notebook = notebooks.apply(now);
            read();
        });
        book.contents().addListener((property, before, now) -> now.ifPresent(this::offer));
        book.strip()
                .season()
                .addListener((property, before, now) -> book.contents().get().ifPresent(this::offer));
    }

    /** {@return what is typed} */
    StringProperty line() {
        return line;
    }

    /** {@return the visit that the line belongs to; empty for a casual record} */
    ObjectProperty<Optional<Visit>> visit() {
        return visit;
    }

    /** {@return the visits of the season shown, the latest first} */
    ReadOnlyObjectProperty<List<Visit>> visits() {
        return visits.getReadOnlyProperty();
    }

    /** {@return how the line is understood, or what is unclear about it} */
    ReadOnlyStringProperty readBack() {
        return readBack.getReadOnlyProperty();
    }

    /** {@return what is clear about the line but unusual; blank if nothing} */
    ReadOnlyStringProperty remark() {
        return remark.getReadOnlyProperty();
    }

    /**
     * {@return the name of the river of a visit}
     *
     * @param visit a visit of the book
     */
    String river(Visit visit) {
        return book.contents()
                .get()
                .map(contents ->
                        contents.records().rivers().river(visit.riverId()).name())
                .orElse("");
    }

    /** {@return whether the line is clear and may be saved} */
    ReadOnlyBooleanProperty clear() {
        return clear.getReadOnlyProperty();
    }

    private void offer(BookContents contents) {
        Optional<Visit> newly = opened.flatMap(label -> contents.records().visits().stream()
                .filter(one -> one.label().equals(label))
                .findFirst());
        opened = Optional.empty();
        newly.ifPresent(one -> book.strip().showSeason(one.date().getYear()));
        int season = book.strip().season().get();
        List<Visit> newest = new ArrayList<>(contents.records().visits().stream()
                .filter(one -> one.date().getYear() == season)
                .toList());
        newest.sort((one, other) -> other.date().compareTo(one.date()));
        Optional<Visit> kept = newly.or(visit::get)
                .flatMap(old ->
                        newest.stream().filter(one -> one.id().equals(old.id())).findFirst());
        visits.set(List.copyOf(newest));
        visit.set(kept.or(() -> newest.stream().findFirst()));
    }

    private void read() {
        String typed = line.get();
        clear.set(false);
        remark.set("");
        if (typed.isBlank()) {
            readBack.set("");
            return;
        }
        LogLine reader = notebook;
        work.start("", progress -> reader.read(typed), answer -> understood(typed, answer), book::failed);
    }

    private void understood(String typed, LogLine.Answer answer) {
        if (typed.equals(line.get())) {
            clear.set(answer.isClear());
            readBack.set(words(answer));
            remark.set(String.join(" ", answer.remarks().stream().map(Texts::of).toList()));
        }
    }

    private static String words(LogLine.Answer answer) {
        if (!answer.isClear()) {
            LogLine.QuestionAnswer first = answer.questions().get(0);
            String asked = Texts.of(first.question());
            return first.choices().isEmpty()
                    ? asked
                    : Texts.of("window.notebook.choices", asked, String.join(" · ", first.choices()));
        }
        return Texts.of("window.notebook.enterSaves", String.join("; ", answer.understood()));
    }

    /** Saves the line if it is clear, and is ready for the next one; if it is not, the question stays. */
    void save() {
        String typed = line.get();
        if (typed.isBlank()) {
            return;
        }
        LogLine writer = notebook;
        work.start(
                Texts.of("window.work.saving"),
                progress -> writer.enter(typed),
                answer -> saved(typed, answer),
                book::failed);
    }

    private void saved(String typed, LogLine.Answer answer) {
        if (!answer.stored()) {
            understood(typed, answer);
            return;
        }
        if (typed.equals(line.get())) {
            line.set("");
        }
        opened = answer.visit().map(VisitAnswer::visit);
        book.done(Texts.of("window.saved", String.join("; ", answer.understood())));
    }
}

package org.ouzelbook.ui.window;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.exchange.ImportAnswers;
import org.ouzelbook.tracker.exchange.Problem;
import org.ouzelbook.tracker.exchange.TableResult;
import org.ouzelbook.ui.app.ImportFiles;
import org.ouzelbook.ui.app.ImportReport;
import org.ouzelbook.ui.app.ImportRequest;
import org.ouzelbook.ui.app.ImportRequest.Mode;
import org.ouzelbook.ui.app.RowText;
import org.ouzelbook.ui.app.Texts;

/** An import: rehearsed first, its questions answered, and nothing written before somebody says so. */
final class ImportViewModel {
    private final BookViewModel book;
    private final Work work;
    private final LocalDate today;
    private final ReadOnlyObjectWrapper<Optional<ImportReport>> report = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<RowText>> row = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyStringWrapper refusal = new ReadOnlyStringWrapper("");
    private List<Path> files = List.of();
    private String meant = "";
    private ImportAnswers answers;

    /**
     * @param book the book
     * @param work does the reading and writing
     * @param today days after this one are refused
     */
    ImportViewModel(BookViewModel book, Work work, LocalDate today) {
        this.book = book;
        this.work = work;
        this.today = today;
        this.answers = ImportAnswers.none(today);
    }

    /** {@return what the import would do, or has done; empty before files are named} */
    ReadOnlyObjectProperty<Optional<ImportReport>> report() {
        return report.getReadOnlyProperty();
    }

    /** {@return the row that is looked at} */
    ReadOnlyObjectProperty<Optional<RowText>> row() {
        return row.getReadOnlyProperty();
    }

    /** {@return the name of the column that matters in the row that is looked at; blank if all do} */
    String meant() {
        return meant;
    }

    /** {@return why the files cannot be read; blank if they can} */
    ReadOnlyStringProperty refusal() {
        return refusal.getReadOnlyProperty();
    }

    /** {@return the files named} */
    List<Path> files() {
        return files;
    }

    /**
     * Rehearses the import of files; answers to earlier questions are forgotten.
     *
     * @param named files, folders and zips
     */
    void rehearse(List<Path> named) {
        files = List.copyOf(named);
        answers = ImportAnswers.none(today);
        run(Mode.REHEARSE);
    }

    /**
     * Answers a question for all its rows, and rehearses again.
     *
     * @param answer puts the answer among the others
     */
    void answer(Function<ImportAnswers, ImportAnswers> answer) {
        answers = answer.apply(answers);
        run(Mode.REHEARSE);
    }

    /** {@return whether there is something to take in} */
    boolean isReady() {
        return report.get().filter(one -> one.rehearsal() && one.added() > 0).isPresent();
    }

    /** Takes in what is ready, in one step; rows that stay out are written into files beside the book. */
    void accept() {
        if (isReady()) {
            boolean clean = report.get().orElseThrow().isClean();
            run(clean ? Mode.ALL_OR_NOTHING : Mode.WHAT_IS_READY);
        }
    }

    /** Leaves everything as it is. */
    void forget() {
        files = List.of();
        report.set(Optional.empty());
        row.set(Optional.empty());
        refusal.set("");
    }

    private void run(Mode mode) {
        Path home = Optional.ofNullable(book.book().file().getParent()).orElse(Path.of(""));
        ImportRequest request =
                new ImportRequest(book.book().file(), files, answers, mode, Optional.empty(), home, book.who());
        work.start(
                Texts.of(mode == Mode.REHEARSE ? "window.work.rehearsing" : "window.work.importing"),
                progress -> ImportFiles.into(book.book(), request, progress),
                this::show,
                failure -> refusal.set(FailureWords.of(failure)));
    }

    private void show(ImportReport now) {
        refusal.set("");
        row.set(Optional.empty());
        report.set(Optional.of(now));
        if (now.imported()) {
            book.done(Texts.of("window.import.done", now.added()));
        }
    }

    /** {@return the questions that are open, each once} */
    List<ImportQuestion> questions() {
        List<River> rivers = book.contents()
                .get()
                .map(contents -> contents.records().rivers().rivers())
                .orElse(List.of());
        return report.get().stream()
                .filter(ImportReport::rehearsal)
                .flatMap(one -> Stream.concat(
                        one.questions().stream(), one.problems().stream().filter(ImportQuestion::isOne)))
                .map(reason -> ImportQuestion.of(reason, rivers))
                .toList();
    }

    /**
     * A group of rows that are wrong or odd.
     *
     * @param heading what they are
     * @param count how many
     * @param first the first of them
     */
    record Group(String heading, long count, List<Problem> first) {
        Group {
            first = List.copyOf(first);
        }
    }

    /** {@return what is wrong, then what is odd} */
    List<Group> groups() {
        List<Group> groups = new ArrayList<>();
        report.get().ifPresent(one -> {
            one.problems().stream()
                    .filter(reason -> !(one.rehearsal() && ImportQuestion.isOne(reason)))
                    .forEach(reason ->
                            groups.add(new Group(Texts.of("import.told.problems"), reason.count(), reason.first())));
            one.warnings()
                    .forEach(reason ->
                            groups.add(new Group(Texts.of("import.told.warnings"), reason.count(), reason.first())));
        });
        return groups;
    }

    /**
     * Looks at the row of a problem, as it stands in its file.
     *
     * @param problem where
     */
    void look(Problem problem) {
        meant = problem.column().strip();
        Optional<TableResult> table = report.get().stream()
                .flatMap(one -> one.files().stream())
                .filter(one -> one.file().equals(problem.file()))
                .findFirst();
        if (problem.row() == 0 || table.isEmpty()) {
            row.set(Optional.of(new RowText(
                    problem.file(),
                    problem.row(),
                    problem.cell().isEmpty()
                            ? List.of()
                            : List.of(new RowText.Cell(problem.column(), problem.cell())))));
            return;
        }
        List<Path> named = files;
        work.start(
                Texts.of("window.work.looking"),
                progress -> RowText.of(named, problem.file(), table.get().understood(), problem.row()),
                row::set,
                failure -> refusal.set(FailureWords.of(failure)));
    }
}

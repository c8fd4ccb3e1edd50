package org.ouzelbook.ui.window;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.ui.app.Counting;
import org.ouzelbook.ui.app.Scope;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.leak.LeakCheck;
import org.ouzelbook.ui.report.PublicPaper;
import org.ouzelbook.ui.report.SeasonReport;

/** The findings: each answered once for the book as it is, with its picture, its table and the records behind. */
final class FindingsViewModel {
    private final BookViewModel book;
    private final Work work;
    private final double width;
    private final Map<Topic, FindingSheet> sheets = new EnumMap<>(Topic.class);
    private final ReadOnlyIntegerWrapper answered = new ReadOnlyIntegerWrapper();
    private final ReadOnlyObjectWrapper<Topic> topic = new ReadOnlyObjectWrapper<>(Topic.DENSITY);
    private final ReadOnlyObjectWrapper<List<Evidence>> evidence = new ReadOnlyObjectWrapper<>(List.of());
    private Optional<BookContents> of = Optional.empty();
    private Optional<ModelledCounts> modelled = Optional.empty();
    private final Questions questions;

    /**
     * @param book the book
     * @param work does the computing
     * @param width width of the pictures, in pixels
     */
    FindingsViewModel(BookViewModel book, Work work, double width) {
        this.book = book;
        this.work = work;
        this.width = width;
        this.questions = new Questions(work, topic.get(), this::keep);
    }

    /** {@return how many answers came so far; it changes with each} */
    ReadOnlyIntegerProperty answered() {
        return answered.getReadOnlyProperty();
    }

    /** {@return what is looked at} */
    ReadOnlyObjectProperty<Topic> topic() {
        return topic.getReadOnlyProperty();
    }

    /** {@return the records behind the line that is looked at} */
    ReadOnlyObjectProperty<List<Evidence>> evidence() {
        return evidence.getReadOnlyProperty();
    }

    /**
     * {@return the answer to a question; empty while it is worked on}
     *
     * @param one a question
     */
    Optional<FindingSheet> sheet(Topic one) {
        return Optional.ofNullable(sheets.get(one));
    }

    /**
     * Answers every question of the book as it is now, the one looked at first; what is answered already is kept. Once the model
     * has counted, what rests on counts is answered anew; until then the answer by rule is told.
     */
    void read() {
        Optional<BookContents> now = book.contents().get();
        if (now.isEmpty()) {
            return;
        }
        BookContents contents = now.get();
        boolean same = now.equals(of) && !questions.isStopped();
        Optional<ModelledCounts> counts = book.model().counts().get();
        boolean counted = counts.isPresent() && !counts.equals(modelled);
        modelled = counts;
        if (!same) {
            of = now;
            questions.forget();
            sheets.clear();
            evidence.set(List.of());
            answered.set(answered.get() + 1);
        }
        ModelledCounts told = counts.orElse(ModelledCounts.NONE);
        questions.ask(
                Stream.of(Topic.values())
                        .filter(one ->
                                !(sheets.containsKey(one) || questions.isOpen(one)) || (counted && one.isOfCounts()))
                        .toList(),
                (one, progress) -> sheet(one, contents, told, progress));
    }

    /** Leaves what is not begun until somebody reads again. */
    void rest() {
        questions.rest();
    }

    private void keep(Topic one, FindingSheet sheet) {
        sheets.put(one, sheet);
        answered.set(answered.get() + 1);
    }

    private FindingSheet sheet(Topic one, BookContents contents, ModelledCounts modelled, Progress progress) {
        CountSheets counts = new CountSheets(contents, modelled, width);
        LifeSheets lives = new LifeSheets(contents, width);
        return switch (one) {
            case DENSITY -> counts.density(progress);
            case TREND -> counts.trend(progress);
            case OCCUPANCY -> counts.occupancy(progress);
            case NESTS -> lives.nests(progress);
            case SURVIVAL -> lives.survival(progress);
            case PREY -> lives.prey(progress);
        };
    }

    /**
     * Looks at a question.
     *
     * @param one the question
     */
    void look(Topic one) {
        evidence.set(List.of());
        topic.set(one);
        questions.lookAt(one);
    }

    /**
     * Looks at the records behind a line of the table.
     *
     * @param line a line
     */
    void look(FindingSheet.Line line) {
        evidence.set(line.rests());
    }

    /**
     * Goes to a record on the strip.
     *
     * @param record a record behind a number
     */
    void goTo(Evidence record) {
        book.strip().showSeason(record.season());
        book.strip().select(record.subject());
    }

    /**
     * Writes the picture or the table that is looked at, unless it would tell everybody what must stay private.
     *
     * @param file where to; its ending says which: svg, png or csv
     * @param told hears what came of it, in words
     */
    void save(Path file, Consumer<String> told) {
        Topic asked = topic.get();
        try {
            Optional<FindingSheet> sheet = sheet(asked);
            Optional<FindingFile> made = sheet.isEmpty() ? Optional.empty() : FindingFile.of(asked, sheet.get(), file);
            made.ifPresentOrElse(
                    one -> work.start(
                            Texts.of("window.work.saving"),
                            progress -> one.write(book.book()),
                            told,
                            failure -> told.accept(notSaved(file, failure))),
                    () -> told.accept(Texts.of("window.findings.nothing")));
        } catch (IOException e) {
            told.accept(notSaved(file, e));
        }
    }

    private static String notSaved(Path file, Throwable failure) {
        return Texts.of("window.findings.notSaved", file, String.valueOf(failure.getMessage()));
    }

    /**
     * Writes the report of the season that the strip shows, counted by the model, unless it would tell what must stay private.
     *
     * @param file where to; a name that ends in pdf is for paper, any other for the screen
     * @param told hears what came of it, in words
     */
    void report(Path file, Consumer<String> told) {
        Scope scope = Scope.everything()
                .of(book.contents().get().orElseThrow().species())
                .in(book.strip().season().get());
        told.accept(Texts.of("window.work.report"));
        work.start(
                Texts.of("window.work.report"),
                progress -> {
                    SeasonFindings findings = SeasonFindings.of(
                            book.book(), scope, UnaryOperator.identity(), Counting.BY_MODEL, progress);
                    LeakCheck check = book.book().read(view -> LeakCheck.of(view, false));
                    try {
                        return PublicPaper.write(check, file, SeasonReport.of(findings));
                    } catch (IOException e) {
                        throw new UncheckedIOException(e);
                    }
                },
                leaks -> told.accept(
                        leaks.isEmpty()
                                ? Texts.of("cli.report.written", file)
                                : FindingFile.stopped("window.findings.reportStopped", leaks)),
                failure -> told.accept(FailureWords.of(failure)));
    }
}

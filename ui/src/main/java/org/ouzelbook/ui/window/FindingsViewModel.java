package org.ouzelbook.ui.window;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.exchange.export.CsvFiles;
import org.ouzelbook.tracker.exchange.export.DataTable;
import org.ouzelbook.ui.app.Counting;
import org.ouzelbook.ui.app.Scope;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.leak.Leak;
import org.ouzelbook.ui.app.leak.LeakCheck;
import org.ouzelbook.ui.app.leak.PrivateFile;
import org.ouzelbook.ui.report.PublicPaper;
import org.ouzelbook.ui.report.SeasonReport;
import org.ouzelbook.ui.strip.IntervalFigure.Figure;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.SvgPen;

/** The findings: each answered once for the book as it is, with its picture, its table and the records behind. */
final class FindingsViewModel {
    private static final int LEAKS_SHOWN = 6;

    private final BookViewModel book;
    private final Work work;
    private final double width;
    private final Map<Topic, FindingSheet> sheets = new EnumMap<>(Topic.class);
    private final ReadOnlyIntegerWrapper answered = new ReadOnlyIntegerWrapper();
    private final ReadOnlyObjectWrapper<Topic> topic = new ReadOnlyObjectWrapper<>(Topic.DENSITY);
    private final ReadOnlyObjectWrapper<List<Evidence>> evidence = new ReadOnlyObjectWrapper<>(List.of());
    private Optional<BookContents> of = Optional.empty();
    private Optional<ModelledCounts> modelled = Optional.empty();
    private final AtomicInteger asked = new AtomicInteger();
    private final Set<Topic> waiting = EnumSet.noneOf(Topic.class);
    private volatile boolean stopped;
    private volatile boolean resting;

    /**
     * @param book the book
     * @param work does the computing
     * @param width width of the pictures, in pixels
     */
    FindingsViewModel(BookViewModel book, Work work, double width) {
        this.book = book;
        this.work = work;
        this.width = width;
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
        resting = false;
        boolean same = now.equals(of) && !stopped;
        Optional<ModelledCounts> counts = book.model().counts().get();
        boolean counted = counts.isPresent() && !counts.equals(modelled);
        modelled = counts;
        if (!same) {
            stopped = false;
            of = now;
            asked.incrementAndGet();
            sheets.clear();
            waiting.clear();
            evidence.set(List.of());
            answered.set(answered.get() + 1);
        }
        Stream.concat(Stream.of(topic.get()), Stream.of(Topic.values()))
                .distinct()
                .filter(one ->
                        !(same && (sheets.containsKey(one) || waiting.contains(one))) || (counted && one.isOfCounts()))
                .forEach(one -> answer(one, now.get(), counts.orElse(ModelledCounts.NONE)));
    }

    /** Leaves what is not begun until somebody reads again. */
    void rest() {
        resting = true;
    }

    private void answer(Topic one, BookContents contents, ModelledCounts counts) {
        int time = asked.get();
        waiting.add(one);
        work.start(
                Texts.of("window.work.finding", one.term()),
                progress -> {
                    if (time != asked.get() || resting) {
                        throw new Rested();
                    }
                    goOn(progress);
                    FindingSheet sheet = sheet(one, contents, counts);
                    goOn(progress);
                    return sheet;
                },
                sheet -> keep(one, time, sheet),
                failure -> {
                    if (!(failure instanceof Rested)) {
                        keep(one, time, FindingSheet.refused(one.question(), FailureWords.of(failure)));
                    } else if (time == asked.get()) {
                        waiting.remove(one);
                    }
                });
    }

    /** Nobody waits for the answer any more. */
    private static final class Rested extends CancellationException {
        private static final long serialVersionUID = 1;
    }

    /** Whoever stops one answer stops those that wait as well; they are begun again when the page is opened again. */
    private void goOn(Progress progress) {
        if (stopped || !progress.goOn(0, 0)) {
            stopped = true;
            throw new CancellationException();
        }
    }

    private void keep(Topic one, int time, FindingSheet sheet) {
        // The book may have changed while this was worked out.
        if (time == asked.get()) {
            waiting.remove(one);
            sheets.put(one, sheet);
            answered.set(answered.get() + 1);
        }
    }

    private FindingSheet sheet(Topic one, BookContents contents, ModelledCounts modelled) {
        CountSheets counts = new CountSheets(book.book(), contents, modelled, width);
        LifeSheets lives = new LifeSheets(book.book(), contents, width);
        return switch (one) {
            case DENSITY -> counts.density();
            case TREND -> counts.trend();
            case OCCUPANCY -> counts.occupancy();
            case NESTS -> lives.nests();
            case SURVIVAL -> lives.survival();
            case PREY -> lives.prey();
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
     * Writes the picture that is looked at as SVG, or the table as CSV with every cell harmless to a spreadsheet.
     *
     * @param file where to; its ending says which
     * @return whether there was something to write
     */
    boolean save(Path file) {
        Optional<FindingSheet> sheet = sheet(topic.get());
        boolean picture = file.toString().toLowerCase(Locale.ROOT).endsWith(".svg");
        Optional<String> text = picture
                ? sheet.flatMap(FindingSheet::figure)
                        .map(Figure::picture)
                        .map(one -> SvgPen.write(one, Palette.LIGHT, "finding"))
                : sheet.filter(one -> !one.lines().isEmpty())
                        .map(one -> CsvFiles.text(table(topic.get().term(), one)));
        try {
            if (text.isPresent()) {
                PrivateFile.write(file, text.get());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.isPresent();
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
                leaks -> told.accept(leaks.isEmpty() ? Texts.of("cli.report.written", file) : stopped(leaks)),
                failure -> told.accept(FailureWords.of(failure)));
    }

    private static String stopped(List<Leak> leaks) {
        return Texts.of("window.findings.reportStopped")
                + leaks.stream()
                        .limit(LEAKS_SHOWN)
                        .map(leak -> "\n" + leak.place() + ": " + Texts.of(leak.what()))
                        .collect(Collectors.joining());
    }

    private static DataTable table(String name, FindingSheet sheet) {
        return new DataTable(
                name,
                sheet.columns(),
                sheet.lines().stream()
                        .map(line -> line.cells().stream()
                                .map(FindingsViewModel::cell)
                                .toList())
                        .toList());
    }

    /** A number stays a number, whatever its sign; "–" is nothing. */
    private static Object cell(String text) {
        if (text.equals("–")) {
            return "";
        }
        if (text.matches("[0-9]{1,9}")) {
            return Integer.valueOf(text);
        }
        return text.matches("-?[0-9]{1,9}\\.[0-9]+") ? (Object) Double.valueOf(text) : text;
    }
}

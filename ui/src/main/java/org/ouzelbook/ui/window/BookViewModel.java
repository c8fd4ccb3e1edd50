package org.ouzelbook.ui.window;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.stats.survey.ModelledCounts;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.Step;
import org.ouzelbook.ui.app.CorrectRecord;
import org.ouzelbook.ui.app.DecideLine;
import org.ouzelbook.ui.app.LogLine;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Subject;

/** An open book in the window: what it holds, what is seen of it, and what was just done to it. */
final class BookViewModel {
    private final Book book;
    private final Work work;
    private final Work counting;
    private final String who;
    private final StripViewModel strip = new StripViewModel();
    private final NotebookViewModel notebook;
    private final EndMove ends;
    private final ReadOnlyObjectWrapper<Optional<BookContents>> contents =
            new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<Finding>> finding = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<Explanation>> explanation =
            new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyStringWrapper notice = new ReadOnlyStringWrapper("");
    private final ModelFigures model = new ModelFigures();
    private final Stories stories;

    /** What was read last, of which the next reading needs only the changes; used by the work alone. */
    private final AtomicReference<@Nullable BookContents> latest = new AtomicReference<>();

    /**
     * @param book the book, open
     * @param work does the reading and changing
     * @param who the person at the keyboard, for the history
     */
    BookViewModel(Book book, Work work, String who) {
        this(book, work, work, work, who);
    }

    /**
     * @param book the book, open
     * @param work does the reading and changing
     * @param counting does the counting, which may take longer than anybody wants to wait for a line to be saved
     * @param telling works out the sentences about a season
     * @param who the person at the keyboard, for the history
     */
    BookViewModel(Book book, Work work, Work counting, Work telling, String who) {
        this.book = book;
        this.work = work;
        this.counting = counting;
        this.who = who;
        this.stories = new Stories(telling, this::tell);
        this.notebook =
                new NotebookViewModel(this, work, counting, this::notebookOf, this::correctionOf, this::decideLine);
        this.ends = new EndMove(this, work, this::decideLine);
        strip.selected().addListener((property, before, now) -> tell());
        strip.season().addListener((property, before, now) -> tell());
        strip.path().addListener((property, before, now) -> tell());
        strip.nestsShown().addListener((property, before, now) -> tell());
        model.stopped().addListener((property, before, now) -> tell());
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

    private CorrectRecord correctionOf(UUID record) {
        return new CorrectRecord(book, record, LocalDate.now(ZoneId.systemDefault()), who);
    }

    /** {@return the strip} */
    StripViewModel strip() {
        return strip;
    }

    /** {@return the end of a territory while it is moved} */
    EndMove ends() {
        return ends;
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
        work.start(Texts.of("window.work.reading"), progress -> follow(wanted), this::arrived, this::failed);
    }

    /** Reads what changed since the last reading; on the thread of the work. */
    private BookContents follow(Optional<Species> wanted) {
        BookContents known = latest.get();
        BookContents now = known == null ? BookContents.read(book, wanted) : known.followed(book, wanted);
        latest.set(now);
        return now;
    }

    /** Tells of a visit that somebody began and forgot to close, so that its absences are not lost. */
    private void remind(BookContents read) {
        read.records().visits().stream()
                .max(Comparator.comparing(Visit::date))
                .filter(visit -> visit.start().isPresent() && visit.end().isEmpty())
                .ifPresent(visit -> notice.set(Texts.of(
                        "window.openVisit",
                        visit.date(),
                        read.records().rivers().river(visit.riverId()).name())));
    }

    private void arrived(BookContents read) {
        if (contents.get().isEmpty() && notice.get().isBlank()) {
            remind(read);
        }
        if (!read.maps().isEmpty() || read.behind().isEmpty()) {
            show(read);
        }
        catchUp(read);
    }

    /** Maps what is behind, the season shown first; while that goes on, lines are read and saved as ever. */
    private void catchUp(BookContents read) {
        if (read.behind().isEmpty()) {
            return;
        }
        NavigableSet<Integer> behind = read.behind();
        int shown = behind.contains(strip.season().get()) ? strip.season().get() : behind.last();
        boolean onlyShown =
                read.maps().isEmpty() || behind.contains(strip.season().get());
        NavigableSet<Integer> next = onlyShown ? new TreeSet<>(Set.of(shown)) : behind;
        counting.start(
                Texts.of("window.work.counting"),
                progress -> isOld(read) ? read : read.caughtUp(next, progress),
                this::counted,
                this::notCounted);
    }

    /** Whether something was changed since; then there is no use in mapping the records as they were. */
    private boolean isOld(BookContents read) {
        BookContents newest = latest.get();
        return newest != null
                && (newest.step() != read.step() || !newest.species().equals(read.species()));
    }

    private void counted(BookContents mapped) {
        if (!isOld(mapped)) {
            latest.set(mapped);
            show(mapped);
            catchUp(mapped);
        }
    }

    private void notCounted(Throwable failure) {
        notice.set(
                failure instanceof CancellationException
                        ? Texts.of("window.countingStopped")
                        : FailureWords.of(failure));
    }

    private void show(BookContents read) {
        model.about(read.species());
        stories.about(read, ModelledCounts.NONE);
        contents.set(Optional.of(read));
        strip.show(read);
        tell();
    }

    /** {@return what the model counts in the contents shown} */
    ModelFigures model() {
        return model;
    }

    /**
     * Takes what the model counts.
     *
     * @param there the contents that it counted; those of an earlier time are let be
     * @param counts its counts
     */
    void counted(BookContents there, ModelledCounts counts) {
        if (contents.get().equals(Optional.of(there))) {
            stories.about(there, counts);
            model.take(counts);
            tell();
        }
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
                        ? Optional.of(Finding.of(List.copyOf(there.maps().values()), model.told()))
                        : strip.map().map(map -> Finding.of(map, model.told())));
    }

    private Optional<Explanation> explain(BookContents there) {
        WhyWords words = new WhyWords(
                there, strip::shading, stories::of, strip.nestsShown().get());
        return strip.selected()
                .get()
                .flatMap(words::of)
                .or(() -> strip.place().map(words::place))
                .or(() -> strip.bird().map(words::bird))
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

    /**
     * Writes the place of a click on the strip into the notebook line.
     *
     * @param x to the right on the drawing, in pixels
     * @param y downwards, in pixels
     * @return whether there is water at that place
     */
    boolean place(double x, double y) {
        Optional<String> words = contents.get()
                .flatMap(there -> strip.drawing()
                        .get()
                        .flatMap(drawing -> new PlaceOnStrip(there.records(), drawing).words(strip.at(x, y), x, y)));
        words.ifPresent(notebook::place);
        return words.isPresent();
    }

    private Optional<TerritoryMap.RiverMap> riverMap(Subject.OfTerritory wanted) {
        return contents.get()
                .flatMap(there -> Optional.ofNullable(there.maps().get(wanted.season())))
                .flatMap(map -> map.rivers().stream()
                        .filter(river -> river.river().id().equals(wanted.riverId()))
                        .findFirst());
    }

    private static Optional<Territory> territory(TerritoryMap.RiverMap map, String letter) {
        return map.territories().stream()
                .filter(territory -> territory.id().equals(letter))
                .findFirst();
    }

    /** {@return a territory of the maps; empty if it is no longer there} */
    Optional<Territory> territory(Subject.OfTerritory wanted) {
        return riverMap(wanted).flatMap(map -> territory(map, wanted.id()));
    }

    /** {@return the name of a river as it stands before a km; blank where the book has but one} */
    String riverBeforeKm(UUID riverId) {
        return contents.get()
                .map(there -> there.records().rivers())
                .filter(rivers -> rivers.rivers().size() > 1)
                .map(rivers -> rivers.river(riverId).name())
                .orElse("");
    }

    private Optional<Decisions> decisions() {
        return strip.selected()
                .get()
                .flatMap(subject -> subject instanceof Subject.OfTerritory one
                        ? Optional.of(one)
                        : Optional.<Subject.OfTerritory>empty())
                .flatMap(this::decisionsAbout);
    }

    /** {@return the decisions that can be made about a territory; empty if it is no longer there} */
    Optional<Decisions> decisionsAbout(Subject.OfTerritory one) {
        return riverMap(one)
                .flatMap(map -> territory(map, one.id())
                        .map(found ->
                                new Decisions(one.riverId(), riverBeforeKm(one.riverId()), found, map.territories())));
    }

    /**
     * Begins a decision about the selected territory in the notebook line, to be finished with a reason.
     *
     * @param line what the decision says so far
     * @return whether a territory was selected
     */
    boolean decide(Function<Decisions, String> line) {
        Optional<String> begun = decisions().map(line);
        begun.ifPresentOrElse(notebook::begin, () -> notice.set(Texts.of("window.decide.selectFirst")));
        return begun.isPresent();
    }

    private Optional<DecideLine> decideLine() {
        LocalDate today = LocalDate.now(ZoneId.systemDefault());
        return contents.get()
                .map(there -> new DecideLine(
                        book, there::records, there.species(), strip.season().get(), today, who));
    }

    private Optional<UUID> selectedRecord() {
        return strip.selected().get().flatMap(subject -> {
            if (subject instanceof Subject.OfSighting sighting) {
                return Optional.of(sighting.id());
            }
            return subject instanceof Subject.OfVisit visit ? Optional.of(visit.id()) : Optional.empty();
        });
    }

    /** Puts the sighting or visit that is selected into the notebook line; says how to select one where none is. */
    void correctSelected() {
        selectedRecord().ifPresentOrElse(notebook::correct, () -> notice.set(Texts.of("window.correct.selectFirst")));
    }

    /** Removes the sighting or visit that is selected. */
    void removeSelected() {
        selectedRecord()
                .ifPresentOrElse(
                        record -> work.start(
                                Texts.of("window.work.saving"),
                                progress -> correctionOf(record).remove(),
                                words -> {
                                    strip.select(Optional.empty());
                                    done(Texts.of("window.removed", words));
                                },
                                this::failed),
                        () -> notice.set(Texts.of("window.correct.selectFirst")));
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

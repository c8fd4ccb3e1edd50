package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.notebook.Completion;
import org.ouzelbook.ui.app.CorrectRecord;
import org.ouzelbook.ui.app.DecideLine;
import org.ouzelbook.ui.app.DecisionLine;
import org.ouzelbook.ui.app.LogLine;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TypedLines;
import org.ouzelbook.ui.app.VisitAnswer;
import org.ouzelbook.ui.strip.Subject;

/** The notebook line: what is being typed, how it is understood, and the visit or the record that it belongs to. */
final class NotebookViewModel {
    private final BookViewModel book;
    private final Work work;
    private final Work counting;
    private final Function<Optional<Visit>, LogLine> notebooks;
    private final Function<UUID, CorrectRecord> corrections;
    private final Supplier<Optional<DecideLine>> decisions;
    private final StringProperty line = new SimpleStringProperty("");
    private final IntegerProperty cursor = new SimpleIntegerProperty();
    private final Suggestions suggestions = new Suggestions();
    private final ObjectProperty<Optional<Visit>> visit = new SimpleObjectProperty<>(Optional.empty());
    private final ReadOnlyObjectWrapper<List<Visit>> visits = new ReadOnlyObjectWrapper<>(List.of());
    private final ReadOnlyStringWrapper readBack = new ReadOnlyStringWrapper("");
    private final ReadOnlyBooleanWrapper clear = new ReadOnlyBooleanWrapper();
    private final ReadOnlyBooleanWrapper correcting = new ReadOnlyBooleanWrapper();
    private final ReadOnlyStringWrapper remark = new ReadOnlyStringWrapper("");
    private Optional<String> opened = Optional.empty();
    private Optional<UUID> last = Optional.empty();
    private TypedLines reader;
    private volatile String newest = "";
    private Runnable afterDecision = () -> {};
    private Runnable forReason = () -> {};
    private Optional<String> toAsk = Optional.empty();
    private Optional<String> asked = Optional.empty();
    private boolean takesNext;

    /**
     * @param book the book
     * @param work does the reading and saving
     * @param counting tells what a decision would change, which may take long
     * @param notebooks makes the notebook of a visit, or of casual records
     * @param corrections makes the correction of a record with this key
     * @param decisions takes decisions about the season shown; empty while there is none
     */
    NotebookViewModel(
            BookViewModel book,
            Work work,
            Work counting,
            Function<Optional<Visit>, LogLine> notebooks,
            Function<UUID, CorrectRecord> corrections,
            Supplier<Optional<DecideLine>> decisions) {
        this.book = book;
        this.work = work;
        this.counting = counting;
        this.decisions = decisions;
        this.notebooks = notebooks;
        this.corrections = corrections;
        this.reader = notebooks.apply(Optional.empty());
        line.addListener((property, before, now) -> read());
        visit.addListener((property, before, now) -> {
            reader = notebooks.apply(now);
            correcting.set(false);
            read();
        });
        book.contents()
                .addListener((property, before, now) -> now.ifPresent(there -> {
                    offer(there);
                    askReason();
                }));
        book.strip()
                .season()
                .addListener((property, before, now) -> book.contents().get().ifPresent(this::offer));
    }

    /** {@return what is typed} */
    StringProperty line() {
        return line;
    }

    /** {@return where the next character goes} */
    IntegerProperty cursor() {
        return cursor;
    }

    /** {@return what the word that is being typed may be meant to become} */
    Suggestions suggestions() {
        return suggestions;
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

    /** {@return whether the line corrects a record of the book} */
    ReadOnlyBooleanProperty correcting() {
        return correcting.getReadOnlyProperty();
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
        opened = newly.isPresent() ? Optional.empty() : opened;
        newly.filter(one -> book.strip().allSeasons().get()
                        || one.date().getYear() != book.strip().season().get())
                .ifPresent(one -> book.strip().showSeason(one.date().getYear()));
        int season = newly.map(one -> one.date().getYear())
                .orElse(book.strip().season().get());
        List<Visit> latest = new ArrayList<>(contents.records().visits().stream()
                .filter(one -> one.date().getYear() == season)
                .toList());
        latest.sort((one, other) -> other.date().compareTo(one.date()));
        Optional<Visit> kept = newly.or(visit::get)
                .flatMap(old ->
                        latest.stream().filter(one -> one.id().equals(old.id())).findFirst());
        visits.set(List.copyOf(latest));
        visit.set(kept.or(() -> latest.stream().findFirst()));
    }

    /** {@return what reads this line: a decision is one by its first word, whatever visit the notebook is open at} */
    private TypedLines readerOf(String typed) {
        return !correcting.get() && DecisionLine.begins(typed)
                ? decisions.get().<TypedLines>map(one -> one).orElse(reader)
                : reader;
    }

    /** Begins a line, to be finished by hand. */
    void begin(String text) {
        if (correcting.get()) {
            leave();
        }
        line.set(text);
        cursor.set(text.length());
    }

    /** Writes a place from the strip: into a sighting where the cursor stands, into a decision in the stead of its place. */
    void place(String place) {
        if (!correcting.get() && DecisionLine.begins(line.get())) {
            String moved = Decisions.moved(line.get(), place);
            line.set(moved);
            cursor.set(moved.length());
        } else {
            insert(place);
        }
    }

    /**
     * Lets somebody hear that a decision was made, which often began on the strip and ends there.
     *
     * @param hearer who
     */
    void onDecided(Runnable hearer) {
        afterDecision = hearer;
    }

    /**
     * Lets somebody hear that a decision stands and that its reason can be written now.
     *
     * @param hearer who
     */
    void onReasonAsked(Runnable hearer) {
        forReason = hearer;
    }

    /**
     * Decides at once. Then the line asks for the reason, unless something else is half-written in it; the decision stands
     * with a reason or without one.
     *
     * @param decision a decision without a reason
     */
    void decide(String decision) {
        Optional<DecideLine> writer = decisions.get();
        writer.ifPresent(one -> work.start(
                Texts.of("window.work.saving"),
                progress -> one.enter(decision),
                answer -> decided(decision, answer),
                book::failed));
    }

    private void decided(String decision, TypedLines.Answer answer) {
        if (!answer.stored()) {
            book.say(Texts.of(answer.questions().get(0).question()));
            return;
        }
        toAsk = line.get().isBlank() ? Optional.of(decision + Decisions.BECAUSE) : Optional.empty();
        book.done(Texts.of("window.decidedAtOnce", String.join("; ", answer.understood())));
    }

    /** Asks for the reason of a decision as soon as the book that was read again holds it. */
    private void askReason() {
        Optional<String> begun = toAsk.filter(decision -> line.get().isBlank());
        toAsk = Optional.empty();
        begun.ifPresent(decision -> {
            asked = begun;
            begin(decision);
            forReason.run();
        });
    }

    /** Takes a decision that stands, and to which no reason was written, out of the line. */
    void leaveUnreasoned() {
        if (asked.filter(line.get()::equals).isPresent()) {
            line.set("");
        }
        asked = Optional.empty();
    }

    /** {@return whether a decision is being typed} */
    boolean isDeciding() {
        return !correcting.get() && DecisionLine.begins(line.get());
    }

    /** Writes a text where the cursor stands, apart from the words beside it; the cursor then stands behind it. */
    void insert(String text) {
        String typed = line.get();
        int at = Math.max(0, Math.min(cursor.get(), typed.length()));
        String before = typed.substring(0, at);
        String after = typed.substring(at);
        String start = before.isEmpty() || before.endsWith(" ") ? before : before + " ";
        String end = after.startsWith(" ") || text.endsWith(" ") ? after : " " + after;
        line.set(start + text + end);
        cursor.set(start.length() + text.length() + (text.endsWith(" ") ? 0 : 1));
    }

    /**
     * Writes a suggestion in the stead of what was typed of it; where it is still being looked for, as soon as it is found.
     *
     * @return whether there was one
     */
    boolean take() {
        takesNext = suggestions.list().get().isEmpty();
        return suggestions
                .chosen()
                .map(one -> {
                    String typed = line.get();
                    if (one.to() <= typed.length()) {
                        line.set(typed.substring(0, one.from()) + typed.substring(one.to()));
                        cursor.set(one.from());
                        insert(one.text());
                    }
                    return true;
                })
                .orElse(false);
    }

    /** Puts a record of the book into the line, to be corrected. */
    void correct(UUID record) {
        CorrectRecord correction = corrections.apply(record);
        work.start(
                "",
                progress -> correction.line(),
                written -> {
                    reader = correction;
                    correcting.set(true);
                    line.set(written);
                    cursor.set(written.length());
                    read();
                },
                book::failed);
    }

    /** Puts the record that was saved last into the line, to be corrected. */
    void correctLast() {
        last.ifPresent(this::correct);
    }

    /** Leaves the record as it is, and is ready for the next line. */
    void leave() {
        correcting.set(false);
        reader = notebooks.apply(visit.get());
        line.set("");
    }

    private void read() {
        String typed = line.get();
        newest = typed;
        takesNext = false;
        clear.set(false);
        remark.set("");
        suggestions.set(List.of());
        if (typed.isBlank()) {
            readBack.set("");
            return;
        }
        TypedLines asked = readerOf(typed);
        (asked instanceof DecideLine ? counting : work)
                .start(
                        "",
                        progress -> typed.equals(newest)
                                ? Optional.of(asked.read(typed))
                                : Optional.<TypedLines.Answer>empty(),
                        answer -> answer.ifPresent(one -> understood(typed, one)),
                        book::failed);
    }

    /** Looks for what may be meant by the word before the cursor. */
    void suggest() {
        String typed = line.get();
        int at = cursor.get();
        TypedLines asked = readerOf(typed);
        work.start(
                "",
                progress -> typed.equals(newest) ? asked.complete(typed, at) : List.<Completion.Suggestion>of(),
                found -> {
                    if (typed.equals(line.get()) && at == cursor.get()) {
                        suggestions.set(found);
                        if (takesNext) {
                            take();
                        }
                    }
                },
                book::failed);
    }

    private void understood(String typed, TypedLines.Answer answer) {
        if (typed.equals(line.get())) {
            clear.set(answer.isClear());
            readBack.set(words(answer));
            remark.set(String.join(" ", answer.remarks().stream().map(Texts::of).toList()));
        }
    }

    private String words(TypedLines.Answer answer) {
        if (!answer.isClear()) {
            TypedLines.QuestionAnswer first = answer.questions().get(0);
            String asked = Texts.of(first.question());
            return first.choices().isEmpty()
                    ? asked
                    : Texts.of("window.notebook.choices", asked, String.join(" · ", first.choices()));
        }
        return Texts.of(
                correcting.get()
                        ? "window.notebook.enterCorrects"
                        : isDeciding() ? "window.notebook.enterDecides" : "window.notebook.enterSaves",
                answer.visit().isPresent() ? visitWords(answer.understood()) : String.join("; ", answer.understood()));
    }

    /** What a visit showed and did not show comes first; what was typed of it can be cut short. */
    private static String visitWords(List<String> understood) {
        List<String> words = new ArrayList<>(understood);
        words.add(words.remove(0));
        return String.join(" ", words);
    }

    /** Saves the line if it is clear, and is ready for the next one; if it is not, the question stays. */
    void save() {
        String typed = line.get();
        if (typed.isBlank()) {
            return;
        }
        TypedLines writer = readerOf(typed);
        work.start(
                Texts.of("window.work.saving"),
                progress -> writer.enter(typed),
                answer -> saved(typed, answer),
                book::failed);
    }

    private void saved(String typed, TypedLines.Answer answer) {
        if (!answer.stored()) {
            understood(typed, answer);
            return;
        }
        boolean corrected = correcting.get();
        boolean decided = isDeciding();
        if (corrected) {
            leave();
        } else if (typed.equals(line.get())) {
            line.set("");
        }
        opened = corrected ? Optional.empty() : answer.visit().map(VisitAnswer::visit);
        answer.sightings().stream().findFirst().ifPresent(one -> {
            last = Optional.of(one.key());
            book.strip().select(Optional.of(new Subject.OfSighting(one.key())));
        });
        answer.visit().ifPresent(one -> {
            last = Optional.of(one.key());
            book.strip().select(Optional.of(new Subject.OfVisit(one.key())));
        });
        book.done(Texts.of(
                corrected ? "window.corrected" : decided ? "window.decided" : "window.saved",
                answer.visit().isPresent() ? answer.understood().get(0) : String.join("; ", answer.understood())));
        if (decided) {
            afterDecision.run();
        }
    }
}

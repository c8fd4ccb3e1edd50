package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.notebook.Completion;
import org.ouzelbook.tracker.notebook.LineContext;
import org.ouzelbook.tracker.notebook.LineReading;
import org.ouzelbook.tracker.notebook.NotebookLine;
import org.ouzelbook.tracker.notebook.VisitLine;
import org.ouzelbook.tracker.notebook.WrittenLine;
import org.ouzelbook.tracker.place.Places;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.tracker.store.SightingQuery;

/**
 * Corrects one sighting or visit by its notebook line, or removes it. What a line does not say stays as it was: its key, its
 * label, its visit, and a place that is written as before to the metre.
 */
public final class CorrectRecord implements TypedLines {
    private static final double SAME_PLACE_METRES = 1;

    private final Book book;
    private final UUID id;
    private final LocalDate today;
    private final String who;
    private final KnownWater known = new KnownWater();

    /**
     * @param book an open book
     * @param id key of a sighting or visit
     * @param today the local date; a visit cannot be later
     * @param who who corrects it
     */
    public CorrectRecord(Book book, UUID id, LocalDate today, String who) {
        this.book = book;
        this.id = id;
        this.today = today;
        this.who = who;
    }

    /**
     * {@return the key of the record that a person means}
     *
     * @param book an open book
     * @param name {@code last} for what was logged or changed last, the label of a visit or sighting, or a key
     * @throws WrongRequest if there is none, or several
     */
    public static UUID named(Book book, String name) {
        return book.read(view -> RecordName.find(view, name));
    }

    /**
     * {@return the record as a notebook line}
     *
     * @throws WrongRequest if the book has no such sighting or visit
     */
    public String line() {
        return book.read(view -> {
            Entry entry = entry(view);
            return entry instanceof Visit visit
                    ? WrittenLine.of(visit, view.network())
                    : WrittenLine.of((Sighting) entry, view.network(), visitOf(view, (Sighting) entry));
        });
    }

    private Entry entry(BookView view) {
        return view.sighting(id)
                .<Entry>map(sighting -> sighting)
                .or(() -> view.visit(id))
                .orElseThrow(() -> new WrongRequest(Message.of("correct.none")));
    }

    private static Optional<Visit> visitOf(BookView view, Sighting sighting) {
        return sighting.visitId().flatMap(view::visit);
    }

    @Override
    public List<Completion.Suggestion> complete(String line, int cursor) {
        KnownWater.Water water = book.read(known::of);
        return Completion.of(line, cursor, water.landmarks(), water.ringed());
    }

    @Override
    public Answer read(String line) {
        return answer(line, false);
    }

    @Override
    public Answer enter(String line) {
        return answer(line, true);
    }

    private Answer answer(String line, boolean store) {
        Entry entry = book.read(this::entry);
        return entry instanceof Visit visit ? visit(line, visit, store) : sighting(line, (Sighting) entry, store);
    }

    private Answer sighting(String line, Sighting before, boolean store) {
        if (VisitLine.opens(line)) {
            return Answer.unclear(line, Message.of("correct.notAVisit"));
        }
        Optional<Visit> visit = book.read(view -> visitOf(view, before));
        LineReading reading = book.read(view -> NotebookLine.read(line, context(view, before, visit)));
        if (!reading.isClear()) {
            return Answer.unclear(
                    line, reading.questions().stream().map(QuestionAnswer::of).toList());
        }
        if (reading.sightings().size() > 1) {
            return Answer.unclear(line, Message.of("correct.oneBird"));
        }
        Sighting after = corrected(before, reading.sightings().get(0));
        if (store) {
            book.change(Message.of("correct.step.sighting", line.strip()), who, edit -> {
                edit.replace(after);
                return after;
            });
        }
        return book.read(view -> new Answer(
                line,
                store,
                List.of(SightingWords.of(after, view.network(), visit)),
                List.of(SightingAnswer.of(after, view.network(), visit)),
                Optional.empty(),
                List.of(),
                reading.remarks()));
    }

    private LineContext context(BookView view, Sighting before, Optional<Visit> visit) {
        Places places = known.of(view).places();
        Optional<Sighting> atOnce =
                before.simultaneousWith().stream().sorted().findFirst().flatMap(view::sighting);
        Species usual =
                visit.flatMap(one -> one.lookedFor().stream().findFirst()).orElse(Species.DIPPER);
        return new LineContext(places, visit, before.date(), usual, before.observer(), atOnce);
    }

    private static Sighting corrected(Sighting before, Sighting read) {
        boolean samePlace = read.place().riverId().equals(before.place().riverId())
                && Math.abs(read.place().chainage().metres()
                                - before.place().chainage().metres())
                        < SAME_PLACE_METRES;
        Place place = samePlace
                ? new Place(
                        before.place().riverId(),
                        before.place().chainage(),
                        read.place().bank(),
                        read.place().uncertaintyMetres(),
                        before.place().lineVersion())
                : read.place();
        boolean stillTimed = !read.simultaneousWith().isEmpty() && read.time().isEmpty();
        return new Sighting(
                before.id(),
                before.label(),
                before.visitId(),
                before.date(),
                stillTimed ? before.time() : read.time(),
                place,
                read.species(),
                read.count(),
                read.age(),
                read.sex(),
                read.activities(),
                read.breedingCode(),
                read.rings(),
                read.simultaneousWith().isEmpty() ? Set.of() : before.simultaneousWith(),
                read.flewTo(),
                read.turnedBack(),
                read.observer(),
                read.note());
    }

    private Answer visit(String line, Visit before, boolean store) {
        if (!VisitLine.opens(line)) {
            return Answer.unclear(line, Message.of("correct.notASighting"));
        }
        VisitLine.Reading reading =
                book.read(view -> VisitLine.read(line, known.of(view).places(), today));
        if (reading.visit().isEmpty()) {
            return Answer.unclear(
                    line,
                    reading.questions().stream()
                            .map(question -> new QuestionAnswer(0, line.length(), question, List.of()))
                            .toList());
        }
        CorrectedVisit corrected = book.read(view -> CorrectedVisit.of(
                before, reading.visit().get(), view.sightings(SightingQuery.ALL.during(before)), view));
        if (corrected.refusal().isPresent()) {
            return Answer.unclear(line, corrected.refusal().get());
        }
        if (store) {
            book.change(Message.of("correct.step.visit", corrected.visit().label()), who, edit -> {
                edit.replace(corrected.visit());
                corrected.moved().forEach(edit::replace);
                return corrected;
            });
        }
        VisitAnswer answer = book.read(view -> VisitAnswer.of(
                corrected.visit(), view.network(), view.sightings(SightingQuery.ALL.during(corrected.visit()))));
        return new Answer(line, store, answer.words(), List.of(), Optional.of(answer), List.of(), corrected.remarks());
    }

    /**
     * Removes a sighting or visit; the history keeps it.
     *
     * @return what was removed, in words
     * @throws WrongRequest if the book has no such sighting or visit
     * @throws org.ouzelbook.tracker.store.BookException if sightings belong to the visit
     */
    public String remove() {
        Entry entry = book.read(this::entry);
        String words = book.read(view -> entry instanceof Visit visit
                ? Texts.of("log.visit.date", visit.date(), visit.label())
                : SightingWords.of((Sighting) entry, view.network(), visitOf(view, (Sighting) entry)));
        book.change(Message.of("correct.step.removed", words), who, edit -> {
            edit.remove(entry);
            return entry;
        });
        return words;
    }
}

package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.notebook.Completion;
import org.ouzelbook.tracker.notebook.LineContext;
import org.ouzelbook.tracker.notebook.LineReading;
import org.ouzelbook.tracker.notebook.NotebookLine;
import org.ouzelbook.tracker.notebook.VisitEnd;
import org.ouzelbook.tracker.notebook.VisitLine;
import org.ouzelbook.tracker.place.Places;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.tracker.store.SightingQuery;

/**
 * Enters lines of a notebook into a book, one after the other: a visit opened, birds seen, the visit closed. A line that is
 * unclear is asked about, and nothing of it is stored.
 */
public final class LogLine implements TypedLines {
    private final Book book;
    private final Options options;
    private final KnownWater known = new KnownWater();
    private final List<Sighting> rehearsed = new ArrayList<>();
    private Optional<Visit> current = Optional.empty();
    private Optional<Sighting> before = Optional.empty();

    /**
     * Starts with no line entered.
     *
     * @param book an open book
     * @param options what the lines may leave unsaid
     */
    public LogLine(Book book, Options options) {
        this.book = book;
        this.options = options;
    }

    /**
     * What the lines may leave unsaid.
     *
     * @param visit label of the visit that they belong to; empty for the visit of the date
     * @param date their date; empty for today
     * @param species the bird that is meant where a line names none; empty for the first that the visit looked for
     * @param casual whether the birds were seen without a visit
     * @param dryRun whether to read only and store nothing
     * @param today the local date
     * @param who who enters them
     */
    public record Options(
            Optional<String> visit,
            Optional<LocalDate> date,
            Optional<Species> species,
            boolean casual,
            boolean dryRun,
            LocalDate today,
            String who) {}

    @Override
    public Answer enter(String line) {
        return answer(line, Purpose.ENTER);
    }

    @Override
    public Answer read(String line) {
        return answer(line, Purpose.READ);
    }

    private enum Purpose {
        ENTER,
        READ
    }

    private Answer answer(String line, Purpose purpose) {
        if (VisitLine.opens(line)) {
            return open(line, purpose);
        }
        return VisitEnd.closes(line) ? close(line, purpose) : sight(line, purpose);
    }

    private boolean stores(Purpose purpose) {
        return purpose == Purpose.ENTER && !options.dryRun();
    }

    private Places places(BookView view) {
        return known.of(view).places();
    }

    @Override
    public List<Completion.Suggestion> complete(String line, int cursor) {
        KnownWater.Water water = book.read(known::of);
        Optional<UUID> river = chosen().visit().map(Visit::riverId);
        List<Landmark> nearest = new ArrayList<>(water.landmarks());
        nearest.sort(Comparator.comparing(landmark ->
                river.isPresent() && !river.get().equals(landmark.place().riverId())));
        return Completion.of(line, cursor, nearest, water.ringed());
    }

    private Answer open(String line, Purpose purpose) {
        VisitLine.Reading reading = book.read(view -> VisitLine.read(line, places(view), options.today()));
        if (reading.visit().isEmpty()) {
            return Answer.unclear(
                    line,
                    reading.questions().stream()
                            .map(question -> new QuestionAnswer(0, line.length(), question, List.of()))
                            .toList());
        }
        Visit visit = book.read(view -> withFreeLabel(reading.visit().get(), view));
        if (stores(purpose)) {
            book.change(Message.of("log.step.visit", visit.label()), options.who(), edit -> {
                edit.add(visit);
                return null;
            });
        }
        if (purpose == Purpose.ENTER) {
            current = Optional.of(visit);
            before = Optional.empty();
        }
        return told(line, visit, purpose);
    }

    private static Visit withFreeLabel(Visit visit, BookView view) {
        String label = visit.label();
        for (char letter = 'b'; view.visit(label).isPresent() && letter <= 'z'; letter++) {
            label = visit.label() + letter;
        }
        return visit.labelled(label);
    }

    private Answer told(String line, Visit visit, Purpose purpose) {
        VisitAnswer answer = book.read(view -> {
            List<Sighting> seen = new ArrayList<>(view.sightings(SightingQuery.ALL.during(visit)));
            rehearsed.stream()
                    .filter(sighting -> sighting.visitId().equals(Optional.of(visit.id())))
                    .forEach(seen::add);
            return VisitAnswer.of(visit, view.network(), seen);
        });
        return new Answer(line, stores(purpose), answer.words(), List.of(), Optional.of(answer), List.of(), List.of());
    }

    private Answer close(String line, Purpose purpose) {
        Chosen chosen = chosen();
        if (chosen.visit().isEmpty()) {
            return Answer.unclear(line, chosen.question().orElseGet(() -> Message.of("log.endWhich")));
        }
        VisitEnd.Reading reading =
                book.read(view -> VisitEnd.read(line, chosen.visit().get(), places(view)));
        if (reading.visit().isEmpty()) {
            return Answer.unclear(line, reading.question().orElseThrow());
        }
        Visit visit = reading.visit().get();
        if (stores(purpose)) {
            book.change(Message.of("log.step.end", visit.label()), options.who(), edit -> {
                edit.replace(visit);
                return null;
            });
        }
        if (purpose == Purpose.ENTER) {
            current = Optional.of(visit);
        }
        return told(line, visit, purpose);
    }

    private Answer sight(String line, Purpose purpose) {
        Chosen chosen = options.casual() ? new Chosen(Optional.empty(), Optional.empty()) : chosen();
        if (chosen.question().isPresent()) {
            return Answer.unclear(line, chosen.question().get());
        }
        LineReading reading = reading(line, chosen.visit());
        if (!reading.isClear()) {
            return Answer.unclear(
                    line, reading.questions().stream().map(QuestionAnswer::of).toList());
        }
        if (stores(purpose)) {
            book.change(Message.of("log.step.sighting", line.strip()), options.who(), edit -> {
                reading.sightings().forEach(edit::add);
                return null;
            });
        }
        if (purpose == Purpose.ENTER) {
            before = Optional.of(reading.sightings().get(0));
        }
        if (purpose == Purpose.ENTER && options.dryRun()) {
            rehearsed.addAll(reading.sightings());
        }
        return book.read(view -> new Answer(
                line,
                stores(purpose),
                reading.sightings().stream()
                        .map(sighting -> SightingWords.of(sighting, view.network(), chosen.visit()))
                        .toList(),
                reading.sightings().stream()
                        .map(sighting -> SightingAnswer.of(sighting, view.network(), chosen.visit()))
                        .toList(),
                Optional.empty(),
                List.of(),
                reading.remarks()));
    }

    private LineReading reading(String line, Optional<Visit> visit) {
        return book.read(view -> {
            Places places = places(view);
            Optional<Sighting> last = before.or(() -> visit.flatMap(there -> last(view, there)));
            LineContext context = visit.isPresent()
                    ? LineContext.of(places, visit.get(), last)
                    : new LineContext(
                            places,
                            Optional.empty(),
                            options.date().orElse(options.today()),
                            Species.DIPPER,
                            options.who(),
                            last);
            return NotebookLine.read(line, options.species().map(context::of).orElse(context));
        });
    }

    /** The sighting that was made last on the visit, as far as times tell; empty if that is not certain. */
    private static Optional<Sighting> last(BookView view, Visit visit) {
        List<Sighting> all = view.sightings(SightingQuery.ALL.during(visit));
        boolean certain = all.size() == 1
                || all.stream().allMatch(sighting -> sighting.time().isPresent());
        return certain
                ? all.stream()
                        .max(Comparator.comparing(sighting -> sighting.time().orElse(LocalTime.MIN)))
                : Optional.empty();
    }

    /** The visit that a line belongs to, or what to ask. */
    private record Chosen(Optional<Visit> visit, Optional<Message> question) {}

    private Chosen chosen() {
        if (current.isPresent()) {
            return new Chosen(current, Optional.empty());
        }
        if (options.visit().isPresent()) {
            String label = options.visit().get();
            Optional<Visit> labelled = book.read(view -> view.visit(label));
            return new Chosen(
                    Optional.of(labelled.orElseThrow(() -> new WrongRequest(Message.of("log.noVisit", label)))),
                    Optional.empty());
        }
        LocalDate date = options.date().orElse(options.today());
        List<Visit> visits = book.read(view -> view.visits(date, date));
        List<Visit> open =
                visits.stream().filter(visit -> visit.end().isEmpty()).toList();
        if (visits.size() == 1 || open.size() == 1) {
            return new Chosen(Optional.of(visits.size() == 1 ? visits.get(0) : open.get(0)), Optional.empty());
        }
        Message question = visits.isEmpty()
                ? Message.of("log.noVisitOn", date)
                : Message.of(
                        "log.whichVisit",
                        date,
                        visits.stream().map(Visit::label).toList());
        return new Chosen(Optional.empty(), Optional.of(question));
    }
}

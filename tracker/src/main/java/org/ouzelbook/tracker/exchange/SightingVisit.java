package org.ouzelbook.tracker.exchange;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.exchange.cell.When;

/**
 * The visit and the day of a sighting.
 *
 * <p>A row names its visit, or its day, or both, which must then agree. A row without a visit belongs to the one visit of its day
 * and river that passed its place; where several did, their times decide, and if these do not either, the sighting stays casual.
 *
 * @param visit the visit that the row names
 * @param date the day
 * @param timeByDate the time that stands beside the day
 */
record SightingVisit(Optional<Visit> visit, Optional<LocalDate> date, Optional<LocalTime> timeByDate) {
    static SightingVisit of(RowReader row) {
        Optional<String> label = row.known(Column.VISIT);
        Optional<When.Read> when = row.when(Column.DATE);
        Optional<Visit> visit = label.flatMap(row.table().book()::visit);
        if (label.isPresent() && visit.isEmpty()) {
            row.problem(Column.VISIT, unknown(row, label.get(), when.map(When.Read::date)));
        }
        if (label.isEmpty() && row.known(Column.DATE).isEmpty() && !row.has(Finding.PROBLEM)) {
            row.problem(Column.DATE, Message.of("import.sighting.noDay"));
        }
        if (visit.isPresent()
                && when.isPresent()
                && !visit.get().date().equals(when.get().date())) {
            row.problem(
                    Column.DATE,
                    Message.of(
                            "import.sighting.otherDay",
                            visit.get().label(),
                            visit.get().date()));
        }
        return new SightingVisit(
                visit, when.map(When.Read::date).or(() -> visit.map(Visit::date)), when.flatMap(When.Read::time));
    }

    private static Message unknown(RowReader row, String label, Optional<LocalDate> date) {
        List<String> similar = row.table().book().similarVisits(label, date);
        return similar.isEmpty()
                ? Message.of("import.visit.unknown")
                : Message.of("import.visit.unknown.similar", similar);
    }

    /** {@return the river of the visit that the row names; it need not be asked for} */
    Optional<River> river(BookIndex book) {
        return visit.flatMap(walk -> book.river(book.riverName(walk.riverId())));
    }

    Optional<LocalTime> time(RowReader row) {
        return row.time(Column.TIME).or(() -> timeByDate);
    }

    /** {@return the visit that a sighting at this place belongs to} */
    Optional<UUID> visitFor(RowReader row, Place place, TableTally tally) {
        if (visit.isPresent()) {
            checkPlace(row, visit.get(), place);
            return visit.map(Visit::id);
        }
        if (row.known(Column.VISIT).isPresent()) {
            return Optional.empty();
        }
        List<Visit> passing = row.table().book().visits(place.riverId(), date.orElseThrow()).stream()
                .filter(walk -> walk.walked().isPresent() && walk.walked().get().contains(place.chainage()))
                .toList();
        List<Visit> atThatTime = passing.size() < 2 ? passing : underWay(passing, time(row));
        if (atThatTime.size() == 1) {
            if (row.isReady()) {
                tally.countAttached();
            }
            return Optional.of(atThatTime.get(0).id());
        }
        if (passing.size() > 1) {
            row.warning(
                    Column.DATE,
                    Message.of(
                            "import.sighting.severalVisits",
                            passing.stream().map(Visit::label).toList()));
        }
        return Optional.empty();
    }

    private static List<Visit> underWay(List<Visit> visits, Optional<LocalTime> time) {
        return visits.stream()
                .filter(walk -> time.isPresent()
                        && walk.start().isPresent()
                        && walk.end().isPresent()
                        && !time.get().isBefore(walk.start().get())
                        && !time.get().isAfter(walk.end().get()))
                .toList();
    }

    private static void checkPlace(RowReader row, Visit visit, Place place) {
        BookIndex book = row.table().book();
        if (!visit.riverId().equals(place.riverId())) {
            row.problem(
                    Column.VISIT,
                    Message.of(
                            "import.sighting.otherRiver",
                            visit.label(),
                            book.riverName(visit.riverId()),
                            book.riverName(place.riverId())));
        } else if (visit.walked().filter(walked -> isOutside(walked, place)).isPresent()) {
            row.warning(
                    Column.VISIT,
                    Message.of(
                            "import.sighting.outside",
                            place.chainage(),
                            visit.label(),
                            visit.walked().get()));
        }
    }

    /** Whether a place is farther from a walk than it may be wrong. */
    private static boolean isOutside(Stretch walked, Place place) {
        double metres = place.chainage().metres();
        return metres < walked.lower().metres() - place.uncertaintyMetres()
                || metres > walked.upper().metres() + place.uncertaintyMetres();
    }

    /** Settles a row that says that none were seen: its visit must have looked for the species. */
    void settleNoneSeen(RowReader row, TableTally tally) {
        Optional<Species> species = row.species();
        Optional<Visit> walk = visit.or(() -> onlyVisitOfTheDay(row));
        if (walk.isEmpty() && row.isReady()) {
            row.problem(Column.COUNT, Message.of("import.none.noVisit"));
        } else if (walk.isPresent()
                && species.isPresent()
                && !walk.get().lookedFor().contains(species.get())) {
            row.problem(
                    Column.COUNT,
                    Message.of("import.none.notLookedFor", walk.get().label(), species.get()));
        }
        if (row.isReady()) {
            tally.settle(row, Outcome.NONE_SEEN);
        } else {
            tally.leaveOut(row);
        }
    }

    private Optional<Visit> onlyVisitOfTheDay(RowReader row) {
        if (date.isEmpty() || row.known(Column.VISIT).isPresent()) {
            return Optional.empty();
        }
        Optional<River> river = RowPlace.river(row);
        List<Visit> visits = row.table().book().visits(date.get()).stream()
                .filter(walk ->
                        river.isEmpty() || walk.riverId().equals(river.get().id()))
                .toList();
        return visits.size() == 1 ? Optional.of(visits.get(0)) : Optional.empty();
    }
}

package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.store.BookView;

/**
 * A visit after a correction, with what that does to its sightings.
 *
 * @param visit the visit as it is to be
 * @param moved its sightings on its new day; none if the day stays
 * @param remarks what is allowed but unusual
 * @param refusal why it cannot be done
 */
record CorrectedVisit(Visit visit, List<Sighting> moved, List<Message> remarks, Optional<Message> refusal) {
    CorrectedVisit {
        moved = List.copyOf(moved);
        remarks = List.copyOf(remarks);
    }

    /**
     * {@return the correction}
     *
     * @param before the visit as it is
     * @param read the visit as its line reads now
     * @param seen its sightings
     * @param view the book
     */
    static CorrectedVisit of(Visit before, Visit read, List<Sighting> seen, BookView view) {
        Visit after = new Visit(
                before.id(),
                label(before, read.date(), view),
                read.riverId(),
                read.date(),
                read.start(),
                read.end(),
                read.walked(),
                read.direction(),
                read.mode(),
                read.observers(),
                read.lookedFor(),
                kept(before.level(), read.level()),
                kept(before.weather(), read.weather()),
                read.effective(),
                read.note());
        if (!after.riverId().equals(before.riverId()) && !seen.isEmpty()) {
            String river = view.network().river(before.riverId()).name();
            return new CorrectedVisit(
                    after, List.of(), List.of(), Optional.of(Message.of("correct.otherRiver", seen.size(), river)));
        }
        List<Sighting> moved = after.date().equals(before.date())
                ? List.of()
                : seen.stream().map(sighting -> on(sighting, after.date())).toList();
        long outside = seen.stream()
                .filter(sighting -> after.walked()
                        .filter(walked -> !walked.contains(sighting.place().chainage()))
                        .isPresent())
                .count();
        List<Message> remarks = outside == 0 ? List.of() : List.of(Message.of("correct.outside", outside));
        return new CorrectedVisit(after, moved, remarks, Optional.empty());
    }

    /** A label that told the day follows it; any other stays. */
    private static String label(Visit before, LocalDate day, BookView view) {
        boolean toldTheDay = before.label().matches(before.date() + "[b-z]?");
        if (!toldTheDay || day.equals(before.date())) {
            return before.label();
        }
        String label = day.toString();
        for (char letter = 'b'; view.visit(label).isPresent() && letter <= 'z'; letter++) {
            label = day.toString() + letter;
        }
        return label;
    }

    /** A line has no commas within a part; words that differ by those alone stay. */
    private static String kept(String before, String read) {
        return before.replaceAll("\\s*[,;]\\s*", " ").equals(read) ? before : read;
    }

    private static Sighting on(Sighting sighting, LocalDate day) {
        return new Sighting(
                sighting.id(),
                sighting.label(),
                sighting.visitId(),
                day,
                sighting.time(),
                sighting.place(),
                sighting.species(),
                sighting.count(),
                sighting.age(),
                sighting.sex(),
                sighting.activities(),
                sighting.breedingCode(),
                sighting.rings(),
                sighting.simultaneousWith(),
                sighting.flewTo(),
                sighting.turnedBack(),
                sighting.observer(),
                sighting.note());
    }
}

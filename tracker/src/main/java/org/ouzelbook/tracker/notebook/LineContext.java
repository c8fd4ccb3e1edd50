package org.ouzelbook.tracker.notebook;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.place.Places;

/**
 * What a notebook line may leave unsaid.
 *
 * @param places the rivers and landmarks of the book
 * @param visit the visit that the line belongs to; empty for a casual sighting
 * @param date the local date
 * @param species the bird that is meant where the line names none
 * @param observer who saw it, where the line does not say
 * @param before the sighting of the line before, which a line that starts with {@code =} was simultaneous with
 */
public record LineContext(
        Places places,
        Optional<Visit> visit,
        LocalDate date,
        Species species,
        String observer,
        Optional<Sighting> before) {

    /**
     * {@return the context of a line of this visit: its date, its observers, and the first bird that it looked for}
     *
     * @param places the rivers and landmarks of the book
     * @param visit the visit
     * @param before the sighting of the line before
     */
    public static LineContext of(Places places, Visit visit, Optional<Sighting> before) {
        Species species =
                visit.lookedFor().isEmpty() ? Species.DIPPER : visit.lookedFor().get(0);
        return new LineContext(
                places, Optional.of(visit), visit.date(), species, String.join(", ", visit.observers()), before);
    }

    /**
     * {@return this context, with another bird meant where a line names none}
     *
     * @param other the bird
     */
    public LineContext of(Species other) {
        return new LineContext(places, visit, date, other, observer, before);
    }

    /** {@return the river that a bare km means; empty if there are several and no visit says which} */
    Optional<UUID> river() {
        if (visit.isPresent()) {
            return visit.map(Visit::riverId);
        }
        return places.network().rivers().size() == 1
                ? Optional.of(places.network().rivers().get(0).id())
                : Optional.empty();
    }
}

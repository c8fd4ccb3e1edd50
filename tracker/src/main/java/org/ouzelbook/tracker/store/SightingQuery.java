package org.ouzelbook.tracker.store;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;

/**
 * Which sightings to look for: those that meet every condition given. Start from {@link #ALL} and narrow it.
 *
 * @param species of this species
 * @param from on this day or later
 * @param to on this day or earlier
 * @param riverId on this river
 * @param stretch first met on this stretch of whatever river
 * @param visitId on this visit
 */
public record SightingQuery(
        Optional<Species> species,
        Optional<LocalDate> from,
        Optional<LocalDate> to,
        Optional<UUID> riverId,
        Optional<Stretch> stretch,
        Optional<UUID> visitId) {
    /** Every sighting of the book. */
    public static final SightingQuery ALL = new SightingQuery(
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    /**
     * {@return this query, for one species only}
     *
     * @param wanted the species
     */
    public SightingQuery of(Species wanted) {
        return new SightingQuery(Optional.of(wanted), from, to, riverId, stretch, visitId);
    }

    /**
     * {@return this query, for one span of days only}
     *
     * @param first its first day
     * @param last its last day
     */
    public SightingQuery between(LocalDate first, LocalDate last) {
        return new SightingQuery(species, Optional.of(first), Optional.of(last), riverId, stretch, visitId);
    }

    /**
     * {@return this query, for one river only}
     *
     * @param river key of the river
     */
    public SightingQuery on(UUID river) {
        return new SightingQuery(species, from, to, Optional.of(river), stretch, visitId);
    }

    /**
     * {@return this query, for one stretch of a river only}
     *
     * @param river key of the river
     * @param part the stretch
     */
    public SightingQuery on(UUID river, Stretch part) {
        return new SightingQuery(species, from, to, Optional.of(river), Optional.of(part), visitId);
    }

    /**
     * {@return this query, for one visit only}
     *
     * @param visit the visit
     */
    public SightingQuery during(Visit visit) {
        return new SightingQuery(species, from, to, riverId, stretch, Optional.of(visit.id()));
    }

    String clause() {
        List<String> conditions = new ArrayList<>();
        species.ifPresent(one -> conditions.add("species = ?"));
        from.ifPresent(day -> conditions.add("seen_on >= ?"));
        to.ifPresent(day -> conditions.add("seen_on <= ?"));
        riverId.ifPresent(id -> conditions.add("river_id = ?"));
        stretch.ifPresent(part -> conditions.add("chainage_m BETWEEN ? AND ?"));
        visitId.ifPresent(id -> conditions.add("visit_id = ?"));
        return (conditions.isEmpty() ? "" : "WHERE " + String.join(" AND ", conditions) + " ")
                + "ORDER BY seen_on, seen_at NULLS LAST, chainage_m, id";
    }

    List<Object> parameters() {
        List<Object> parameters = new ArrayList<>();
        species.ifPresent(one -> parameters.add(one.scientificName()));
        from.ifPresent(parameters::add);
        to.ifPresent(parameters::add);
        riverId.ifPresent(parameters::add);
        stretch.ifPresent(part ->
                parameters.addAll(List.of(part.lower().metres(), part.upper().metres())));
        visitId.ifPresent(parameters::add);
        return parameters;
    }
}

package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Entry;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.store.BookView;

/**
 * Lets one record stand for two where a person decided that two people wrote down the same: a sighting for one bird, a visit for a
 * walk that they made together. The visit that stands covers what either walked and looked for. One spelling of an observer’s name
 * stands for the others that were decided to be the same person’s.
 */
final class CountedOnce {
    /** Between the names of those who saw a bird together. */
    private static final String TOGETHER = ", ";

    private final Map<UUID, UUID> sightings;
    private final Map<UUID, UUID> visits;

    private final Map<String, String> people;

    private CountedOnce(Map<UUID, UUID> sightings, Map<UUID, UUID> visits, Map<String, String> people) {
        this.sightings = sightings;
        this.visits = visits;
        this.people = people;
    }

    static CountedOnce of(BookView view) {
        return new CountedOnce(view.sameSightings(), view.sameVisits(), view.samePeople());
    }

    /** {@return the record with the one spelling of its observers’ names} */
    Entry spelt(Entry entry) {
        if (entry instanceof Visit visit) {
            return spelt(visit);
        }
        return entry instanceof Sighting sighting ? spelt(sighting) : entry;
    }

    private Visit spelt(Visit visit) {
        List<String> names =
                visit.observers().stream().map(this::spelt).distinct().toList();
        return names.equals(visit.observers()) ? visit : visit.observedBy(names);
    }

    private Sighting spelt(Sighting sighting) {
        String written = sighting.observer();
        String name = people.containsKey(written)
                ? spelt(written)
                : Stream.of(written.split(TOGETHER, -1))
                        .map(this::spelt)
                        .distinct()
                        .collect(Collectors.joining(TOGETHER));
        return name.equals(written) ? sighting : sighting.observedBy(name);
    }

    private String spelt(String name) {
        return people.getOrDefault(name, name);
    }

    List<Visit> visits(List<Visit> all) {
        List<Visit> once =
                people.isEmpty() ? all : all.stream().map(this::spelt).toList();
        return visits.isEmpty() ? once : standing(once);
    }

    private List<Visit> standing(List<Visit> all) {
        Map<UUID, Visit> standing = new LinkedHashMap<>();
        all.stream().filter(visit -> !visits.containsKey(visit.id())).forEach(visit -> standing.put(visit.id(), visit));
        all.stream()
                .filter(visit -> visits.containsKey(visit.id()))
                .forEach(visit -> standing.computeIfPresent(visits.get(visit.id()), (id, one) -> both(one, visit)));
        return List.copyOf(standing.values());
    }

    private static Visit both(Visit one, Visit other) {
        Set<String> observers = new LinkedHashSet<>(one.observers());
        observers.addAll(other.observers());
        Set<Species> lookedFor = new LinkedHashSet<>(one.lookedFor());
        lookedFor.addAll(other.lookedFor());
        return new Visit(
                one.id(),
                one.label(),
                one.riverId(),
                one.date(),
                one.start(),
                one.end(),
                one.walked().isPresent() && other.walked().isPresent()
                        ? Optional.of(hull(one.walked().get(), other.walked().get()))
                        : one.walked().or(other::walked),
                one.direction(),
                one.mode(),
                new ArrayList<>(observers),
                new ArrayList<>(lookedFor),
                one.level(),
                one.weather(),
                one.effective() || other.effective(),
                one.note());
    }

    private static Stretch hull(Stretch one, Stretch other) {
        return new Stretch(
                new Chainage(Math.min(one.lower().metres(), other.lower().metres())),
                new Chainage(Math.max(one.upper().metres(), other.upper().metres())));
    }

    List<Sighting> sightings(List<Sighting> all) {
        List<Sighting> once =
                people.isEmpty() ? all : all.stream().map(this::spelt).toList();
        return sightings.isEmpty() && visits.isEmpty() ? once : standingSightings(once);
    }

    private List<Sighting> standingSightings(List<Sighting> all) {
        Map<UUID, Set<UUID>> links = new HashMap<>();
        all.forEach(sighting -> links.computeIfAbsent(stand(sighting.id()), id -> new LinkedHashSet<>())
                .addAll(sighting.simultaneousWith().stream()
                        .map(this::stand)
                        .filter(id -> !id.equals(stand(sighting.id())))
                        .collect(Collectors.toSet())));
        return all.stream()
                .filter(sighting -> !sightings.containsKey(sighting.id()))
                .map(sighting -> standing(sighting, links.getOrDefault(sighting.id(), Set.of())))
                .toList();
    }

    private UUID stand(UUID id) {
        return sightings.getOrDefault(id, id);
    }

    private Sighting standing(Sighting one, Set<UUID> simultaneousWith) {
        return new Sighting(
                one.id(),
                one.label(),
                one.visitId().map(id -> visits.getOrDefault(id, id)),
                one.date(),
                one.time(),
                one.place(),
                one.species(),
                one.count(),
                one.age(),
                one.sex(),
                one.activities(),
                one.breedingCode(),
                one.rings(),
                simultaneousWith,
                one.flewTo(),
                one.turnedBack(),
                one.observer(),
                one.note());
    }
}

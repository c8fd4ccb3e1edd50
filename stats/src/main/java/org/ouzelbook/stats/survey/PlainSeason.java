package org.ouzelbook.stats.survey;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;

/**
 * One season on one river as plain numbers, for those who have no book: a table of another program, or a simulation. Every
 * sighting is taken as of an adult, every visit as effective.
 *
 * @param river the river's name; seasons of one name are of one river
 * @param season the year
 * @param visits the visits
 * @param sightings the sightings
 */
public record PlainSeason(String river, int season, List<PlainVisit> visits, List<PlainSighting> sightings) {
    private static final double PLACE_METRES = 20;

    /** Copies the lists. */
    public PlainSeason {
        visits = List.copyOf(visits);
        sightings = List.copyOf(sightings);
    }

    /**
     * Where a river joins another.
     *
     * @param river name of the receiving river
     * @param metres where, from that river's mouth; not negative
     */
    public record Mouth(String river, double metres) {}

    /**
     * A visit.
     *
     * @param label its name, unique in its season and river
     * @param date the day
     * @param walked what it covered
     */
    public record PlainVisit(String label, LocalDate date, Stretch walked) {}

    /**
     * A sighting.
     *
     * @param label its name, unique in its season and river
     * @param visit the name of its visit
     * @param metres where, from the mouth; not negative
     * @param simultaneousWith names of sightings that were other birds at the same time; one direction is enough
     * @param turnedBackAtMetres where the bird, driven along, turned back
     */
    public record PlainSighting(
            String label,
            String visit,
            double metres,
            Set<String> simultaneousWith,
            OptionalDouble turnedBackAtMetres) {
        /** Copies the set. */
        public PlainSighting {
            simultaneousWith = Set.copyOf(simultaneousWith);
        }
    }

    /**
     * {@return the records that an analysis reads}
     *
     * @param seasons some seasons, of one river or several; rivers are not joined to each other
     * @param species what the birds were
     * @throws IllegalArgumentException if a sighting names a visit or a sighting that is not there
     */
    public static SurveyRecords records(List<PlainSeason> seasons, Species species) {
        return records(seasons, Map.of(), species);
    }

    /**
     * {@return the records that an analysis reads, of rivers of which some join others}
     *
     * @param seasons some seasons
     * @param mouths where rivers join others, by name of the one that does
     * @param species what the birds were
     * @throws IllegalArgumentException if a sighting names a visit or a sighting that is not there, or a river joins one that is
     *     not there, or rivers join in a circle
     */
    public static SurveyRecords records(List<PlainSeason> seasons, Map<String, Mouth> mouths, Species species) {
        Map<String, River> rivers = new LinkedHashMap<>();
        List<Visit> visits = new ArrayList<>();
        List<Sighting> sightings = new ArrayList<>();
        for (PlainSeason season : seasons) {
            River river = rivers.computeIfAbsent(season.river, name -> named(name, mouths));
            Map<String, Visit> byLabel = new LinkedHashMap<>();
            for (PlainVisit visit : season.visits) {
                byLabel.put(visit.label, season.visit(visit, river, species));
            }
            visits.addAll(byLabel.values());
            Map<String, Set<UUID>> together = season.together();
            for (PlainSighting sighting : season.sightings) {
                Visit visit = byLabel.get(sighting.visit);
                if (visit == null) {
                    throw new IllegalArgumentException(sighting.label + " names no visit: " + sighting.visit);
                }
                sightings.add(
                        season.sighting(sighting, visit, species, together.getOrDefault(sighting.label, Set.of())));
            }
        }
        return new SurveyRecords(
                RiverNetwork.of(List.copyOf(rivers.values()), List.of()),
                List.of(),
                List.of(),
                visits,
                sightings,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    private static River named(String name, Map<String, Mouth> mouths) {
        return new River(
                riverKey(name),
                name,
                Optional.ofNullable(mouths.get(name))
                        .map(mouth -> new River.Confluence(riverKey(mouth.river), new Chainage(mouth.metres))));
    }

    private static UUID riverKey(String name) {
        return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
    }

    private UUID key(String kind, String label) {
        return UUID.nameUUIDFromBytes(
                String.join("\n", river, String.valueOf(season), kind, label).getBytes(StandardCharsets.UTF_8));
    }

    private Visit visit(PlainVisit visit, River on, Species species) {
        return new Visit(
                key("visit", visit.label),
                visit.label,
                on.id(),
                visit.date,
                Optional.empty(),
                Optional.empty(),
                Optional.of(visit.walked),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                List.of(species),
                "",
                "",
                true,
                "");
    }

    /** Links in both directions. */
    private Map<String, Set<UUID>> together() {
        Set<String> labels = sightings.stream().map(PlainSighting::label).collect(Collectors.toSet());
        Map<String, Set<UUID>> together = new LinkedHashMap<>();
        for (PlainSighting sighting : sightings) {
            for (String other : sighting.simultaneousWith) {
                if (!labels.contains(other)) {
                    throw new IllegalArgumentException(sighting.label + " names no sighting: " + other);
                }
                link(together, sighting.label, other);
                link(together, other, sighting.label);
            }
        }
        return together;
    }

    private void link(Map<String, Set<UUID>> together, String one, String other) {
        together.computeIfAbsent(one, label -> new HashSet<>()).add(key("sighting", other));
    }

    private Sighting sighting(PlainSighting sighting, Visit visit, Species species, Set<UUID> others) {
        return new Sighting(
                key("sighting", sighting.label),
                sighting.label,
                Optional.of(visit.id()),
                visit.date(),
                Optional.empty(),
                new Place(visit.riverId(), new Chainage(sighting.metres), Bank.UNKNOWN, PLACE_METRES, 1),
                species,
                1,
                Age.ADULT,
                Sex.UNKNOWN,
                Set.of(),
                Optional.empty(),
                "",
                others,
                sighting.turnedBackAtMetres.isPresent()
                        ? Optional.of(new Chainage(sighting.turnedBackAtMetres.getAsDouble()))
                        : Optional.empty(),
                sighting.turnedBackAtMetres.isPresent(),
                "",
                "");
    }
}

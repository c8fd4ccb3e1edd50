package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.rings.RingReading;
import org.ouzelbook.tracker.rings.RingRegister;

/**
 * The life of one ringed bird along the river. Private, as everything about rings.
 *
 * @param waters the rivers
 * @param landmarks known places along them
 * @param bird the bird
 * @param readings the sightings whose rings were read so that they fit it, by date
 * @param maps the territories of its species, by season; one or more
 */
public record BirdScene(
        Waters waters, List<Landmark> landmarks, RingedBird bird, List<Reading> readings, List<TerritoryMap> maps) {
    /**
     * Copies the lists.
     *
     * @throws IllegalArgumentException if there is no map
     */
    public BirdScene {
        landmarks = List.copyOf(landmarks);
        readings = List.copyOf(readings);
        maps = maps.stream()
                .sorted(Comparator.comparingInt(TerritoryMap::season))
                .toList();
        if (maps.isEmpty()) {
            throw new IllegalArgumentException("A life needs a season");
        }
    }

    /**
     * A sighting whose rings fit the bird.
     *
     * @param sighting the sighting
     * @param certain whether no other bird fits, and everything was read
     */
    public record Reading(Sighting sighting, boolean certain) {}

    /**
     * {@return the life of a bird}
     *
     * @param records the records of the book
     * @param bird the bird
     * @param maps the territories of its species, by season
     */
    public static BirdScene of(SurveyRecords records, RingedBird bird, List<TerritoryMap> maps) {
        RingRegister register = RingRegister.of(records.ringedBirds());
        List<Reading> readings = new ArrayList<>();
        records.sightings().stream()
                .filter(sighting -> !sighting.rings().isBlank())
                .sorted(Comparator.comparing(Sighting::date))
                .forEach(sighting -> reading(register, bird, sighting).ifPresent(readings::add));
        return new BirdScene(Waters.of(records), records.landmarks(), bird, readings, maps);
    }

    private static Optional<Reading> reading(RingRegister register, RingedBird bird, Sighting sighting) {
        return RingReading.read(sighting.rings()).flatMap(read -> {
            List<RingedBird> fitting = register.candidates(read, sighting.date());
            return fitting.contains(bird)
                    ? Optional.of(new Reading(sighting, fitting.size() == 1 && read.isCertain()))
                    : Optional.empty();
        });
    }

    /**
     * {@return the one bird that a sighting's rings fit; empty where they fit none or several}
     *
     * @param records the records of the book
     * @param sighting a sighting
     */
    public static Optional<RingedBird> identified(SurveyRecords records, Sighting sighting) {
        return RingReading.read(sighting.rings())
                .map(read -> RingRegister.of(records.ringedBirds()).candidates(read, sighting.date()))
                .filter(fitting -> fitting.size() == 1)
                .map(fitting -> fitting.get(0));
    }

    /**
     * {@return the bird whose rings were read most often; empty where none was ever read for certain}
     *
     * @param records the records of the book
     */
    public static Optional<RingedBird> mostRead(SurveyRecords records) {
        RingRegister register = RingRegister.of(records.ringedBirds());
        Map<RingedBird, Integer> times = new LinkedHashMap<>();
        for (Sighting sighting : records.sightings()) {
            if (!sighting.rings().isBlank()) {
                RingReading.read(sighting.rings())
                        .map(read -> register.candidates(read, sighting.date()))
                        .filter(fitting -> fitting.size() == 1)
                        .ifPresent(fitting -> times.merge(fitting.get(0), 1, Integer::sum));
            }
        }
        return times.entrySet().stream().max(Map.Entry.comparingByValue()).map(Map.Entry::getKey);
    }

    /**
     * {@return the same life on other water}
     *
     * @param others the rivers, some of them folded away
     */
    public BirdScene on(Waters others) {
        return new BirdScene(others, landmarks, bird, readings, maps);
    }
}

package org.ouzelbook.stats.survey;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.ouzelbook.stats.survey.RingSighting.Outcome;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Species;

/**
 * Of which species each ringed bird is: that of the sightings in which its rings were completely read. A bird that was never read so
 * is of the species of all the others, if these are of one.
 *
 * @param byBird the species that each bird was read as
 */
record RingedSpecies(Map<RingedBird, Set<Species>> byBird) {
    /**
     * {@return the species of some birds}
     *
     * @param birds the birds
     * @param readings sightings of every species with rings
     */
    static RingedSpecies of(List<RingedBird> birds, List<RingSighting> readings) {
        Map<RingedBird, Set<Species>> byBird = new LinkedHashMap<>();
        birds.forEach(bird -> byBird.put(bird, new HashSet<>()));
        readings.stream()
                .filter(reading -> reading.outcome() == Outcome.IDENTIFIED)
                .forEach(reading -> byBird.computeIfAbsent(reading.candidates().get(0), bird -> new HashSet<>())
                        .add(reading.sighting().species()));
        return new RingedSpecies(byBird);
    }

    /** {@return the birds of a species, without those read as another besides} */
    List<RingedBird> of(Species species) {
        boolean only = all().isEmpty() || all().equals(Set.of(species));
        return birds(read -> read.equals(Set.of(species)) || (read.isEmpty() && only));
    }

    /** {@return the birds read as this species and as another: one of the readings is wrong} */
    List<RingedBird> readAsAnotherToo(Species species) {
        return birds(read -> read.contains(species) && read.size() > 1);
    }

    /** {@return the birds that may be of this species or of another, since nobody ever read them} */
    List<RingedBird> unknown(Species species) {
        return all().size() > 1 && all().contains(species) ? birds(Set::isEmpty) : List.of();
    }

    /** {@return what a bird was read as, in English and in order} */
    List<String> names(RingedBird bird) {
        return byBird.getOrDefault(bird, Set.of()).stream()
                .map(Species::englishName)
                .collect(Collectors.toCollection(TreeSet::new))
                .stream()
                .toList();
    }

    private Set<Species> all() {
        return byBird.values().stream().flatMap(Set::stream).collect(Collectors.toSet());
    }

    private List<RingedBird> birds(Predicate<Set<Species>> readAs) {
        return byBird.entrySet().stream()
                .filter(bird -> readAs.test(bird.getValue()))
                .map(Map.Entry::getKey)
                .toList();
    }
}

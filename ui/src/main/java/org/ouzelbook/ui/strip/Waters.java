package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.river.RiverNetwork;

/**
 * The waters that a strip shows, in the order of the network. Water that the book never visited is left out, or every row
 * would be hatched to the source.
 *
 * @param list the waters that are unfolded
 * @param folded the tributaries that are folded away: only their confluences show
 */
public record Waters(List<Water> list, List<Water> folded) {
    /** Copies the lists. */
    public Waters {
        list = List.copyOf(list);
        folded = List.copyOf(folded);
    }

    /**
     * Makes waters of which none is folded away.
     *
     * @param list the waters
     */
    public Waters(List<Water> list) {
        this(list, List.of());
    }

    /**
     * {@return the same waters with some tributaries folded away, and with them what flows into them}
     *
     * @param rivers keys of the tributaries
     */
    public Waters folding(Set<UUID> rivers) {
        Set<UUID> away = new HashSet<>();
        List<Water> every = all().toList();
        for (Water water : every) {
            boolean receivingAway = water.river()
                    .mouth()
                    .filter(mouth -> away.contains(mouth.riverId()))
                    .isPresent();
            if (receivingAway
                    || (water.river().mouth().isPresent()
                            && rivers.contains(water.river().id()))) {
                away.add(water.river().id());
            }
        }
        return new Waters(
                every.stream()
                        .filter(water -> !away.contains(water.river().id()))
                        .toList(),
                every.stream()
                        .filter(water -> away.contains(water.river().id()))
                        .toList());
    }

    private Stream<Water> all() {
        return Stream.concat(list.stream(), folded.stream());
    }

    /** {@return every river that may join another, folded away or not} */
    List<River> rivers() {
        return all().map(Water::river).toList();
    }

    /** {@return whether a river is folded away} */
    boolean isFolded(UUID riverId) {
        return folded.stream().anyMatch(water -> water.river().id().equals(riverId));
    }

    /**
     * {@return the waters of a book}
     *
     * @param records its records, of all seasons and species
     */
    public static Waters of(SurveyRecords records) {
        List<Water> list = new ArrayList<>();
        for (River river : records.rivers().rivers()) {
            extent(records, river.id())
                    .ifPresent(extent -> list.add(new Water(river, extent, mouthMetres(records.rivers(), river))));
        }
        return new Waters(list);
    }

    private static Optional<Stretch> extent(SurveyRecords records, UUID riverId) {
        Stream<Stretch> visited = records.visits().stream()
                .filter(visit -> visit.riverId().equals(riverId))
                .flatMap(visit -> visit.walked().stream());
        Stream<Stretch> reaches = records.reaches().stream()
                .filter(reach -> reach.riverId().equals(riverId))
                .map(reach -> reach.stretch());
        Stream<Stretch> seen = records.sightings().stream()
                .filter(sighting -> sighting.place().riverId().equals(riverId))
                .map(sighting -> point(sighting.place().chainage()));
        Stream<Stretch> marked = records.landmarks().stream()
                .filter(landmark -> landmark.place().riverId().equals(riverId))
                .map(landmark -> point(landmark.place().chainage()));
        return hull(Stream.concat(Stream.concat(visited, reaches), seen))
                .or(() -> hull(marked))
                .filter(extent -> extent.length() > 0);
    }

    private static Stretch point(Chainage chainage) {
        return new Stretch(chainage, chainage);
    }

    private static Optional<Stretch> hull(Stream<Stretch> stretches) {
        return stretches.reduce((one, other) -> new Stretch(
                one.lower().compareTo(other.lower()) <= 0 ? one.lower() : other.lower(),
                one.upper().compareTo(other.upper()) >= 0 ? one.upper() : other.upper()));
    }

    private static double mouthMetres(RiverNetwork network, River river) {
        return river.mouth()
                .map(mouth -> mouthMetres(network, network.river(mouth.riverId()))
                        + mouth.chainage().metres())
                .orElse(0.0);
    }

    /** {@return whether there is no water to show} */
    public boolean isEmpty() {
        return list.isEmpty();
    }

    /**
     * {@return the water of a river; empty if it is not shown}
     *
     * @param riverId key of the river
     */
    public Optional<Water> of(UUID riverId) {
        return list.stream().filter(water -> water.river().id().equals(riverId)).findFirst();
    }

    /** {@return metres along the water to the lowest place; 0 where nothing is shown} */
    public double from() {
        return all().mapToDouble(Water::from).min().orElse(0);
    }

    /** {@return metres along the water to the highest place; a token 1 km where nothing is shown} */
    public double to() {
        return all().mapToDouble(Water::to).max().orElse(1000);
    }
}

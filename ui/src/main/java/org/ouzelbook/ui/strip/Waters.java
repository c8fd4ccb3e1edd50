package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
 * @param list the waters
 */
public record Waters(List<Water> list) {
    /** Copies the list. */
    public Waters {
        list = List.copyOf(list);
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
        return list.stream().mapToDouble(Water::from).min().orElse(0);
    }

    /** {@return metres along the water to the highest place; a token 1 km where nothing is shown} */
    public double to() {
        return list.stream().mapToDouble(Water::to).max().orElse(1000);
    }
}

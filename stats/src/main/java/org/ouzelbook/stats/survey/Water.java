package org.ouzelbook.stats.survey;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * The water that is asked about: all rivers, one river, or a stretch of one.
 *
 * <p>Territories are always made from all the records of the rivers; the water asked about only says which of them are
 * counted. A territory across two reaches is counted once, where its middle registration on surveyed water lies.
 *
 * @param name name of the reach; empty if it has none
 * @param riverId the one river; empty for all
 * @param stretch the stretch of that river; empty for all of it
 * @param upperEndIncluded whether a bird exactly at the upper end belongs here: not if another reach begins there
 */
public record Water(
        Optional<String> name, Optional<UUID> riverId, Optional<Stretch> stretch, boolean upperEndIncluded) {
    /** All rivers of the book. */
    public static final Water ALL = new Water(Optional.empty(), Optional.empty(), Optional.empty(), true);

    /**
     * Checks that a stretch has its river.
     *
     * @throws IllegalArgumentException if there is a stretch and no river
     */
    public Water {
        if (stretch.isPresent() && riverId.isEmpty()) {
            throw new IllegalArgumentException("A stretch needs its river");
        }
    }

    /**
     * {@return one river}
     *
     * @param riverId key of the river
     */
    public static Water ofRiver(UUID riverId) {
        return new Water(Optional.empty(), Optional.of(riverId), Optional.empty(), true);
    }

    /**
     * {@return a stretch of one river, both ends included}
     *
     * @param riverId key of the river
     * @param stretch the stretch
     */
    public static Water ofStretch(UUID riverId, Stretch stretch) {
        return new Water(Optional.empty(), Optional.of(riverId), Optional.of(stretch), true);
    }

    /**
     * {@return a reach; a bird at the point where another reach begins belongs to that one}
     *
     * @param reach the reach
     * @param reaches every reach of the book
     */
    public static Water ofReach(Reach reach, List<Reach> reaches) {
        boolean open = reaches.stream()
                .anyMatch(other -> other.riverId().equals(reach.riverId())
                        && other.stretch().lower().equals(reach.stretch().upper()));
        return new Water(Optional.of(reach.name()), Optional.of(reach.riverId()), Optional.of(reach.stretch()), !open);
    }

    boolean includes(UUID river) {
        return riverId.isEmpty() || riverId.get().equals(river);
    }

    boolean contains(UUID river, Chainage point) {
        if (!includes(river)) {
            return false;
        }
        return stretch.map(asked -> asked.contains(point) && (upperEndIncluded || !point.equals(asked.upper())))
                .orElse(true);
    }

    /** The part of these stretches of a river that lies in this water. */
    List<Stretch> partOf(UUID river, List<Stretch> stretches) {
        if (!includes(river)) {
            return List.of();
        }
        return stretch.map(asked -> stretches.stream()
                        .flatMap(one -> one.intersection(asked).stream())
                        .filter(part -> part.length() > 0)
                        .toList())
                .orElse(stretches);
    }
}

package org.ouzelbook.stats.simulate.fieldwork;

import java.util.List;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * A stretch that is walked on each round of a season.
 *
 * @param letter what tells it from the other walks of a round
 * @param riverId the river
 * @param stretch from where to where
 * @param direction which way
 * @param observers who walks it, together; at least one
 * @param daysAfter days after the first day of the round
 */
public record Walk(
        String letter, UUID riverId, Stretch stretch, Direction direction, List<Observer> observers, int daysAfter) {
    /**
     * Copies the list.
     *
     * @throws IllegalArgumentException if nobody walks
     */
    public Walk {
        observers = List.copyOf(observers);
        if (observers.isEmpty()) {
            throw new IllegalArgumentException("A walk needs an observer");
        }
    }

    /** The skill of the best of those who walk together. */
    double skill() {
        return observers.stream().mapToDouble(Observer::skill).max().orElseThrow();
    }
}

package org.ouzelbook.ui.app;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.survey.ModelCount;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * What the model makes of one season, as a drawing needs it: how surely each territory stands, where its ends lie, and where a
 * pair that no visit found would fit.
 *
 * @param season the calendar year
 * @param rivers the rivers that it could count
 */
public record ModelShading(int season, List<OnRiver> rivers) {
    /** Copies the list. */
    public ModelShading {
        rivers = List.copyOf(rivers);
    }

    /**
     * {@return what the model makes of one river; empty where it could not count}
     *
     * @param riverId key of the river
     */
    public Optional<OnRiver> of(UUID riverId) {
        return rivers.stream().filter(river -> river.riverId().equals(riverId)).findFirst();
    }

    /**
     * One river.
     *
     * @param riverId its key
     * @param level probability that a number or an end lies between its limits
     * @param expected the expected number of territories
     * @param lower lower limit of the number
     * @param upper upper limit of the number
     * @param grounds each territory by rule, by its letter
     * @param rooms where a pair that no visit found would fit
     */
    public record OnRiver(
            UUID riverId,
            double level,
            double expected,
            int lower,
            int upper,
            Map<String, Ground> grounds,
            List<ModelCount.Room> rooms) {
        /** Copies the collections. */
        public OnRiver {
            grounds = Map.copyOf(grounds);
            rooms = List.copyOf(rooms);
        }

        /**
         * {@return what the model makes of a territory by rule}
         *
         * @param letter its letter
         */
        public Optional<Ground> ground(String letter) {
            return Optional.ofNullable(grounds.get(letter));
        }
    }

    /**
     * A territory by rule, as the model sees it.
     *
     * @param probability probability that there is a territory at its centre
     * @param lowerEnd the water on which its lower end lies
     * @param upperEnd the water on which its upper end lies
     */
    public record Ground(double probability, Stretch lowerEnd, Stretch upperEnd) {}
}

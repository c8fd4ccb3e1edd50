package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ouzelbook.tracker.domain.Message;

/**
 * The count of one river in one season by the model. Its names are those that scripts rely on.
 *
 * @param estimate the expected number, territories that no visit found included
 * @param lower lower limit
 * @param upper upper limit
 * @param level probability that the number lies between the limits, at least
 * @param distribution the probability of each number; those below 0.0005 are left out
 * @param unseen the expected number of territories that no visit found
 * @param mostProbable the territories of the most probable map whose middles lie on the river, going upstream
 * @param roomForUnseen where a pair that no visit found would fit
 * @param foundByVisit what each effective visit found of the most probable map
 * @param why why there is no number
 */
public record ByModel(
        OptionalDouble estimate,
        OptionalDouble lower,
        OptionalDouble upper,
        double level,
        Optional<Map<String, Double>> distribution,
        OptionalDouble unseen,
        List<Ground> mostProbable,
        List<Room> roomForUnseen,
        List<Found> foundByVisit,
        Optional<Message> why) {
    /** Copies the lists. */
    public ByModel {
        mostProbable = List.copyOf(mostProbable);
        roomForUnseen = List.copyOf(roomForUnseen);
        foundByVisit = List.copyOf(foundByVisit);
    }

    static ByModel none(double level, Message why) {
        return new ByModel(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                level,
                Optional.empty(),
                OptionalDouble.empty(),
                List.of(),
                List.of(),
                List.of(),
                Optional.of(why));
    }

    /**
     * A territory of a map.
     *
     * @param fromKm its lower end
     * @param toKm its upper end
     * @param arm its water on another river, where it reaches through a confluence
     */
    public record Ground(double fromKm, double toKm, Optional<Arm> arm) {}

    /**
     * The part of a territory on another river.
     *
     * @param river name of that river
     * @param fromKm its lower end there
     * @param toKm its upper end there
     */
    public record Arm(String river, double fromKm, double toKm) {}

    /**
     * Water where a pair that no visit found would fit.
     *
     * @param fromKm its lower end
     * @param toKm its upper end
     * @param probability the highest probability, along it, that such a territory holds a place
     */
    public record Room(double fromKm, double toKm, double probability) {}

    /**
     * What one visit found.
     *
     * @param date the day
     * @param passed territories of which it covered half or more
     * @param found those in which it met a bird
     */
    public record Found(LocalDate date, int passed, int found) {}

    /**
     * Where a territory ends.
     *
     * @param lowerKm lower limit
     * @param middleKm the place that it lies above as probably as below
     * @param upperKm upper limit
     */
    public record End(double lowerKm, double middleKm, double upperKm) {}
}

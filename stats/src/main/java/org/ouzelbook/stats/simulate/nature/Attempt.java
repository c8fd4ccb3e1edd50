package org.ouzelbook.stats.simulate.nature;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * One nest of a pair from its first egg to its end, as it truly went.
 *
 * @param number 1 for the pair's first of the season
 * @param firstEgg date of the first egg
 * @param clutch eggs, one a day
 * @param hatching date when they hatched or would have
 * @param fledging date when the young left or would have
 * @param independence date until which young out of the nest are led
 * @param hatched eggs that hatched, or would have
 * @param lost date and cause of the loss; empty for a success
 * @param young the young that left the nest; none after a loss
 */
public record Attempt(
        int number,
        LocalDate firstEgg,
        int clutch,
        LocalDate hatching,
        LocalDate fledging,
        LocalDate independence,
        int hatched,
        Optional<Loss> lost,
        List<Bird> young) {
    /** Copies the list. */
    public Attempt {
        young = List.copyOf(young);
    }

    /**
     * The end of a nest that failed.
     *
     * @param day the day
     * @param cause what took it
     */
    public record Loss(LocalDate day, Cause cause) {}

    /** What took a nest. */
    public enum Cause {
        /** A spate. */
        FLOOD,
        /** A hunter, a rat, a collapse: nobody saw. */
        OTHER
    }

    /** Where an attempt stands on a day. */
    public enum Phase {
        /** Not begun. */
        AHEAD,
        /** Eggs are being laid. */
        LAYING,
        /** Eggs are being warmed. */
        INCUBATION,
        /** Young in the nest. */
        NESTLINGS,
        /** Young out of the nest, still led. */
        LED_YOUNG,
        /** Over, well or badly. */
        OVER
    }

    /**
     * {@return where the attempt stands}
     *
     * @param day a date
     */
    public Phase on(LocalDate day) {
        if (day.isBefore(firstEgg)) {
            return Phase.AHEAD;
        }
        if (lost.isPresent() && !day.isBefore(lost.get().day())) {
            return Phase.OVER;
        }
        if (day.isBefore(firstEgg.plusDays(clutch))) {
            return Phase.LAYING;
        }
        if (day.isBefore(hatching)) {
            return Phase.INCUBATION;
        }
        if (day.isBefore(fledging)) {
            return Phase.NESTLINGS;
        }
        return day.isBefore(independence) ? Phase.LED_YOUNG : Phase.OVER;
    }

    /** {@return the day on which the nest was left or lost} */
    public LocalDate end() {
        return lost.map(Loss::day).orElse(fledging);
    }
}

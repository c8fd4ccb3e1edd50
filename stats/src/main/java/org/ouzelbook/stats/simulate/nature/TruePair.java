package org.ouzelbook.stats.simulate.nature;

import java.util.List;
import org.ouzelbook.tracker.domain.Species;

/**
 * A pair and its territory in one season, as it truly was.
 *
 * @param species the species
 * @param season the calendar year
 * @param site where it nests
 * @param grounds its water: the piece with the nest first, then what it holds in another arm of a confluence
 * @param female the female
 * @param male the male
 * @param attempts its nests, by date
 */
public record TruePair(
        Species species,
        int season,
        NestingSite site,
        List<Ground> grounds,
        Bird female,
        Bird male,
        List<Attempt> attempts) {
    /**
     * Copies the lists.
     *
     * @throws IllegalArgumentException if the pair holds no water
     */
    public TruePair {
        grounds = List.copyOf(grounds);
        attempts = List.copyOf(attempts);
        if (grounds.isEmpty()) {
            throw new IllegalArgumentException("A pair holds at least one piece of water");
        }
    }

    /** {@return the piece of water with the nest} */
    public Ground home() {
        return grounds.get(0);
    }

    /** {@return the young that left its nests} */
    public List<Bird> young() {
        return attempts.stream().flatMap(attempt -> attempt.young().stream()).toList();
    }
}

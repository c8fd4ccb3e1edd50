package org.ouzelbook.stats.simulate.fieldwork;

import java.time.LocalDate;
import java.util.List;

/**
 * What was planned for one season, and how often plans failed.
 *
 * @param season the calendar year
 * @param rounds first day of each round, in order
 * @param walks what is walked on each round
 * @param missed probability that a walk is missed
 * @param partial probability that a walk is broken off
 * @param poor probability that a walk is made in spate or fog and finds little
 */
public record FieldSeason(
        int season, List<LocalDate> rounds, List<Walk> walks, double missed, double partial, double poor) {
    /** Copies the lists. */
    public FieldSeason {
        rounds = List.copyOf(rounds);
        walks = List.copyOf(walks);
    }
}

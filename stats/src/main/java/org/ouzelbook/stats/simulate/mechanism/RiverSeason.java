package org.ouzelbook.stats.simulate.mechanism;

import java.util.List;

/**
 * One season on one river: what was walked, what was written down, and what was true.
 *
 * @param riverMetres length of the river
 * @param walks the visits, by day
 * @param registrations what was met, by visit
 * @param together which of them were seen at once
 * @param grounds the true territories with water on this river, going up
 */
public record RiverSeason(
        double riverMetres,
        List<Walk> walks,
        List<Registration> registrations,
        List<Together> together,
        List<Ground> grounds) {
    /** Copies the lists. */
    public RiverSeason {
        walks = List.copyOf(walks);
        registrations = List.copyOf(registrations);
        together = List.copyOf(together);
        grounds = List.copyOf(grounds);
    }

    /** {@return how many territories there truly were: those whose middle lies on the river} */
    public int trueCount() {
        return (int) grounds.stream()
                .filter(ground -> ground.middle() >= 0 && ground.middle() <= riverMetres)
                .count();
    }
}

package org.ouzelbook.stats.estimator.segmentation;

import java.util.List;

/**
 * Something met at one place on a line, on one day or on several.
 *
 * @param position where, in metres along the line; finite
 * @param uncertainty the point may lie this far to either side of a wall's position, in metres; not negative
 * @param days the days on which it was met, as day numbers of any calendar; one or more
 * @param decisive whether it makes a cluster acceptable alone
 */
public record LinePoint(double position, double uncertainty, List<Integer> days, boolean decisive) {
    /**
     * Copies the days and checks the numbers.
     *
     * @throws IllegalArgumentException if the position is not finite, the uncertainty negative, or there is no day
     */
    public LinePoint {
        days = List.copyOf(days);
        if (!Double.isFinite(position)) {
            throw new IllegalArgumentException("A point needs a finite position, but had " + position);
        }
        if (!(uncertainty >= 0)) {
            throw new IllegalArgumentException("Uncertainty cannot be negative, but was " + uncertainty);
        }
        if (days.isEmpty()) {
            throw new IllegalArgumentException("A point needs a day");
        }
    }
}

package org.ouzelbook.stats.estimator.segmentation;

/**
 * Two points of a line, by their places in its list.
 *
 * @param lower place of the one that comes first; not negative
 * @param upper place of the other; above {@code lower}
 */
public record PointPair(int lower, int upper) {
    /**
     * Checks the order.
     *
     * @throws IllegalArgumentException if {@code lower} is negative or not below {@code upper}
     */
    public PointPair {
        if (lower < 0 || lower >= upper) {
            throw new IllegalArgumentException("A pair is two places in order, but was " + lower + " and " + upper);
        }
    }

    /**
     * {@return the pair of these two, given in either order}
     *
     * @param one place of one point
     * @param other place of the other
     */
    public static PointPair of(int one, int other) {
        return new PointPair(Math.min(one, other), Math.max(one, other));
    }
}

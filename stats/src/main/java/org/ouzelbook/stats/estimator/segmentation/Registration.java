package org.ouzelbook.stats.estimator.segmentation;

/**
 * A bird met at one place on a line.
 *
 * @param position where, in metres along the line; finite
 * @param visit place of the visit in the line's list, or {@link #CASUAL}
 */
public record Registration(double position, int visit) {
    /** The visit of a bird that was met on none: it tells where birds were, but nothing of where they were looked for. */
    public static final int CASUAL = -1;

    /**
     * Checks the position.
     *
     * @throws IllegalArgumentException if the position is not finite, or the visit is neither a place in a list nor {@link
     *     #CASUAL}
     */
    public Registration {
        if (!Double.isFinite(position) || visit < CASUAL) {
            throw new IllegalArgumentException("Not a registration: " + position + " m on visit " + visit);
        }
    }
}

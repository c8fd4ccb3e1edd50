package org.ouzelbook.stats.estimator.segmentation;

import java.util.List;

/**
 * What one visit covered of a line.
 *
 * @param pieces its pieces, none overlapping another
 */
public record VisitedWater(List<Piece> pieces) {
    /** Copies the pieces. */
    public VisitedWater {
        pieces = List.copyOf(pieces);
    }

    /**
     * One covered piece of a line.
     *
     * @param lower its lower end, in metres
     * @param upper its upper end, in metres; not below {@code lower}
     */
    public record Piece(double lower, double upper) {}

    /**
     * {@return how much of a stretch it covered, in metres}
     *
     * @param lower the lower end, in metres
     * @param upper the upper end, in metres
     */
    public double lengthWithin(double lower, double upper) {
        double length = 0;
        for (Piece piece : pieces) {
            length += Math.max(0, Math.min(upper, piece.upper) - Math.max(lower, piece.lower));
        }
        return length;
    }

    /**
     * {@return whether it covered at least one point of a stretch}
     *
     * @param lower the lower end, in metres
     * @param upper the upper end, in metres
     */
    boolean touches(double lower, double upper) {
        return pieces.stream().anyMatch(piece -> piece.lower <= upper && lower <= piece.upper);
    }
}

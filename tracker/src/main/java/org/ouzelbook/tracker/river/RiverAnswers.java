package org.ouzelbook.tracker.river;

import java.util.Map;
import java.util.Optional;
import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * What a person says about drawn rivers where the drawing leaves it open.
 *
 * @param mouthAt by name of the river, which end is its mouth; the blank name answers for every river that joins none
 * @param joins by name of the river, the name of the river that it joins; empty if it joins none
 * @param widestGapMetres gaps of at most this many metres are bridged with a straight line; not negative
 * @param leaveGaps whether what lies beyond wider gaps is left out; otherwise they are asked about
 */
public record RiverAnswers(
        Map<String, Mouth> mouthAt, Map<String, Optional<String>> joins, double widestGapMetres, boolean leaveGaps) {
    /** Nothing said. */
    public static final RiverAnswers NONE = new RiverAnswers(Map.of(), Map.of(), 0, false);

    /**
     * Copies the maps and checks the width.
     *
     * @throws IllegalArgumentException if the width is negative or NaN
     */
    public RiverAnswers {
        mouthAt = Map.copyOf(mouthAt);
        joins = Map.copyOf(joins);
        if (!(widestGapMetres >= 0)) {
            throw new IllegalArgumentException("The widest gap must be >= 0 m, but was " + widestGapMetres);
        }
    }

    /** Which end of a drawn line is the mouth. */
    public sealed interface Mouth {
        /** The first point drawn: the line runs upstream. */
        record First() implements Mouth {}

        /** The last point drawn: the line runs downstream. */
        record Last() implements Mouth {}

        /**
         * The end nearer to a point.
         *
         * @param point a point near the mouth
         */
        record Near(GeoPoint point) implements Mouth {}
    }
}

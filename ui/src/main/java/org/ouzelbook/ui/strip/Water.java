package org.ouzelbook.ui.strip;

import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * The water of one river that the book surveys, and where it lies across the strip.
 *
 * @param river the river
 * @param extent from the lowest to the highest place that was ever visited or recorded
 * @param mouthMetres metres along the water from the main river's mouth to this river's mouth; 0 for a main river
 */
public record Water(River river, Stretch extent, double mouthMetres) {
    /**
     * {@return metres along the water, counted from the main river's mouth}
     *
     * @param chainage a place on this river
     */
    public double metres(Chainage chainage) {
        return mouthMetres + chainage.metres();
    }

    /**
     * {@return the place of this water that lies nearest}
     *
     * @param metres metres from this river's mouth; below 0 lies beyond it
     */
    public Chainage nearest(double metres) {
        return new Chainage(
                Math.max(extent.lower().metres(), Math.min(extent.upper().metres(), metres)));
    }

    double from() {
        return metres(extent.lower());
    }

    double to() {
        return metres(extent.upper());
    }
}

package org.ouzelbook.ui.strip;

import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.ui.app.ModelShading;

/**
 * Where a territory lies on the paper, and over what width each of its ends fades away.
 *
 * @param left where nothing is left of it
 * @param coreLeft where it is whole
 * @param coreRight where it is no longer whole
 * @param right where nothing is left of it
 */
record Fade(double left, double coreLeft, double coreRight, double right) {
    /** Fading over fewer pixels would look like a cut. */
    private static final double LEAST = 3;

    /** A territory fades over the water on which its ends lie by the model. */
    static Fade of(Across across, Water water, ModelShading.Ground ground) {
        double left = across.x(water.metres(ground.lowerEnd().lower()));
        double coreLeft = across.x(water.metres(ground.lowerEnd().upper()));
        double coreRight = across.x(water.metres(ground.upperEnd().lower()));
        double right = across.x(water.metres(ground.upperEnd().upper()));
        if (coreLeft > coreRight) {
            double middle = (coreLeft + coreRight) / 2;
            coreLeft = middle;
            coreRight = middle;
        }
        return new Fade(Math.min(left, coreLeft - LEAST), coreLeft, coreRight, Math.max(right, coreRight + LEAST));
    }

    /** Without the model, it reaches a little beyond its outermost records. */
    static Fade of(Across across, Water water, Stretch stretch, double beyond) {
        double left = across.x(water.metres(stretch.lower())) - beyond;
        double right = across.x(water.metres(stretch.upper())) + beyond;
        double width = Math.min(8, (right - left) / 3);
        return new Fade(left, left + width, right - width, right);
    }
}

package org.ouzelbook.ui.strip;

/**
 * The scale across a drawing: metres along the water from the mouth of the main river, a tributary's water counted on from
 * its confluence.
 *
 * @param left the x of {@code from}, in pixels
 * @param right the x of {@code to}, in pixels; more than {@code left}
 * @param from metres at the left side
 * @param to metres at the right side; more than {@code from}
 */
public record Across(double left, double right, double from, double to) {
    /**
     * Checks the order.
     *
     * @throws IllegalArgumentException if there is no room or no water between the sides
     */
    public Across {
        if (!(right > left && to > from)) {
            throw new IllegalArgumentException(
                    "A scale needs room and water, but had " + left + "–" + right + " px, " + from + "–" + to + " m");
        }
    }

    /**
     * {@return the x of a place on the water, in pixels; outside the sides where the place is}
     *
     * @param metres metres along the water
     */
    public double x(double metres) {
        return left + (metres - from) * (right - left) / (to - from);
    }

    /**
     * {@return metres along the water at an x}
     *
     * @param x pixels
     */
    public double metres(double x) {
        return from + (x - left) * (to - from) / (right - left);
    }

    /** {@return the length of water that one pixel shows, in metres} */
    public double metresPerPixel() {
        return (to - from) / (right - left);
    }

    boolean shows(double metres) {
        return metres >= from && metres <= to;
    }

    double clipped(double x) {
        return Math.min(right, Math.max(left, x));
    }
}

package org.ouzelbook.ui.strip;

/**
 * An upright rectangle, in pixels.
 *
 * @param x left side
 * @param y top side
 * @param width width; not negative
 * @param height height; not negative
 */
public record Rect(double x, double y, double width, double height) {
    /** {@return the right side} */
    public double right() {
        return x + width;
    }

    /** {@return the bottom side} */
    public double bottom() {
        return y + height;
    }

    /**
     * {@return whether the point lies inside, the sides included}
     *
     * @param px to the right
     * @param py downwards
     */
    public boolean contains(double px, double py) {
        return px >= x && px <= right() && py >= y && py <= bottom();
    }

    /**
     * {@return whether two rectangles share more than a side}
     *
     * @param other another rectangle
     */
    public boolean overlaps(Rect other) {
        return x < other.right() && other.x < right() && y < other.bottom() && other.y < bottom();
    }

    /**
     * {@return this rectangle with a margin all round}
     *
     * @param margin pixels; negative to shrink
     */
    public Rect grown(double margin) {
        return new Rect(x - margin, y - margin, width + 2 * margin, height + 2 * margin);
    }
}

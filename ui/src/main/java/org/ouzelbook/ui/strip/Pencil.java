package org.ouzelbook.ui.strip;

/**
 * How a line is drawn.
 *
 * @param ink its colour
 * @param width its width, in pixels
 * @param dotted whether it is a row of dots
 */
public record Pencil(Ink ink, double width, boolean dotted) {
    /**
     * {@return a whole line}
     *
     * @param ink its colour
     * @param width its width, in pixels
     */
    static Pencil solid(Ink ink, double width) {
        return new Pencil(ink, width, false);
    }

    /**
     * {@return a row of dots}
     *
     * @param ink its colour
     * @param width its width, in pixels
     */
    static Pencil dotted(Ink ink, double width) {
        return new Pencil(ink, width, true);
    }

    /** {@return the distance from one dot of a dotted line to the next, in pixels} */
    public double dotSpacing() {
        return 2.4 * width;
    }
}

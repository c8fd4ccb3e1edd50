package org.ouzelbook.ui.strip;

/**
 * How much paper there is, and what of the axis across it: water in metres, or days of the year.
 *
 * @param width width, in pixels; 480 or more
 * @param height height wished for, in pixels; the drawing is taller where its rows need it
 * @param from metres along the water, or the day of the year, at the left
 * @param to the same at the right; more than {@code from}
 */
public record Frame(double width, double height, double from, double to) {
    /**
     * Checks the size.
     *
     * @throws IllegalArgumentException if the paper is narrower than 480 px, or there is no water
     */
    public Frame {
        if (!(width >= 480 && height > 0 && to > from)) {
            throw new IllegalArgumentException("A frame needs paper and water, but was " + width + "×" + height
                    + " px, " + from + "–" + to + " m");
        }
    }

    /**
     * {@return the frame that shows all water of the scene}
     *
     * @param waters the water
     * @param width width, in pixels
     * @param height height, in pixels
     */
    public static Frame fitting(Waters waters, double width, double height) {
        double margin = 0.012 * (waters.to() - waters.from());
        return new Frame(width, height, waters.from() - margin, waters.to() + margin);
    }

    /**
     * {@return this paper with other water}
     *
     * @param newFrom metres at the left
     * @param newTo metres at the right
     */
    public Frame showing(double newFrom, double newTo) {
        return new Frame(width, height, newFrom, newTo);
    }

    /**
     * {@return nearer or farther, with one place of the water kept where it is, and never beyond the limits}
     *
     * @param factor above 1 comes nearer
     * @param about what of the axis stays where it is
     * @param limits the farthest frame
     * @param closest the least of the axis to be seen
     */
    public Frame zoomed(double factor, double about, Frame limits, double closest) {
        double span = Math.max(closest, Math.min(limits.to - limits.from, (to - from) / factor));
        double share = (about - from) / (to - from);
        return showing(about - share * span, about + (1 - share) * span).within(limits);
    }

    /**
     * {@return moved along the water, and never beyond the limits}
     *
     * @param metres metres upstream; negative for downstream
     * @param limits the farthest frame
     */
    public Frame moved(double metres, Frame limits) {
        return showing(from + metres, to + metres).within(limits);
    }

    private Frame within(Frame limits) {
        double span = Math.min(to - from, limits.to - limits.from);
        double start = Math.max(limits.from, Math.min(limits.to - span, from));
        return showing(start, start + span);
    }
}

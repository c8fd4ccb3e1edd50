package org.ouzelbook.ui.strip;

import java.util.Optional;

/** Draws the river strip: one season, all seasons, and the legend to both. */
public final class RiverStrip {
    private RiverStrip() {}

    /**
     * {@return the strip of one season}
     *
     * @param scene what it shows
     * @param frame the paper
     * @param selected what is to be pointed out
     */
    public static StripDrawing season(SeasonScene scene, Frame frame, Optional<Subject> selected) {
        return new SeasonLayout(scene, frame, selected).drawing();
    }

    /**
     * {@return the strip of all seasons}
     *
     * @param scene what it shows
     * @param frame the paper
     * @param selected what is to be pointed out
     */
    public static StripDrawing seasons(SeasonsScene scene, Frame frame, Optional<Subject> selected) {
        return new SeasonsLayout(scene, frame, selected).drawing();
    }

    /**
     * {@return the legend}
     *
     * @param width width of the paper, in pixels
     */
    public static StripDrawing legend(double width) {
        return new LegendLayout(width).drawing();
    }
}

package org.ouzelbook.ui.strip;

import java.util.List;
import org.ouzelbook.tracker.domain.Sighting;

/** A scene made ready once, to be drawn again and again from other distances. */
public interface ReadyStrip {
    /**
     * {@return the strip}
     *
     * @param frame the paper, and what of the axis is to be on it
     */
    StripDrawing drawing(Frame frame);

    /**
     * {@return the frame that shows everything}
     *
     * @param width width of the paper, in pixels
     * @param height height of the paper, in pixels
     */
    Frame farthest(double width, double height);

    /** {@return the least of the axis that is worth filling the paper with, in its unit} */
    double closest();

    /**
     * {@return the records that a thing on the strip hangs on; none where it hangs on none}
     *
     * @param subject something on the strip
     */
    default List<Sighting> recordsOf(Subject subject) {
        return List.of();
    }
}

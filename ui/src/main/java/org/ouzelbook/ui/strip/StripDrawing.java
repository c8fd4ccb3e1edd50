package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Sighting;

/**
 * A finished drawing of the strip: shapes for any pen to draw, and what they stand for.
 *
 * @param width width, in pixels
 * @param height height, in pixels; may be more than was asked for, where the rows need it
 * @param shapes the shapes, the lowest first
 * @param over shapes that lie over them and point something out; they alone change with what is chosen
 * @param areas places that answer, the lowest first
 * @param across where along the water each x lies
 * @param title the drawing in a few words
 * @param description the drawing in sentences, for those who cannot see it
 */
public record StripDrawing(
        double width,
        double height,
        List<Shape> shapes,
        List<Shape> over,
        List<HitArea> areas,
        Across across,
        String title,
        String description) {
    /** Copies the lists. */
    public StripDrawing {
        shapes = List.copyOf(shapes);
        over = List.copyOf(over);
        areas = List.copyOf(areas);
    }

    /** {@return the drawing without what it stands for} */
    public Picture picture() {
        List<Shape> all = new ArrayList<>(shapes);
        all.addAll(over);
        return new Picture(width, height, all, title, description);
    }

    /**
     * {@return the same drawing with something pointed out}
     *
     * @param chosen what was chosen; empty for nothing
     * @param records the records that it hangs on
     */
    public StripDrawing pointingOut(Optional<Subject> chosen, List<Sighting> records) {
        List<Shape> marks = PointedOut.shapes(areas, chosen, records);
        return new StripDrawing(width, height, shapes, marks, areas, across, title, description);
    }
}

package org.ouzelbook.ui.strip;

import java.util.List;
import java.util.Optional;

/**
 * A finished drawing of the strip: shapes for any pen to draw, and what they stand for.
 *
 * @param width width, in pixels
 * @param height height, in pixels; may be more than was asked for, where the rows need it
 * @param shapes the shapes, the lowest first
 * @param areas places that answer, the lowest first
 * @param across where along the water each x lies
 * @param title the drawing in a few words
 * @param description the drawing in sentences, for those who cannot see it
 */
public record StripDrawing(
        double width,
        double height,
        List<Shape> shapes,
        List<HitArea> areas,
        Across across,
        String title,
        String description) {
    /** Copies the lists. */
    public StripDrawing {
        shapes = List.copyOf(shapes);
        areas = List.copyOf(areas);
    }

    /** {@return the drawing without what it stands for} */
    public Picture picture() {
        return new Picture(width, height, shapes, title, description);
    }

    /**
     * {@return what lies uppermost at a point; empty where nothing answers}
     *
     * @param x to the right
     * @param y downwards
     */
    public Optional<HitArea> at(double x, double y) {
        for (int i = areas.size() - 1; i >= 0; i--) {
            if (areas.get(i).area().contains(x, y)) {
                return Optional.of(areas.get(i));
            }
        }
        return Optional.empty();
    }
}

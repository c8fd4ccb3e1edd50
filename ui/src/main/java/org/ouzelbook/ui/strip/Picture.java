package org.ouzelbook.ui.strip;

import java.util.List;

/**
 * A finished drawing: shapes for any pen.
 *
 * @param width width, in pixels
 * @param height height, in pixels
 * @param shapes the shapes, the lowest first
 * @param title the drawing in a few words
 * @param description the drawing in sentences, for those who cannot see it
 */
public record Picture(double width, double height, List<Shape> shapes, String title, String description) {
    /** Copies the list. */
    public Picture {
        shapes = List.copyOf(shapes);
    }
}

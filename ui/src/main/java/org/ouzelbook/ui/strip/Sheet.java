package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.List;

/** A drawing while it is being made; it knows where words already stand. */
final class Sheet {
    private static final double ROOM_ROUND_WORDS = 3;

    private final List<Shape> shapes = new ArrayList<>();
    private final List<HitArea> areas = new ArrayList<>();
    private final List<Rect> words = new ArrayList<>();
    private final Rect paper;

    /**
     * @param width width of the paper
     * @param height height of the paper
     */
    Sheet(double width, double height) {
        this.paper = new Rect(0, 0, width, height);
    }

    void draw(Shape shape) {
        shapes.add(shape);
    }

    void answer(HitArea area) {
        areas.add(area);
    }

    /**
     * Writes a text if no other text stands there and it stays on the paper.
     *
     * @param label the text
     * @return whether it was written
     */
    boolean write(Shape.Label label) {
        Rect bounds = label.bounds();
        boolean inside = bounds.x() >= paper.x()
                && bounds.right() <= paper.right()
                && bounds.y() >= paper.y()
                && bounds.bottom() <= paper.bottom();
        Rect room = bounds.grown(ROOM_ROUND_WORDS);
        if (!inside || words.stream().anyMatch(room::overlaps)) {
            return false;
        }
        words.add(bounds);
        shapes.add(label);
        return true;
    }

    /**
     * {@return the drawing, finished}
     *
     * @param across where along its axis each x lies
     * @param words the same in words
     */
    StripDrawing drawing(Across across, StripTelling words) {
        return new StripDrawing(
                paper.width(), paper.height(), shapes, List.of(), areas, across, words.title(), words.description());
    }

    List<Shape> shapes() {
        return shapes;
    }

    List<HitArea> areas() {
        return areas;
    }
}

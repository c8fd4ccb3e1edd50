package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.ui.app.Texts;

/**
 * Sightings too close together to be drawn one by one: a small tablet with their number. Proof of breeding and building stand
 * out at its corners, so that no crowd hides them.
 *
 * @param count how many sightings
 * @param singing how many of song
 * @param building how many with nest material
 * @param food how many with food or a faecal sac
 */
public record Crowd(int count, int singing, int building, int food) {
    /** No tablet is wider, in pixels. */
    static final double WIDEST = 36;

    private static final double HEIGHT = 17;

    static Crowd of(SightingRow row, int from, int to) {
        return new Crowd(to - from, row.song(from, to), row.building(from, to), row.food(from, to));
    }

    /**
     * {@return the tablet without what stands on its corners}
     *
     * @param at its middle
     */
    public Rect area(Point at) {
        double width = Math.min(WIDEST, TextWidths.of(number(), Shape.Lettering.SMALL) + 13);
        return new Rect(at.x() - width / 2, at.y() - HEIGHT / 2, width, HEIGHT);
    }

    private String number() {
        return count < 10_000 ? Integer.toString(count) : count / 1000 + "k";
    }

    /** {@return a crowd that looks just like this one; there are far fewer of such} */
    public Crowd alike() {
        return new Crowd(count, 0, Math.min(1, building), Math.min(1, food));
    }

    /** The simple shapes of its tablet. */
    List<Shape> parts(Point at) {
        Rect area = area(at);
        List<Shape> shapes = new ArrayList<>();
        shapes.add(new Shape.Box(area, 5, Optional.of(Ink.PAPER), Optional.of(Pencil.solid(Ink.INK, 1.2))));
        shapes.add(new Shape.Label(
                new Point(at.x(), at.y() + 4.5), number(), Shape.Anchor.MIDDLE, Shape.Lettering.SMALL, Ink.INK));
        if (food > 0) {
            shapes.add(new Shape.Box(
                    new Rect(area.right() - 4, area.y() - 3.5, 7, 7),
                    0,
                    Optional.of(Ink.PROOF),
                    Optional.of(Pencil.solid(Ink.INK, 1))));
        }
        if (building > 0) {
            Point top = new Point(area.x(), area.y() - 4.5);
            shapes.add(Shape.Path.area(
                    Ink.BUILDING,
                    Pencil.solid(Ink.INK, 1),
                    top,
                    new Shape.Step.To(new Point(top.x() + 4.5, top.y() + 7.5)),
                    new Shape.Step.To(new Point(top.x() - 4.5, top.y() + 7.5))));
        }
        return shapes;
    }

    String aloud() {
        return Texts.of("strip.crowd", count, singing, building, food);
    }
}

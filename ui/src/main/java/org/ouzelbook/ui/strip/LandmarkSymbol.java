package org.ouzelbook.ui.strip;

import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.ui.strip.Shape.Step;

/** How a landmark looks on the ribbon: an arch, a step, a stone. */
final class LandmarkSymbol {
    private LandmarkSymbol() {}

    /**
     * {@return the shapes of a landmark}
     *
     * @param kind what it is
     * @param x where it stands
     * @param y the middle of the ribbon
     */
    static List<Shape> parts(LandmarkKind kind, double x, double y) {
        Pencil ink = Pencil.solid(Ink.INK, 1.8);
        return switch (kind) {
            case BRIDGE ->
                List.of(Shape.Path.open(
                        ink, new Point(x - 8, y + 9), new Step.Bend(new Point(x, y - 9), new Point(x + 8, y + 9))));
            case WEIR ->
                List.of(Shape.Path.through(
                        ink,
                        List.of(
                                new Point(x - 4, y - 10),
                                new Point(x + 2, y - 4),
                                new Point(x - 4, y + 2),
                                new Point(x + 2, y + 9))));
            case ROCK -> List.of(stone(x, y));
            case FALL ->
                List.of(
                        new Shape.Line(new Point(x - 2.5, y - 9), new Point(x - 2.5, y + 9), ink),
                        new Shape.Line(new Point(x + 2.5, y - 9), new Point(x + 2.5, y + 9), ink));
            case WALL ->
                List.of(new Shape.Line(new Point(x - 8, y + 9), new Point(x + 8, y + 9), Pencil.solid(Ink.INK, 2.5)));
            case CONFLUENCE -> List.of(stream(x, y, 6, Ink.WATER), stream(x, y, 1.6, Ink.STREAM));
            case OTHER -> List.of(new Shape.Disc(new Point(x, y), 2.5, Optional.of(Ink.INK), Optional.empty()));
        };
    }

    /** A stream that comes in from below. */
    private static Shape stream(double x, double y, double width, Ink ink) {
        return Shape.Path.open(
                Pencil.solid(ink, width),
                new Point(x + 8, y + 15),
                new Step.Bend(new Point(x + 2, y + 11), new Point(x, y + 2)));
    }

    private static Shape stone(double x, double y) {
        return Shape.Path.area(
                Ink.STONE,
                Pencil.solid(Ink.PAPER, 1),
                new Point(x - 7, y + 5),
                new Step.Bend(new Point(x - 6, y - 6), new Point(x, y - 6)),
                new Step.Bend(new Point(x + 7, y - 6), new Point(x + 7, y + 5)));
    }
}

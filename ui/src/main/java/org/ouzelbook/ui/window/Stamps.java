package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.scene.SnapshotParameters;
import javafx.scene.canvas.Canvas;
import javafx.scene.image.Image;
import javafx.scene.paint.Color;
import javafx.scene.paint.ImagePattern;
import javafx.scene.transform.Scale;
import org.ouzelbook.ui.strip.Crowd;
import org.ouzelbook.ui.strip.Ink;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.Point;
import org.ouzelbook.ui.strip.Rect;
import org.ouzelbook.ui.strip.Shape;
import org.ouzelbook.ui.strip.SightingSymbol;

/** Symbols drawn once and stamped from then on: there are few kinds of them, and thousands to draw. */
final class Stamps {
    /** Half the width and height that a symbol needs, in pixels, without lines below it and with them: the less, the sooner stamped. */
    private static final double HALF = 12;

    private static final double HALF_WITH_LINES = 18;

    /** Room round a box on its stamp, for its edge, in pixels. */
    static final double MARGIN = 2;

    private static final double LARGEST = 64;

    /** Room beside a tablet, and above and below it, for what stands on its corners, in pixels. */
    private static final double CORNER = 6;

    /** Tablets of so many numbers are kept; with more, all are made again. */
    private static final int MOST_TABLETS = 500;

    private final Palette palette;
    private final double scale;
    private final Map<Kind, Image> made = new HashMap<>();

    private final Map<Shape.Box, Image> boxes = new HashMap<>();
    private final Map<Crowd, Image> tablets = new HashMap<>();
    private Optional<ImagePattern> hatching = Optional.empty();

    private record Kind(SightingSymbol symbol, Ink ink) {}

    /**
     * @param palette the colours
     * @param scale pixels of the screen for one of the drawing
     */
    Stamps(Palette palette, double scale) {
        this.palette = palette;
        this.scale = scale;
    }

    /** {@return whether these are the stamps for such colours and such a screen} */
    boolean fit(Palette otherPalette, double otherScale) {
        return palette.equals(otherPalette) && scale == otherScale;
    }

    /** {@return pixels of the screen for one of the drawing} */
    double scale() {
        return scale;
    }

    /** {@return the stamp of a symbol, which stands in its middle; empty where it has a number beside it, and is drawn} */
    Optional<Image> of(Shape.Mark mark) {
        return mark.count() > 2
                ? Optional.empty()
                : Optional.of(made.computeIfAbsent(new Kind(mark.symbol(), mark.ink()), this::make));
    }

    /** {@return the stamp of a crowd, which stands in its middle} */
    Optional<Image> of(Shape.Tablet tablet) {
        if (tablets.size() >= MOST_TABLETS) {
            tablets.clear();
        }
        return Optional.of(tablets.computeIfAbsent(tablet.crowd().alike(), this::make));
    }

    private Image make(Crowd crowd) {
        Rect area = crowd.area(new Point(0, 0)).grown(CORNER);
        double width = 2 * Math.ceil(area.width() / 2);
        double height = 2 * Math.ceil(area.height() / 2);
        return drawn(
                width, height, List.of(new Shape.Tablet(new Point(width / 2, height / 2), crowd)), Color.TRANSPARENT);
    }

    /** {@return the stamp of a small box, with a margin of {@link #MARGIN} round it; empty where it is large, and is drawn} */
    Optional<Image> of(Shape.Box box) {
        // Whole pixels, or every step of the hand would need stamps of its own.
        double width = Math.rint(box.area().width());
        double height = Math.rint(box.area().height());
        if (width < 1 || height < 1 || width > LARGEST || height > LARGEST) {
            return Optional.empty();
        }
        double radius = Math.min(Math.rint(2 * box.radius()), Math.min(width, height)) / 2;
        Shape.Box alike = new Shape.Box(new Rect(MARGIN, MARGIN, width, height), radius, box.fill(), box.outline());
        return Optional.of(boxes.computeIfAbsent(
                alike, kind -> drawn(width + 2 * MARGIN, height + 2 * MARGIN, List.of(kind), Color.TRANSPARENT)));
    }

    /** {@return what fills water that nobody walked: the same slanting lines wherever it begins} */
    ImagePattern hatching() {
        if (hatching.isEmpty()) {
            double size = Shape.Hatch.SPACING;
            // A neighbour on each side, so that lines which reach over an edge of the tile do so on both sides.
            Shape.Hatch around = new Shape.Hatch(new Rect(-size, -size, 3 * size, 3 * size));
            List<Shape> lines = new ArrayList<>(around.lines());
            Image tile = drawn(size, size, lines, Color.web(palette.colour(Ink.UNWALKED)));
            hatching = Optional.of(new ImagePattern(tile, 0, 0, size, size, false));
        }
        return hatching.get();
    }

    private Image make(Kind kind) {
        double half = kind.symbol().underlines() == 0 ? HALF : HALF_WITH_LINES;
        return drawn(
                2 * half,
                2 * half,
                List.of(new Shape.Mark(new Point(half, half), kind.symbol(), kind.ink(), 1)),
                Color.TRANSPARENT);
    }

    private Image drawn(double width, double height, List<Shape> shapes, Color ground) {
        Canvas canvas = new Canvas(width, height);
        new CanvasPen(canvas.getGraphicsContext2D(), palette).draw(shapes, 0);
        SnapshotParameters alone = new SnapshotParameters();
        alone.setFill(ground);
        alone.setTransform(new Scale(scale, scale));
        return canvas.snapshot(alone, null);
    }
}

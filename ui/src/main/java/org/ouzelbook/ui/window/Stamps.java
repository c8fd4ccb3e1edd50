package org.ouzelbook.ui.window;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.scene.SnapshotParameters;
import javafx.scene.canvas.Canvas;
import javafx.scene.image.Image;
import javafx.scene.paint.Color;
import javafx.scene.transform.Scale;
import org.ouzelbook.ui.strip.Ink;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.Point;
import org.ouzelbook.ui.strip.Shape;
import org.ouzelbook.ui.strip.SightingSymbol;

/** Symbols drawn once and stamped from then on: there are few kinds of them, and thousands to draw. */
final class Stamps {
    /** Half the width and height that a symbol needs, in pixels. */
    static final double HALF = 20;

    private final Palette palette;
    private final double scale;
    private final Map<Kind, Image> made = new HashMap<>();

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

    /** {@return the stamp of a symbol; empty where it has a number beside it, and is drawn} */
    Optional<Image> of(Shape.Mark mark) {
        return mark.count() > 2
                ? Optional.empty()
                : Optional.of(made.computeIfAbsent(new Kind(mark.symbol(), mark.ink()), this::make));
    }

    private Image make(Kind kind) {
        Canvas canvas = new Canvas(2 * HALF, 2 * HALF);
        new CanvasPen(canvas.getGraphicsContext2D(), palette)
                .draw(List.of(new Shape.Mark(new Point(HALF, HALF), kind.symbol(), kind.ink(), 1)), 0);
        SnapshotParameters clear = new SnapshotParameters();
        clear.setFill(Color.TRANSPARENT);
        clear.setTransform(new Scale(scale, scale));
        return canvas.snapshot(clear, null);
    }
}

package org.ouzelbook.ui.window;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.Image;
import javafx.scene.paint.Color;
import javafx.scene.paint.CycleMethod;
import javafx.scene.paint.LinearGradient;
import javafx.scene.paint.Paint;
import javafx.scene.paint.Stop;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.shape.StrokeLineJoin;
import javafx.scene.text.Font;
import javafx.scene.text.TextAlignment;
import org.ouzelbook.ui.strip.Ink;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.Pencil;
import org.ouzelbook.ui.strip.Picture;
import org.ouzelbook.ui.strip.Point;
import org.ouzelbook.ui.strip.Rect;
import org.ouzelbook.ui.strip.Shape;

/** Draws a strip on a canvas, just as the SVG pen writes it. */
final class CanvasPen {
    private static final Map<Shape.Lettering, Font> FONTS = new EnumMap<>(Shape.Lettering.class);

    private static final double LINE = 19;
    private static final double INSET = 9;

    /** The ends of a line so thin are not seen to be round. */
    private static final double THIN = 2;

    private final GraphicsContext canvas;
    private final Map<Ink, Color> colours = new EnumMap<>(Ink.class);
    private final Optional<Stamps> stamps;

    CanvasPen(GraphicsContext canvas, Palette palette) {
        this(canvas, palette, Optional.empty());
    }

    /**
     * @param canvas the canvas
     * @param palette the colours
     * @param stamps symbols made before, for a screen; without them each symbol is drawn
     */
    CanvasPen(GraphicsContext canvas, Palette palette, Optional<Stamps> stamps) {
        this.canvas = canvas;
        this.stamps = stamps;
        for (Ink ink : Ink.values()) {
            colours.put(ink, Color.web(palette.colour(ink)));
        }
    }

    /** Leaves a clean ground. */
    void clear() {
        canvas.setFill(colour(Ink.PAPER));
        canvas.fillRect(0, 0, canvas.getCanvas().getWidth(), canvas.getCanvas().getHeight());
    }

    /** Takes everything off, down to what lies below the canvas. */
    void wipe() {
        canvas.clearRect(0, 0, canvas.getCanvas().getWidth(), canvas.getCanvas().getHeight());
    }

    /**
     * Draws everything of a picture on a clean ground.
     *
     * @param picture the picture
     */
    void draw(Picture picture) {
        clear();
        draw(picture.shapes(), 0);
    }

    /**
     * Draws those shapes that the canvas shows.
     *
     * @param shapes the shapes, the lowest first
     * @param down how far the top of their paper lies above the top of the canvas, in pixels
     */
    void draw(List<Shape> shapes, double down) {
        canvas.save();
        canvas.translate(0, -Math.rint(down));
        canvas.setLineCap(StrokeLineCap.ROUND);
        canvas.setLineJoin(StrokeLineJoin.ROUND);
        double bottom = down + canvas.getCanvas().getHeight();
        for (Shape shape : shapes) {
            if (shape.isBetween(down, bottom)) {
                draw(shape);
            }
        }
        canvas.restore();
    }

    /**
     * Draws where something was and, as an upright line over the whole height, where it is, with words beside its top.
     *
     * @param from where it was, in pixels
     * @param to where it is
     * @param lines the words, one or more lines
     */
    void guide(double from, double to, List<String> lines) {
        double bottom = canvas.getCanvas().getHeight();
        draw(new Shape.Line(new Point(from, 0), new Point(from, bottom), new Pencil(Ink.MUTED, 1.5, true)));
        draw(new Shape.Line(new Point(to, 0), new Point(to, bottom), new Pencil(Ink.CONFIRMED, 2, false)));
        List<Shape.Label> labels = labels(lines, new Point(0, 0));
        double width = labels.stream()
                        .mapToDouble(label -> label.bounds().width())
                        .max()
                        .orElse(0)
                + 2 * INSET;
        double x = to + 8 + width <= canvas.getCanvas().getWidth() ? to + 8 : Math.max(0, to - 8 - width);
        draw(new Shape.Box(
                new Rect(x, 4, width, lines.size() * LINE + INSET),
                5,
                Optional.of(Ink.PAPER),
                Optional.of(new Pencil(Ink.CONFIRMED, 1, false))));
        labels(lines, new Point(x + INSET, 4 + LINE)).forEach(this::draw);
    }

    private static List<Shape.Label> labels(List<String> lines, Point first) {
        List<Shape.Label> labels = new ArrayList<>();
        for (String line : lines) {
            boolean last = labels.size() == lines.size() - 1;
            labels.add(new Shape.Label(
                    new Point(first.x(), first.y() + labels.size() * LINE),
                    line,
                    Shape.Anchor.START,
                    labels.isEmpty() ? Shape.Lettering.STRONG : last ? Shape.Lettering.SMALL : Shape.Lettering.BODY,
                    last ? Ink.MUTED : Ink.INK));
        }
        return labels;
    }

    private void draw(Shape shape) {
        if (shape instanceof Shape.Line line) {
            line(line);
        } else if (shape instanceof Shape.Path path) {
            path(path);
        } else if (shape instanceof Shape.Disc disc) {
            disc(disc);
        } else if (shape instanceof Shape.Box box) {
            box(box);
        } else if (shape instanceof Shape.Band band) {
            band(band);
        } else if (shape instanceof Shape.Hatch hatch) {
            hatch(hatch);
        } else if (shape instanceof Shape.Label label) {
            label(label);
        } else if (shape instanceof Shape.Mark mark) {
            mark(mark);
        }
    }

    private void mark(Shape.Mark mark) {
        Optional<Image> stamp = stamps.flatMap(made -> made.of(mark));
        if (stamp.isEmpty()) {
            mark.parts().forEach(this::draw);
            return;
        }
        stamp(stamp.get(), mark.centre().x() - Stamps.HALF, mark.centre().y() - Stamps.HALF);
    }

    /** Stamps on whole pixels of the screen, or the stamp would be blurred. */
    private void stamp(Image image, double x, double y) {
        double scale = stamps.map(Stamps::scale).orElse(1.0);
        canvas.drawImage(
                image,
                Math.rint(x * scale) / scale,
                Math.rint(y * scale) / scale,
                image.getWidth() / scale,
                image.getHeight() / scale);
    }

    private void hatch(Shape.Hatch hatch) {
        Rect area = hatch.area();
        canvas.setFill(stamps.<Paint>map(Stamps::hatching).orElseGet(() -> colour(Ink.UNWALKED)));
        canvas.fillRect(area.x(), area.y(), area.width(), area.height());
        if (stamps.isEmpty()) {
            hatch.lines().forEach(this::line);
        }
    }

    private void line(Shape.Line line) {
        Pencil pencil = line.pencil();
        double width = Math.abs(line.to().x() - line.from().x());
        double height = Math.abs(line.to().y() - line.from().y());
        if (!pencil.dotted() && (width == 0 || height == 0) && pencil.width() <= THIN) {
            // A rectangle is filled many times faster than a line is drawn, and looks the same.
            double half = pencil.width() / 2;
            canvas.setFill(colour(pencil.ink()));
            canvas.fillRect(
                    Math.min(line.from().x(), line.to().x()) - half,
                    Math.min(line.from().y(), line.to().y()) - half,
                    width + pencil.width(),
                    height + pencil.width());
            return;
        }
        take(pencil);
        canvas.strokeLine(
                line.from().x(), line.from().y(), line.to().x(), line.to().y());
    }

    private void path(Shape.Path path) {
        canvas.beginPath();
        canvas.moveTo(path.start().x(), path.start().y());
        for (Shape.Step step : path.steps()) {
            Point end = step.end();
            if (step instanceof Shape.Step.Bend bend) {
                canvas.quadraticCurveTo(bend.towards().x(), bend.towards().y(), end.x(), end.y());
            } else {
                canvas.lineTo(end.x(), end.y());
            }
        }
        if (path.closed()) {
            canvas.closePath();
        }
        path.fill().ifPresent(ink -> {
            canvas.setFill(colour(ink));
            canvas.fill();
        });
        path.outline().ifPresent(pencil -> {
            take(pencil);
            canvas.stroke();
        });
    }

    private void disc(Shape.Disc disc) {
        double left = disc.centre().x() - disc.radius();
        double top = disc.centre().y() - disc.radius();
        double size = 2 * disc.radius();
        disc.fill().ifPresent(ink -> {
            canvas.setFill(colour(ink));
            canvas.fillOval(left, top, size, size);
        });
        disc.outline().ifPresent(pencil -> {
            take(pencil);
            canvas.strokeOval(left, top, size, size);
        });
    }

    private void box(Shape.Box box) {
        Rect area = box.area();
        Optional<Image> stamp = stamps.flatMap(made -> made.of(box));
        if (stamp.isPresent()) {
            stamp(stamp.get(), area.x() - Stamps.MARGIN, area.y() - Stamps.MARGIN);
            return;
        }
        double arc = 2 * box.radius();
        box.fill().ifPresent(ink -> {
            canvas.setFill(colour(ink));
            canvas.fillRoundRect(area.x(), area.y(), area.width(), area.height(), arc, arc);
        });
        box.outline().ifPresent(pencil -> {
            take(pencil);
            canvas.strokeRoundRect(area.x(), area.y(), area.width(), area.height(), arc, arc);
        });
    }

    private void band(Shape.Band band) {
        Rect area = band.area();
        Color full = colour(band.ink());
        Color none = Color.color(full.getRed(), full.getGreen(), full.getBlue(), 0);
        double left = Math.min(1, band.fadeLeft() / area.width());
        double right = Math.max(left, 1 - band.fadeRight() / area.width());
        canvas.setFill(new LinearGradient(
                area.x(),
                0,
                area.right(),
                0,
                false,
                CycleMethod.NO_CYCLE,
                new Stop(0, band.fadeLeft() > 0 ? none : full),
                new Stop(left, full),
                new Stop(right, full),
                new Stop(1, band.fadeRight() > 0 ? none : full)));
        canvas.fillRect(area.x(), area.y(), area.width(), area.height());
    }

    private void label(Shape.Label label) {
        canvas.setFill(colour(label.ink()));
        canvas.setFont(font(label.type()));
        canvas.setTextAlign(
                switch (label.anchor()) {
                    case START -> TextAlignment.LEFT;
                    case MIDDLE -> TextAlignment.CENTER;
                    case END -> TextAlignment.RIGHT;
                });
        canvas.fillText(label.text(), label.at().x(), label.at().y());
    }

    private void take(Pencil pencil) {
        canvas.setStroke(colour(pencil.ink()));
        canvas.setLineWidth(pencil.width());
        if (pencil.dotted()) {
            canvas.setLineDashes(0, pencil.dotSpacing());
        } else {
            canvas.setLineDashes();
        }
    }

    private Color colour(Ink ink) {
        return colours.getOrDefault(ink, Color.BLACK);
    }

    private static Font font(Shape.Lettering lettering) {
        return FONTS.computeIfAbsent(lettering, CanvasPen::load);
    }

    private static Font load(Shape.Lettering lettering) {
        String file = lettering.semibold() ? "SourceSans3-Semibold.ttf" : "SourceSans3-Regular.ttf";
        InputStream in = Shape.class.getResourceAsStream(file);
        return Optional.ofNullable(Font.loadFont(in, lettering.size())).orElseGet(() -> Font.font(lettering.size()));
    }
}

package org.ouzelbook.ui.window;

import java.io.InputStream;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.image.Image;
import javafx.scene.paint.Color;
import javafx.scene.paint.Paint;
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

    /** More steps from nothing to a colour than anybody can tell apart. */
    private static final int MOST_SLICES = 48;

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
            stamped(stamps.flatMap(made -> made.of(mark)), mark.centre(), mark::parts);
        } else if (shape instanceof Shape.Tablet tablet) {
            stamped(stamps.flatMap(made -> made.of(tablet)), tablet.centre(), tablet::parts);
        }
    }

    private void stamped(Optional<Image> stamp, Point centre, Supplier<List<Shape>> parts) {
        if (stamp.isEmpty()) {
            parts.get().forEach(this::draw);
            return;
        }
        Image image = stamp.get();
        stamp(image, centre.x() - image.getWidth() / scale() / 2, centre.y() - image.getHeight() / scale() / 2);
    }

    /** Stamps on whole pixels of the screen, or the stamp would be blurred. */
    private void stamp(Image image, double x, double y) {
        double scale = scale();
        canvas.drawImage(image, onPixel(x), onPixel(y), image.getWidth() / scale, image.getHeight() / scale);
    }

    /** Pixels of the screen for one of the drawing. */
    private double scale() {
        return stamps.map(Stamps::scale).orElse(1.0);
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

    /**
     * Draws a band as upright slices, each of one colour: a gradient takes twenty times as long, and with slices of a pixel or a few
     * nobody sees the difference. All edges lie between pixels of the screen, or seams would show.
     */
    private void band(Shape.Band band) {
        Rect area = band.area();
        Color full = colour(band.ink());
        double left = Math.min(area.right(), area.x() + band.fadeLeft());
        double right = Math.max(left, area.right() - band.fadeRight());
        double from = onPixel(left);
        double to = Math.max(from, onPixel(right));
        fade(area, onPixel(area.x()), from, full, true);
        fade(area, to, onPixel(area.right()), full, false);
        canvas.setFill(full);
        canvas.fillRect(from, area.y(), to - from, area.height());
    }

    private void fade(Rect area, double from, double to, Color full, boolean comesUp) {
        double width = (to - from) * scale();
        int slices = (int) Math.min(MOST_SLICES, Math.rint(width));
        double x = from;
        for (int i = 0; i < slices; i++) {
            double next = from + Math.rint(width * (i + 1) / slices) / scale();
            double share = (i + 0.5) / slices;
            canvas.setFill(Color.color(full.getRed(), full.getGreen(), full.getBlue(), comesUp ? share : 1 - share));
            canvas.fillRect(x, area.y(), next - x, area.height());
            x = next;
        }
    }

    private double onPixel(double x) {
        return Math.rint(x * scale()) / scale();
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

    /** The font as it is loaded has only its own letters; asked for by name it takes those that it lacks from the system’s fonts. */
    private static Font load(Shape.Lettering lettering) {
        String file = lettering.semibold() ? "SourceSans3-Semibold.ttf" : "SourceSans3-Regular.ttf";
        InputStream in = Shape.class.getResourceAsStream(file);
        return Optional.ofNullable(Font.loadFont(in, lettering.size()))
                .map(loaded -> new Font(loaded.getName(), lettering.size()))
                .orElseGet(() -> Font.font(lettering.size()));
    }
}

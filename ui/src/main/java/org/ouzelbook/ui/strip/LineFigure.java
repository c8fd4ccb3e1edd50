package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;

/** River lines as they lie on the map, north up, small: only to see which end is the mouth. */
public final class LineFigure {
    private static final double MARGIN = 34;

    private final double width;
    private final double height;
    private final double west;
    private final double north;
    private final double squeeze;
    private final double scale;
    private final double left;
    private final double top;

    private LineFigure(List<RiverLine> lines, double width, double height) {
        this.width = width;
        this.height = height;
        List<GeoPoint> all =
                lines.stream().flatMap(line -> line.points().stream()).toList();
        this.west = all.stream().mapToDouble(GeoPoint::longitude).min().orElse(0);
        double east = all.stream().mapToDouble(GeoPoint::longitude).max().orElse(0);
        this.north = all.stream().mapToDouble(GeoPoint::latitude).max().orElse(0);
        double south = all.stream().mapToDouble(GeoPoint::latitude).min().orElse(0);
        this.squeeze = Math.cos(Math.toRadians((north + south) / 2));
        double wide = Math.max(1e-9, (east - west) * squeeze);
        double high = Math.max(1e-9, north - south);
        this.scale = Math.min((width - 2 * MARGIN) / wide, (height - 2 * MARGIN) / high);
        this.left = (width - wide * scale) / 2;
        this.top = (height - high * scale) / 2;
    }

    /**
     * {@return the figure}
     *
     * @param lines lines going upstream, the main river first; one or more
     * @param width width, in pixels
     * @param height height, in pixels
     */
    public static Picture of(List<RiverLine> lines, double width, double height) {
        return new LineFigure(lines, width, height).picture(lines);
    }

    private Picture picture(List<RiverLine> lines) {
        List<Shape> shapes = new ArrayList<>();
        for (RiverLine line : lines) {
            List<Point> points = line.points().stream().map(this::at).toList();
            shapes.add(Shape.Path.through(Pencil.solid(Ink.WATER, 7), points));
        }
        for (RiverLine line : lines) {
            List<Point> points = line.points().stream().map(this::at).toList();
            shapes.add(Shape.Path.through(Pencil.solid(Ink.STREAM, 1.5), points));
        }
        RiverLine main = lines.get(0);
        List<GeoPoint> points = main.points();
        Point mouth = at(points.get(0));
        Point source = at(points.get(points.size() - 1));
        shapes.add(new Shape.Disc(source, 4, Optional.of(Ink.PAPER), Optional.of(Pencil.solid(Ink.INK, 1.5))));
        shapes.add(new Shape.Disc(mouth, 6, Optional.of(Ink.CONFIRMED), Optional.of(Pencil.solid(Ink.PAPER, 1.5))));
        Stream.of(
                        label(mouth, at(points.get(1)), Texts.of("strip.line.mouth"), Lettering.STRONG),
                        label(source, at(points.get(points.size() - 2)), Texts.of("strip.line.upper"), Lettering.SMALL))
                .forEach(shapes::add);
        return new Picture(width, height, shapes, Texts.of("strip.line.title"), Texts.of("strip.line.say"));
    }

    /** Above or below its point, where the line does not go, and to the side where there is room. */
    private Shape.Label label(Point at, Point next, String words, Lettering type) {
        boolean right = at.x() + TextWidths.of(words, type) < width;
        boolean above = next.y() >= at.y() && at.y() > 24;
        return new Shape.Label(
                new Point(at.x() + (right ? -4 : 4), at.y() + (above ? -13 : 22)),
                words,
                right ? Anchor.START : Anchor.END,
                type,
                Ink.INK);
    }

    private Point at(GeoPoint point) {
        return new Point(left + (point.longitude() - west) * squeeze * scale, top + (north - point.latitude()) * scale);
    }
}

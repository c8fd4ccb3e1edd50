package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.stream.DoubleStream;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;

/**
 * Values with their limits, one row each: the range as a bar first, the value as a dot on it. A value without limits is an open
 * dot; a row without a value says why.
 */
public final class IntervalFigure {
    private static final double TOP = 48;
    private static final double ROW = 21;
    private static final double GROUP_GAP = 12;
    private static final double RIGHT = 120;
    private static final double BAR = 9;
    private static final double DOT = 4.5;
    private static final String PERCENT = "%";

    private final Scale scale;
    private final List<Row> rows;
    private final double width;
    private final double left;
    private final double most;
    private final double least;
    private final List<Shape> shapes = new ArrayList<>();
    private final List<Rect> places = new ArrayList<>();

    private IntervalFigure(Scale scale, List<Row> rows, double width) {
        this.scale = scale;
        this.rows = rows;
        this.width = width;
        double labels = rows.stream()
                .mapToDouble(row -> TextWidths.of(row.label(), Lettering.BODY))
                .max()
                .orElse(0);
        double groups = rows.stream()
                .mapToDouble(row -> TextWidths.of(cut(row.group()), Lettering.STRONG))
                .max()
                .orElse(0);
        this.left = Math.min(width / 2, (groups > 0 ? groups + 16 : 0) + labels + 18);
        double highest = rows.stream().flatMapToDouble(Row::numbers).max().orElse(1);
        this.least = scale.from();
        this.most = scale.to().orElse(rounded(Math.max(highest, least + 1e-9)));
    }

    /**
     * What the values are.
     *
     * @param name their name and unit
     * @param from the value at the left
     * @param to the value at the right; empty for as far as the rows need
     * @param form how a value is written
     */
    public record Scale(String name, double from, OptionalDouble to, DoubleFunction<String> form) {}

    /**
     * One row.
     *
     * @param group what several rows have in common, written before the first of them; blank if nothing
     * @param label its name
     * @param value the value; empty with {@code why}
     * @param lower the lower limit; empty if there is none
     * @param upper the upper limit; empty if there is none
     * @param others single values behind it, as small dots
     * @param why why there is no value; blank if there is one
     */
    public record Row(
            String group,
            String label,
            OptionalDouble value,
            OptionalDouble lower,
            OptionalDouble upper,
            List<Double> others,
            String why) {
        /** Copies the list. */
        public Row {
            others = List.copyOf(others);
        }

        private DoubleStream numbers() {
            return DoubleStream.concat(
                    DoubleStream.concat(value.stream(), DoubleStream.concat(lower.stream(), upper.stream())),
                    others.stream().mapToDouble(Double::doubleValue));
        }
    }

    /**
     * A figure.
     *
     * @param picture the picture
     * @param places where each row lies on it, in order
     */
    public record Figure(Picture picture, List<Rect> places) {
        /** Copies the list. */
        public Figure {
            places = List.copyOf(places);
        }
    }

    /**
     * {@return the figure}
     *
     * @param title what it is a picture of
     * @param scale what the values are
     * @param rows the rows, one or more
     * @param width width, in pixels; 360 or more
     */
    public static Figure of(String title, Scale scale, List<Row> rows, double width) {
        return new IntervalFigure(scale, rows, width).figure(title);
    }

    /** A long name gives way to the values. */
    private String cut(String group) {
        return TextWidths.cut(group, Lettering.STRONG, width / 4);
    }

    private static double rounded(double highest) {
        double power = Math.pow(10, Math.floor(Math.log10(highest)));
        return DoubleStream.of(1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10)
                .map(step -> step * power)
                .filter(end -> end >= highest)
                .findFirst()
                .orElse(highest);
    }

    private Figure figure(String title) {
        double bottom = height();
        scale(bottom);
        double y = TOP;
        String group = "";
        List<String> said = new ArrayList<>();
        for (Row row : rows) {
            boolean begins = !row.group().equals(group);
            if (begins) {
                y += group.isEmpty() ? 0 : GROUP_GAP;
                group = row.group();
                shapes.add(label(0, y + 5, cut(group), Anchor.START, Lettering.STRONG, Ink.INK));
            }
            row(row, y);
            places.add(new Rect(0, y - ROW / 2, width, ROW));
            said.add(said(row));
            y += ROW;
        }
        return new Figure(new Picture(width, bottom, shapes, title, String.join(" ", said)), places);
    }

    private double height() {
        long groups = rows.stream().map(Row::group).distinct().count();
        return Math.ceil(TOP + ROW * rows.size() + GROUP_GAP * (groups - 1) - ROW / 2 + 8);
    }

    private void scale(double bottom) {
        shapes.add(label(left, 14, scale.name(), Anchor.START, Lettering.SMALL, Ink.MUTED));
        int steps = 5;
        for (int i = 0; i <= steps; i++) {
            double value = least + i * (most - least) / steps;
            double x = Math.round(x(value)) + 0.5;
            shapes.add(new Shape.Line(new Point(x, TOP - 12), new Point(x, bottom), Pencil.solid(Ink.GRID, 1)));
            shapes.add(label(x, TOP - 16, scale.form().apply(value), Anchor.MIDDLE, Lettering.SMALL, Ink.MUTED));
        }
    }

    private void row(Row row, double y) {
        shapes.add(label(left - 18, y + 5, row.label(), Anchor.END, Lettering.BODY, Ink.INK));
        if (row.value().isEmpty()) {
            String why = TextWidths.cut(row.why(), Lettering.SMALL, width - left - 6);
            shapes.add(label(left + 6, y + 4, why, Anchor.START, Lettering.SMALL, Ink.MUTED));
            return;
        }
        double value = row.value().getAsDouble();
        boolean limits = row.lower().isPresent() || row.upper().isPresent();
        if (limits) {
            double from = x(row.lower().orElse(least));
            double to = x(row.upper().orElse(most));
            // An end that nobody knows fades away.
            double fade = (to - from) / 3;
            shapes.add(new Shape.Band(
                    new Rect(from, y - BAR / 2, Math.max(1, to - from), BAR),
                    row.lower().isPresent() ? 0 : fade,
                    row.upper().isPresent() ? 0 : fade,
                    Ink.PROBABLE));
        }
        for (double other : row.others()) {
            shapes.add(new Shape.Disc(new Point(x(other), y), 2.5, Optional.of(Ink.MUTED), Optional.empty()));
        }
        shapes.add(new Shape.Disc(
                new Point(x(value), y),
                DOT,
                Optional.of(limits ? Ink.CONFIRMED : Ink.PAPER),
                Optional.of(Pencil.solid(limits ? Ink.PAPER : Ink.CONFIRMED, 1.5))));
        shapes.add(label(width, y + 5, written(row), Anchor.END, Lettering.SMALL, Ink.INK));
    }

    private String written(Row row) {
        String value = scale.form().apply(row.value().getAsDouble());
        boolean limits = row.lower().isPresent()
                && row.upper().isPresent()
                && row.lower().getAsDouble() < row.upper().getAsDouble();
        return limits
                ? Texts.of(
                        "strip.interval.limits",
                        value,
                        bare(scale.form().apply(row.lower().getAsDouble())),
                        scale.form().apply(row.upper().getAsDouble()))
                : value;
    }

    /** A unit that both limits share is written once. */
    private static String bare(String written) {
        return written.endsWith(PERCENT) ? written.substring(0, written.length() - PERCENT.length()) : written;
    }

    private String said(Row row) {
        String name = (row.group() + " " + row.label()).strip();
        return Texts.of("strip.interval.say", name, row.value().isPresent() ? written(row) : row.why());
    }

    private double x(double value) {
        double held = Math.max(least, Math.min(most, value));
        return left + (held - least) * (width - RIGHT - left) / (most - least);
    }

    private static Shape.Label label(double x, double y, String text, Anchor anchor, Lettering type, Ink ink) {
        return new Shape.Label(new Point(x, y), text, anchor, type, ink);
    }
}

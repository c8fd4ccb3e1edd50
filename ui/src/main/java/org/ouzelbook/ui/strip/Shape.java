package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One thing on a drawing, in pixels; a pen knows how to draw each kind. Later shapes lie over earlier ones. */
public sealed interface Shape {
    /**
     * {@return whether some of it may be seen between two heights; a little beyond is taken as between}
     *
     * @param top the upper height, in pixels
     * @param bottom the lower height, in pixels
     */
    default boolean isBetween(double top, double bottom) {
        return Heights.of(this).meets(top, bottom);
    }

    /**
     * A straight line.
     *
     * @param from one end
     * @param to the other end
     * @param pencil how it is drawn
     */
    record Line(Point from, Point to, Pencil pencil) implements Shape {}

    /**
     * A line of straight and bent pieces, or the area within it.
     *
     * @param start where it starts
     * @param steps its pieces, in order; one or more
     * @param closed whether it returns to its start
     * @param fill what fills it; empty for a mere line
     * @param outline how its line is drawn; empty for a mere area
     */
    record Path(Point start, List<Step> steps, boolean closed, Optional<Ink> fill, Optional<Pencil> outline)
            implements Shape {
        /** Copies the steps. */
        public Path {
            steps = List.copyOf(steps);
        }

        static Path open(Pencil pencil, Point start, Step... steps) {
            return new Path(start, List.of(steps), false, Optional.empty(), Optional.of(pencil));
        }

        static Path through(Pencil pencil, List<Point> points) {
            List<Step> steps = new ArrayList<>();
            points.subList(1, points.size()).forEach(point -> steps.add(new Step.To(point)));
            return new Path(points.get(0), steps, false, Optional.empty(), Optional.of(pencil));
        }

        static Path area(Ink fill, Pencil outline, Point start, Step... steps) {
            return new Path(start, List.of(steps), true, Optional.of(fill), Optional.of(outline));
        }
    }

    /** One piece of a path. */
    sealed interface Step {
        /** {@return where it ends} */
        Point end();

        /**
         * A straight piece.
         *
         * @param end where it ends
         */
        record To(Point end) implements Step {}

        /**
         * A quadratic Bézier curve.
         *
         * @param towards its control point
         * @param end where it ends
         */
        record Bend(Point towards, Point end) implements Step {}
    }

    /**
     * A round dot, filled or ringed.
     *
     * @param centre its centre
     * @param radius its radius
     * @param fill what fills it; empty for a ring
     * @param outline how its edge is drawn
     */
    record Disc(Point centre, double radius, Optional<Ink> fill, Optional<Pencil> outline) implements Shape {}

    /**
     * A rectangle with rounded corners.
     *
     * @param area where it lies
     * @param radius radius of the corners
     * @param fill what fills it
     * @param outline how its edge is drawn
     */
    record Box(Rect area, double radius, Optional<Ink> fill, Optional<Pencil> outline) implements Shape {}

    /**
     * A band along the river whose ends fade away over the water where its boundary may lie.
     *
     * @param area where it lies, the fading included
     * @param fadeLeft width over which its left end fades
     * @param fadeRight width over which its right end fades
     * @param ink its colour
     */
    record Band(Rect area, double fadeLeft, double fadeRight, Ink ink) implements Shape {}

    /**
     * Water that nobody walked, hatched so that it is never taken for empty water.
     *
     * @param area where it lies
     */
    record Hatch(Rect area) implements Shape {
        /** The distance from one slanting line to the next, to the right and downwards, in pixels. */
        public static final double SPACING = 7;

        /** {@return the slanting lines, cut to the area; the same lines wherever the area begins, so neighbours meet} */
        public List<Line> lines() {
            List<Line> lines = new ArrayList<>();
            Pencil pencil = Pencil.solid(Ink.HATCHING, 1);
            double first = Math.ceil((area.x() + area.y()) / SPACING) * SPACING;
            for (double sum = first; sum <= area.right() + area.bottom(); sum += SPACING) {
                double left = Math.max(area.x(), sum - area.bottom());
                double right = Math.min(area.right(), sum - area.y());
                if (right > left) {
                    lines.add(new Line(new Point(left, sum - left), new Point(right, sum - right), pencil));
                }
            }
            return lines;
        }
    }

    /**
     * Words.
     *
     * @param at the point on the base line that {@code anchor} names
     * @param text the words, in one line
     * @param anchor which part of the text stands at the point
     * @param type size and weight
     * @param ink colour
     */
    record Label(Point at, String text, Anchor anchor, Lettering type, Ink ink) implements Shape {
        /** {@return the room that the words take} */
        public Rect bounds() {
            double width = TextWidths.of(text, type);
            double left = switch (anchor) {
                case START -> at.x();
                case MIDDLE -> at.x() - width / 2;
                case END -> at.x() - width;
            };
            return new Rect(left, at.y() - 0.76 * type.size(), width, type.size());
        }

        /**
         * {@return the same words, cut with an ellipsis where they are wider than their room}
         *
         * @param room the room, in pixels
         */
        public Label within(double room) {
            return new Label(at, TextWidths.cut(text, type, room), anchor, type, ink);
        }
    }

    /** Which part of a text stands at its point. */
    enum Anchor {
        /** Its first letter. */
        START,
        /** Its middle. */
        MIDDLE,
        /** Its last letter. */
        END
    }

    /** The sizes of type on a drawing. */
    enum Lettering {
        /** Names and dates. */
        BODY(14, false),
        /** Names that matter. */
        STRONG(14, true),
        /** Numbers on axes, and remarks. */
        SMALL(12.5, false);

        private final double size;
        private final boolean semibold;

        Lettering(double size, boolean semibold) {
            this.size = size;
            this.semibold = semibold;
        }

        /** {@return the size, in pixels} */
        public double size() {
            return size;
        }

        /** {@return whether it is the heavier of the two weights} */
        public boolean semibold() {
            return semibold;
        }
    }

    /**
     * One sighting, by the field's own symbol.
     *
     * @param centre where it stands
     * @param symbol the symbol
     * @param ink {@link Ink#INK}, or {@link Ink#MUTED} for a record that made no territory
     * @param count individuals
     */
    record Mark(Point centre, SightingSymbol symbol, Ink ink, int count) implements Shape {
        /** {@return the simple shapes that make it up} */
        public List<Shape> parts() {
            return symbol.parts(centre, ink, count);
        }
    }

    /**
     * Sightings too close together to be drawn one by one.
     *
     * @param centre where their tablet stands
     * @param crowd how many they are, and of what
     */
    record Tablet(Point centre, Crowd crowd) implements Shape {
        /** {@return the simple shapes that make it up} */
        public List<Shape> parts() {
            return crowd.parts(centre);
        }
    }
}

package org.ouzelbook.ui.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.ui.app.FieldWater;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Ink;
import org.ouzelbook.ui.strip.Pencil;
import org.ouzelbook.ui.strip.Picture;
import org.ouzelbook.ui.strip.Point;
import org.ouzelbook.ui.strip.Rect;
import org.ouzelbook.ui.strip.Shape;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;
import org.ouzelbook.ui.strip.Shape.Step;

/**
 * The strip of a field sheet: the water pulled straight and set upright, upstream at the top, so that beside every place there is
 * a line to write on. Landmarks at the left, km at the water, columns for what is written at the right.
 */
final class SheetStrip {
    /** Pixels of the drawing to a millimetre of paper. */
    static final double PER_MM = 4;

    private static final double WIDTH = 190 * PER_MM;
    private static final double TOP = 26;
    private static final double FOOT = 12;
    private static final double NAMES = 150;
    private static final double WATER = 216;
    private static final double WRITING = 242;
    private static final double TOGETHER = 560;
    private static final double BACK = 660;

    /** A line to write on is at least this high: about 8 mm, for cold fingers. */
    private static final double LINE = 8 * PER_MM;

    /** Ticks stand at least this far apart. */
    private static final double TICK = 3.5 * PER_MM;

    /** How far lines and ticks may be from each other, in metres. */
    private static final List<Integer> STEPS = List.of(5, 10, 20, 50, 100, 200, 500, 1000);

    /** Half the room of the arrow. */
    private static final double ARROW = 14;

    /** A confluence that is kept as a landmark so near the mouth of a tributary is that mouth. Common practice, no source. */
    private static final double SAME_MOUTH_METRES = 100;

    private static final Pencil THIN = new Pencil(Ink.GRID, 1, false);
    private static final Pencil INK = new Pencil(Ink.INK, 1.6, false);

    private final FieldWater water;
    private final FieldWater.Walk walk;
    private final Stretch shown;
    private final double height;
    private final List<Shape> shapes = new ArrayList<>();

    /**
     * @param water the rivers and landmarks
     * @param walk what is walked
     * @param shown the part of it that this page shows
     * @param heightMm height of the drawing, in mm
     */
    SheetStrip(FieldWater water, FieldWater.Walk walk, Stretch shown, double heightMm) {
        this.water = water;
        this.walk = walk;
        this.shown = shown;
        this.height = heightMm * PER_MM;
    }

    Picture picture() {
        headings();
        lines();
        stream();
        arrow(names());
        String title = Texts.of("sheet.strip.title", walk.name(), shown);
        return new Picture(WIDTH, height, shapes, title, title);
    }

    private double y(double metres) {
        double share = (metres - shown.lower().metres()) / shown.length();
        return height - FOOT - share * (height - TOP - FOOT);
    }

    private void headings() {
        heading(0, "sheet.strip.upstream");
        heading(WRITING + 6, "sheet.strip.write");
        heading(TOGETHER + 6, "sheet.strip.together");
        heading(BACK + 6, "sheet.strip.back");
        for (double x : new double[] {WRITING, TOGETHER, BACK, WIDTH - 1}) {
            shapes.add(new Shape.Line(new Point(x, 4), new Point(x, height - FOOT), new Pencil(Ink.WALKED, 1, false)));
        }
    }

    private void heading(double x, String key) {
        shapes.add(new Shape.Label(new Point(x, 15), Texts.of(key), Anchor.START, Lettering.SMALL, Ink.INK));
    }

    /** Lines to write on and the km in figures, as many as leave room for a pencil; ticks between them. */
    private void lines() {
        int line = step(LINE);
        int tick = Math.min(line, step(TICK));
        int strong = line < 100 ? 100 : 1000;
        long first = (long) Math.ceil(shown.lower().metres() / tick - 1e-6);
        long last = (long) Math.floor(shown.upper().metres() / tick + 1e-6);
        for (long i = first; i <= last; i++) {
            long metres = i * tick;
            double y = Math.round(y((double) metres)) + 0.5;
            double length = metres % strong == 0 ? 12 : metres % (strong / 2) == 0 ? 8 : 5;
            shapes.add(new Shape.Line(new Point(WATER + 9, y), new Point(WATER + 9 + length, y), INK));
            if (metres % line == 0) {
                shapes.add(new Shape.Line(new Point(WRITING, y), new Point(WIDTH, y), THIN));
                shapes.add(new Shape.Label(
                        new Point(WATER - 15, y + 4.5),
                        String.format(Locale.ROOT, line < 100 ? "%.2f" : "%.1f", metres / 1000.0),
                        Anchor.END,
                        metres % strong == 0 ? Lettering.STRONG : Lettering.SMALL,
                        Ink.INK));
            }
        }
    }

    /** The smallest step, in metres, that takes so many pixels or more; the largest where none does. */
    private int step(double pixels) {
        double perMetre = (height - TOP - FOOT) / shown.length();
        return STEPS.stream()
                .filter(step -> step * perMetre >= pixels)
                .findFirst()
                .orElse(STEPS.get(STEPS.size() - 1));
    }

    private void stream() {
        double top = y(shown.upper().metres());
        double bottom = y(shown.lower().metres());
        shapes.add(new Shape.Box(
                new Rect(WATER - 6, top, 12, bottom - top),
                0,
                Optional.of(Ink.WATER),
                Optional.of(new Pencil(Ink.INK, 1, false))));
    }

    /** An arrow shows which way the water runs, as near the middle as the landmarks leave room. */
    private void arrow(List<SheetNames.Name> names) {
        double middle = (TOP + height - FOOT) / 2;
        IntStream.range(0, (int) (middle - TOP - ARROW))
                .boxed()
                .flatMap(off -> Stream.of(middle + off, middle - off))
                .filter(y -> names.stream().allMatch(name -> Math.abs(name.y() - y) >= ARROW))
                .findFirst()
                .ifPresent(y -> arrow(WATER, y));
    }

    private void arrow(double x, double y) {
        shapes.add(new Shape.Path(
                new Point(x - 4, y - 6),
                List.of(new Step.To(new Point(x, y + 6)), new Step.To(new Point(x + 4, y - 6))),
                false,
                Optional.empty(),
                Optional.of(INK)));
    }

    private List<SheetNames.Name> names() {
        List<SheetNames.Name> names = new ArrayList<>();
        List<Chainage> mouths = new ArrayList<>();
        for (River river : water.joining(walk)) {
            river.mouth().filter(mouth -> shown.contains(mouth.chainage())).ifPresent(mouth -> {
                mouths.add(mouth.chainage());
                names.add(new SheetNames.Name(
                        y(mouth.chainage().metres()), Texts.of("strip.joins", river.name()), LandmarkKind.CONFLUENCE));
            });
        }
        for (Landmark landmark : water.along(walk)) {
            Chainage at = landmark.place().chainage();
            boolean told = landmark.kind() == LandmarkKind.CONFLUENCE
                    && mouths.stream().anyMatch(mouth -> Math.abs(mouth.metres() - at.metres()) <= SAME_MOUTH_METRES);
            if (shown.contains(at) && !told) {
                names.add(new SheetNames.Name(y(at.metres()), landmark.name(), landmark.kind()));
            }
        }
        names.sort(Comparator.comparingDouble(SheetNames.Name::y));
        shapes.addAll(new SheetNames(names, NAMES, TOP, height - FOOT + 4).shapes());
        names.forEach(name -> symbol(name.kind(), name.y()));
        return names;
    }

    private void symbol(LandmarkKind kind, double y) {
        double left = WATER - 10;
        double right = WATER + 10;
        switch (kind) {
            case BRIDGE -> {
                across(left, right, y - 2.5, INK);
                across(left, right, y + 2.5, INK);
            }
            case WEIR ->
                shapes.add(new Shape.Path(
                        new Point(left, y - 3),
                        List.of(
                                new Step.To(new Point(WATER - 3, y + 3)),
                                new Step.To(new Point(WATER + 3, y - 3)),
                                new Step.To(new Point(right, y + 3))),
                        false,
                        Optional.empty(),
                        Optional.of(INK)));
            case FALL -> across(left, right, y, new Pencil(Ink.INK, 4, false));
            case WALL ->
                shapes.add(new Shape.Line(
                        new Point(right, y - 7), new Point(right, y + 7), new Pencil(Ink.INK, 3, false)));
            case ROCK -> shapes.add(new Shape.Disc(new Point(WATER, y), 5, Optional.of(Ink.STONE), Optional.of(INK)));
            case CONFLUENCE ->
                shapes.add(new Shape.Line(
                        new Point(WATER - 6, y), new Point(WATER - 22, y - 10), new Pencil(Ink.INK, 3, false)));
            case OTHER -> shapes.add(new Shape.Disc(new Point(WATER, y), 2.5, Optional.of(Ink.INK), Optional.empty()));
        }
    }

    private void across(double left, double right, double y, Pencil pencil) {
        shapes.add(new Shape.Line(new Point(left, y), new Point(right, y), pencil));
    }
}

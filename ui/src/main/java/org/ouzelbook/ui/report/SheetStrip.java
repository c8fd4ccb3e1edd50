package org.ouzelbook.ui.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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
    private static final double WATER = 212;
    private static final double WRITING = 238;
    private static final double TOGETHER = 560;
    private static final double BACK = 660;
    private static final double CLOSEST_NAMES = 16;

    /** A line to write on is at least this high: about 8 mm, for cold fingers. */
    private static final double LINE = 8 * PER_MM;

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

    private record Name(double y, String text, LandmarkKind kind) {}

    Picture picture() {
        headings();
        lines();
        stream();
        names();
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

    /** Ticks every 100 m, a line to write on as often as fits, and the km in figures. */
    private void lines() {
        double perHundred = (height - TOP - FOOT) / shown.length() * 100;
        int each = 1;
        while (each * perHundred < LINE && each < 10) {
            each = each == 1 ? 2 : each == 2 ? 5 : 10;
        }
        long first = (long) Math.ceil(shown.lower().metres() / 100 - 1e-6);
        long last = (long) Math.floor(shown.upper().metres() / 100 + 1e-6);
        for (long hundred = first; hundred <= last; hundred++) {
            double y = Math.round(y(hundred * 100.0)) + 0.5;
            boolean written = hundred % each == 0;
            double tick = hundred % 10 == 0 ? 12 : hundred % 5 == 0 ? 8 : 5;
            shapes.add(new Shape.Line(new Point(WATER + 9, y), new Point(WATER + 9 + tick, y), INK));
            if (written) {
                shapes.add(new Shape.Line(new Point(WRITING, y), new Point(WIDTH, y), THIN));
                shapes.add(new Shape.Label(
                        new Point(WATER - 12, y + 4.5),
                        String.format(Locale.ROOT, "%.1f", hundred / 10.0),
                        Anchor.END,
                        hundred % 10 == 0 ? Lettering.STRONG : Lettering.SMALL,
                        Ink.INK));
            }
        }
    }

    private void stream() {
        double top = y(shown.upper().metres());
        double bottom = y(shown.lower().metres());
        shapes.add(new Shape.Box(
                new Rect(WATER - 6, top, 12, bottom - top),
                0,
                Optional.of(Ink.WATER),
                Optional.of(new Pencil(Ink.INK, 1, false))));
        arrow(WATER, (top + bottom) / 2);
    }

    /** Which way the water runs. */
    private void arrow(double x, double y) {
        shapes.add(new Shape.Path(
                new Point(x - 4, y - 6),
                List.of(new Step.To(new Point(x, y + 6)), new Step.To(new Point(x + 4, y - 6))),
                false,
                Optional.empty(),
                Optional.of(INK)));
    }

    private void names() {
        List<Name> names = new ArrayList<>();
        for (River river : water.joining(walk)) {
            river.mouth()
                    .filter(mouth -> shown.contains(mouth.chainage()))
                    .ifPresent(mouth -> names.add(new Name(
                            y(mouth.chainage().metres()),
                            Texts.of("strip.joins", river.name()),
                            LandmarkKind.CONFLUENCE)));
        }
        for (Landmark landmark : water.along(walk)) {
            boolean told = landmark.kind() == LandmarkKind.CONFLUENCE && !names.isEmpty();
            if (shown.contains(landmark.place().chainage()) && !told) {
                names.add(new Name(y(landmark.place().chainage().metres()), landmark.name(), landmark.kind()));
            }
        }
        names.sort(Comparator.comparingDouble(Name::y));
        double[] places = names.stream().mapToDouble(Name::y).toArray();
        for (int i = 1; i < places.length; i++) {
            places[i] = Math.max(places[i], places[i - 1] + CLOSEST_NAMES);
        }
        double lowest = height - FOOT + 4;
        for (int i = places.length - 1; i >= 0; i--) {
            places[i] = Math.min(places[i], lowest);
            lowest = places[i] - CLOSEST_NAMES;
        }
        for (int i = 0; i < places.length; i++) {
            name(names.get(i), places[i]);
        }
    }

    private void name(Name name, double at) {
        shapes.add(label(name.text(), at + 4.5));
        shapes.add(new Shape.Line(
                new Point(NAMES + 4, at), new Point(NAMES + 16, name.y()), new Pencil(Ink.INK, 1, false)));
        symbol(name.kind(), name.y());
    }

    /** The name, cut where there is no room for it. */
    private static Shape.Label label(String name, double y) {
        Shape.Label whole = new Shape.Label(new Point(NAMES, y), name, Anchor.END, Lettering.BODY, Ink.INK);
        return whole.bounds().x() >= 0 || name.length() < 5
                ? whole
                : label(name.substring(0, name.length() - 2).stripTrailing() + "…", y);
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

package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;
import org.ouzelbook.ui.strip.Shape.Step;

/** A river pulled straight: its ribbon, the landmarks along it, the streams that join, and the km from its mouth. */
final class Ribbon {
    /** Height of the ribbon with its names above and its km below, in pixels. */
    static final double HEIGHT = 74;

    private static final double CENTRE = 36;
    private static final double SYMBOL_ROOM = 18;

    /** No name takes more of the ribbon, in pixels: the others are wanted, too. */
    private static final double LONGEST = 170;

    /** A name that has no room is cut to this width, in pixels, and tried again. */
    private static final double SHORT = 76;

    private static final double SAME_PLACE_METRES = 100;
    private static final double[] TICK_STEPS_KM = {0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500};

    private final Sheet sheet;
    private final Across across;
    private final Water water;
    private final double top;
    private final List<Double> symbols = new ArrayList<>();

    Ribbon(Sheet sheet, Across across, Water water, double top) {
        this.sheet = sheet;
        this.across = across;
        this.water = water;
        this.top = top;
    }

    /** A name wanted above the ribbon. */
    private record Name(double x, String text, int rank, LandmarkKind kind, Optional<Subject> subject) {}

    /**
     * Draws everything.
     *
     * @param landmarks landmarks of any river
     * @param waters every river, of which some may join this one
     */
    void draw(List<Landmark> landmarks, Waters waters) {
        stream();
        gutter();
        names(landmarks, waters);
    }

    private double middle() {
        return top + CENTRE;
    }

    private void stream() {
        double left = across.clipped(across.x(water.from()));
        double right = across.clipped(across.x(water.to()));
        if (right - left < 1) {
            return;
        }
        double anchor = across.x(water.from());
        List<Point> points = new ArrayList<>();
        for (double x = left; x < right; x += 8) {
            points.add(new Point(x, wave(x - anchor)));
        }
        points.add(new Point(right, wave(right - anchor)));
        sheet.draw(Shape.Path.through(Pencil.solid(Ink.WATER, 15), points));
        sheet.draw(Shape.Path.through(Pencil.solid(Ink.STREAM, 1.6), points));
    }

    private double wave(double along) {
        return middle() + 2.6 * Math.sin(along / 31) + 1.2 * Math.sin(along / 83);
    }

    private void gutter() {
        double right = across.left() - 14;
        String name = TextWidths.cut(water.river().name(), Lettering.STRONG, right - 4);
        sheet.write(new Shape.Label(new Point(right, middle() + 5), name, Anchor.END, Lettering.STRONG, Ink.INK));
        sheet.write(new Shape.Label(
                new Point(right, top + HEIGHT - 8),
                Texts.of("strip.kmFromMouth"),
                Anchor.END,
                Lettering.SMALL,
                Ink.MUTED));
    }

    private void names(List<Landmark> landmarks, Waters waters) {
        List<Name> names = new ArrayList<>();
        for (River river : waters.rivers()) {
            river.mouth()
                    .filter(mouth -> mouth.riverId().equals(water.river().id()))
                    .ifPresent(mouth -> add(
                            names,
                            water.metres(mouth.chainage()),
                            Texts.of(waters.isFolded(river.id()) ? "strip.joinsFolded" : "strip.joins", river.name()),
                            LandmarkKind.CONFLUENCE,
                            Optional.of(new Subject.OfRiver(river.id()))));
        }
        List<Name> confluences = List.copyOf(names);
        for (Landmark landmark : landmarks) {
            if (landmark.place().riverId().equals(water.river().id())) {
                double metres = water.metres(landmark.place().chainage());
                boolean known = landmark.kind() == LandmarkKind.CONFLUENCE
                        && confluences.stream()
                                .anyMatch(name -> Math.abs(across.x(metres) - name.x())
                                        <= SAME_PLACE_METRES / across.metresPerPixel());
                if (!known) {
                    add(
                            names,
                            metres,
                            landmark.name(),
                            landmark.kind(),
                            Optional.of(new Subject.OfLandmark(landmark.id())));
                }
            }
        }
        names.sort(Comparator.comparingInt(Name::rank).thenComparingDouble(Name::x));
        names.forEach(this::name);
    }

    private void add(List<Name> names, double metres, String text, LandmarkKind kind, Optional<Subject> subject) {
        if (across.shows(metres)) {
            names.add(new Name(across.x(metres), text, rank(kind), kind, subject));
        }
    }

    private static int rank(LandmarkKind kind) {
        return switch (kind) {
            case CONFLUENCE -> 0;
            case BRIDGE -> 1;
            case WEIR, FALL -> 2;
            case ROCK -> 3;
            case WALL -> 4;
            case OTHER -> 5;
        };
    }

    private void name(Name name) {
        String text = TextWidths.cut(name.text(), Lettering.SMALL, LONGEST);
        double half = TextWidths.of(text, Lettering.SMALL) / 2;
        double x = Math.max(across.left() + half - 20, Math.min(across.right() + 20 - half, name.x()));
        // Two rivers may join at almost one place, and neither may be missing.
        if (name.kind() == LandmarkKind.CONFLUENCE
                || symbols.stream().allMatch(other -> Math.abs(other - name.x()) >= SYMBOL_ROOM)) {
            LandmarkSymbol.parts(name.kind(), name.x(), middle()).forEach(sheet::draw);
            symbols.add(name.x());
        }
        boolean whole = write(text, x);
        boolean written = whole || write(TextWidths.cut(name.text(), Lettering.SMALL, SHORT), name.x());
        if (written && name.kind() != LandmarkKind.CONFLUENCE) {
            sheet.draw(new Shape.Line(
                    new Point(name.x(), top + 18), new Point(name.x(), top + 24), Pencil.solid(Ink.WALKED, 1)));
        }
        double reach = whole ? Math.max(9, half) : written ? SHORT / 2 : 9;
        double middle = whole ? x : name.x();
        name.subject()
                .ifPresent(subject -> sheet.answer(
                        new HitArea(new Rect(middle - reach, top, 2 * reach, CENTRE + 12), subject, name::text)));
    }

    private boolean write(String text, double x) {
        return sheet.write(new Shape.Label(new Point(x, top + 14), text, Anchor.MIDDLE, Lettering.SMALL, Ink.INK));
    }

    /**
     * Draws the km and, down to the given y, a thin line below each.
     *
     * @param bottom where the lines end
     */
    void kilometres(double bottom) {
        double step = tickStepKm();
        double firstKm = water.extent().lower().km();
        double lastKm = water.extent().upper().km();
        for (long i = (long) Math.ceil(firstKm / step - 1e-9); i * step <= lastKm + 1e-9; i++) {
            double metres = water.mouthMetres() + i * step * 1000;
            if (across.shows(metres)) {
                double x = across.x(metres);
                sheet.write(new Shape.Label(
                        new Point(x, top + HEIGHT - 8),
                        kmText(i * step, step),
                        Anchor.MIDDLE,
                        Lettering.SMALL,
                        Ink.MUTED));
                sheet.draw(new Shape.Line(new Point(x, top + HEIGHT), new Point(x, bottom), Pencil.solid(Ink.GRID, 1)));
            }
        }
    }

    private double tickStepKm() {
        for (double step : TICK_STEPS_KM) {
            if (step * 1000 / across.metresPerPixel() >= 52) {
                return step;
            }
        }
        return 1000;
    }

    private static String kmText(double km, double step) {
        int decimals = step >= 1 ? 0 : step >= 0.1 ? 1 : 2;
        return String.format(Locale.ROOT, "%." + decimals + "f", km);
    }

    /**
     * Draws the elbows by which tributaries join the rivers above them on the paper; under everything else.
     *
     * @param ribbons every ribbon on the paper
     */
    static void elbows(List<Ribbon> ribbons) {
        for (Ribbon tributary : ribbons) {
            tributary
                    .water
                    .river()
                    .mouth()
                    .ifPresent(mouth -> ribbons.stream()
                            .filter(receiving -> receiving.water.river().id().equals(mouth.riverId()))
                            .forEach(tributary::elbowFrom));
        }
    }

    private void elbowFrom(Ribbon receiving) {
        double x = across.x(water.mouthMetres());
        if (x < across.left() || x > across.right()) {
            return;
        }
        double end = Math.max(x + 12, across.clipped(across.x(water.from())));
        double bend = receiving.middle() < middle() ? -14 : 14;
        sheet.draw(Shape.Path.open(
                Pencil.solid(Ink.WATER, 2),
                new Point(x, receiving.middle()),
                new Step.To(new Point(x, middle() + bend)),
                new Step.Bend(new Point(x, middle()), new Point(end, middle()))));
    }
}

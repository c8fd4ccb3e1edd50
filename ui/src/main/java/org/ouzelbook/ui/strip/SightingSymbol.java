package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Sighting;

/**
 * The symbol of a sighting, after those of hand-drawn territory maps: a ring is song, joined dots are a pair, a line below is
 * a call and two are alarm. What a bird carried decides the middle.
 *
 * @param middle what stands in the middle
 * @param sang whether a ring goes round it
 * @param underlines lines below: one for a call, two for alarm
 */
public record SightingSymbol(Middle middle, boolean sang, int underlines) {
    private static final Set<Activity> FOOD =
            Set.of(Activity.CARRYING_FOOD, Activity.CARRYING_FAECAL_SAC, Activity.FEEDING_YOUNG);
    private static final Set<Activity> MATERIAL = Set.of(Activity.CARRYING_MATERIAL, Activity.BUILDING);
    private static final Set<Age> YOUNG = Set.of(Age.DEPENDENT_JUVENILE, Age.INDEPENDENT_JUVENILE, Age.JUVENILE);

    /** What stands in the middle of a symbol. */
    public enum Middle {
        /** A bird. */
        ONE,
        /** Two birds or more. */
        PAIR,
        /** Nest material carried, or building. */
        MATERIAL,
        /** Food or a faecal sac carried. */
        FOOD,
        /** A young bird out of the nest. */
        YOUNG,
        /** A dead bird. */
        DEAD
    }

    /**
     * {@return the symbol of a sighting}
     *
     * @param sighting a sighting
     */
    static SightingSymbol of(Sighting sighting) {
        Set<Activity> activities = sighting.activities();
        int underlines = activities.contains(Activity.ALARM) ? 2 : activities.contains(Activity.CALLING) ? 1 : 0;
        return new SightingSymbol(middleOf(sighting), activities.contains(Activity.SINGING), underlines);
    }

    private static Middle middleOf(Sighting sighting) {
        Set<Activity> activities = sighting.activities();
        if (activities.contains(Activity.DEAD)) {
            return Middle.DEAD;
        }
        if (activities.stream().anyMatch(FOOD::contains)) {
            return Middle.FOOD;
        }
        if (activities.stream().anyMatch(MATERIAL::contains)) {
            return Middle.MATERIAL;
        }
        if (YOUNG.contains(sighting.age()) || activities.contains(Activity.DEPENDENT_YOUNG)) {
            return Middle.YOUNG;
        }
        return sighting.count() > 1 ? Middle.PAIR : Middle.ONE;
    }

    /** {@return half the width of the symbol, in pixels} */
    double reach() {
        return sang ? 9.5 : middle == Middle.PAIR ? 9 : 6.5;
    }

    /**
     * {@return the simple shapes of the symbol}
     *
     * @param at its middle
     * @param ink its ink
     * @param count individuals; written beside it from three up
     */
    List<Shape> parts(Point at, Ink ink, int count) {
        List<Shape> parts = new ArrayList<>();
        middle(parts, at, ink);
        if (sang) {
            parts.add(new Shape.Disc(at, middle == Middle.PAIR ? 10.5 : 8.5, Optional.empty(), pencil(ink, 1.5)));
        }
        for (int line = 0; line < underlines; line++) {
            double y = at.y() + (sang ? 12 : 8.5) + 3 * line;
            parts.add(new Shape.Line(new Point(at.x() - 5.5, y), new Point(at.x() + 5.5, y), Pencil.solid(ink, 1.4)));
        }
        if (count > 2) {
            Point beside = new Point(at.x() + reach() + 2, at.y() - 3);
            parts.add(new Shape.Label(beside, Integer.toString(count), Shape.Anchor.START, Shape.Lettering.SMALL, ink));
        }
        return parts;
    }

    private void middle(List<Shape> parts, Point at, Ink ink) {
        double x = at.x();
        double y = at.y();
        switch (middle) {
            case ONE -> parts.add(dot(at, 4.5, ink));
            case PAIR -> {
                Point left = new Point(x - 4.8, y);
                Point right = new Point(x + 4.8, y);
                parts.add(new Shape.Line(left, right, Pencil.solid(ink, 2)));
                parts.add(dot(left, 4, ink));
                parts.add(dot(right, 4, ink));
            }
            case MATERIAL ->
                parts.add(Shape.Path.area(
                        Ink.BUILDING,
                        Pencil.solid(ink, 1.2),
                        new Point(x, y - 6.5),
                        new Shape.Step.To(new Point(x + 6.5, y + 5)),
                        new Shape.Step.To(new Point(x - 6.5, y + 5))));
            case FOOD ->
                parts.add(new Shape.Box(new Rect(x - 5, y - 5, 10, 10), 0, Optional.of(Ink.PROOF), pencil(ink, 1.2)));
            case YOUNG -> parts.add(new Shape.Disc(at, 4.5, Optional.of(Ink.PAPER), pencil(ink, 1.8)));
            case DEAD -> {
                parts.add(
                        new Shape.Line(new Point(x - 4.5, y - 4.5), new Point(x + 4.5, y + 4.5), Pencil.solid(ink, 2)));
                parts.add(
                        new Shape.Line(new Point(x - 4.5, y + 4.5), new Point(x + 4.5, y - 4.5), Pencil.solid(ink, 2)));
            }
        }
    }

    private static Shape.Disc dot(Point at, double radius, Ink ink) {
        return new Shape.Disc(at, radius, Optional.of(ink), Optional.empty());
    }

    private static Optional<Pencil> pencil(Ink ink, double width) {
        return Optional.of(Pencil.solid(ink, width));
    }
}

package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Step;

/** The sightings of a season: their symbols, who was seen at once, and where birds flew and turned back. */
final class SightingLayer {
    /** With more symbols than this in view a thin mark per pixel says more. */
    private static final int MOST_SYMBOLS = 1500;

    private static final double APART = 11;

    /** An arc of fewer pixels would be a blot. */
    private static final double SHORTEST_ARC = 14;

    private final Sheet sheet;
    private final Across across;
    private final List<Placed> all = new ArrayList<>();
    private final Map<UUID, Placed> placed = new HashMap<>();
    private final Map<Double, List<Rect>> standing = new HashMap<>();

    SightingLayer(Sheet sheet, Across across) {
        this.sheet = sheet;
        this.across = across;
    }

    private record Placed(Sighting sighting, Point at, boolean visible, Water water) {}

    /**
     * Finds the place of each sighting.
     *
     * @param water their river
     * @param rounds the rows that its dates fall into
     * @param rows where those rows lie
     * @param sightings sightings on that river
     */
    void place(Water water, Rounds rounds, DateRows rows, List<Sighting> sightings) {
        for (Sighting sighting : sightings) {
            double metres = water.metres(sighting.place().chainage());
            boolean visible = across.shows(metres);
            double row = rows.y(rounds.row(sighting.date()));
            Point at = new Point(across.x(metres), row);
            all.add(new Placed(sighting, at, visible, water));
        }
    }

    /**
     * Draws everything that was placed.
     *
     * @param ofTerritories keys of the sightings that belong to an accepted territory
     * @param meant keys of the sightings to point out
     */
    void draw(Set<UUID> ofTerritories, Set<UUID> meant) {
        if (all.stream().filter(Placed::visible).count() > MOST_SYMBOLS) {
            specks(ofTerritories);
            return;
        }
        all.forEach(one -> placed.put(one.sighting().id(), one));
        List<Placed> visible = all.stream()
                .filter(Placed::visible)
                .sorted(Comparator.comparingDouble(one -> one.at().x()))
                .toList();
        visible = visible.stream().map(this::besideOthers).toList();
        visible.forEach(one -> placed.put(one.sighting().id(), one));
        visible.forEach(one -> links(one, meant));
        visible.forEach(this::flight);
        for (Placed one : visible) {
            UUID id = one.sighting().id();
            if (meant.contains(id)) {
                sheet.draw(new Shape.Disc(
                        one.at(), 14, Optional.of(Ink.POSSIBLE), Optional.of(Pencil.solid(Ink.CONFIRMED, 1.2))));
            }
            Ink ink = ofTerritories.contains(id) || meant.contains(id) ? Ink.INK : Ink.MUTED;
            SightingSymbol symbol = SightingSymbol.of(one.sighting());
            sheet.draw(new Shape.Mark(one.at(), symbol, ink, one.sighting().count()));
            sheet.answer(new HitArea(
                    new Rect(one.at().x() - 10, one.at().y() - 10, 20, 20), new Subject.OfSighting(id), aloud(one)));
        }
    }

    private static String aloud(Placed one) {
        Sighting sighting = one.sighting();
        return Texts.of(
                "strip.sighting",
                one.water().river().name(),
                sighting.place().chainage(),
                sighting.date(),
                sighting.count(),
                sighting.activities().isEmpty()
                        ? Texts.of("strip.seen")
                        : sighting.activities().stream().sorted().toList());
    }

    private void specks(Set<UUID> ofTerritories) {
        Set<Point> taken = new HashSet<>();
        for (Placed one : all) {
            if (!one.visible()) {
                continue;
            }
            Point pixel = new Point(Math.round(one.at().x()) + 0.5, one.at().y());
            if (taken.add(pixel)) {
                Ink ink = ofTerritories.contains(one.sighting().id()) ? Ink.INK : Ink.MUTED;
                sheet.draw(new Shape.Line(
                        new Point(pixel.x(), pixel.y() - 4),
                        new Point(pixel.x(), pixel.y() + 4),
                        Pencil.solid(ink, 1)));
            }
        }
    }

    /** Moves a symbol up or down where another already stands, so that both are seen. */
    private Placed besideOthers(Placed one) {
        double half = SightingSymbol.of(one.sighting()).reach();
        List<Rect> others = standing.computeIfAbsent(one.at().y(), row -> new ArrayList<>());
        for (double dy : new double[] {0, -APART, APART}) {
            Rect room = new Rect(one.at().x() - half, one.at().y() + dy - 4, 2 * half, 8);
            if (others.stream().noneMatch(room::overlaps)) {
                others.add(room);
                return new Placed(
                        one.sighting(), new Point(one.at().x(), one.at().y() + dy), true, one.water());
            }
        }
        return one;
    }

    private void links(Placed one, Set<UUID> meant) {
        for (UUID otherId : one.sighting().simultaneousWith()) {
            Placed other = placed.get(otherId);
            boolean first =
                    other != null && (!other.visible() || one.sighting().id().compareTo(otherId) < 0);
            if (other != null && first) {
                boolean pointedOut =
                        meant.contains(otherId) && meant.contains(one.sighting().id());
                Point end = new Point(across.clipped(other.at().x()), other.at().y());
                if (Math.abs(end.x() - one.at().x()) < SHORTEST_ARC) {
                    sheet.draw(new Shape.Line(one.at(), end, Pencil.dotted(Ink.INK, 2)));
                    continue;
                }
                double lift =
                        Math.min(30, 12 + 0.05 * Math.abs(end.x() - one.at().x()));
                Point top = new Point(
                        (one.at().x() + end.x()) / 2, Math.min(one.at().y(), end.y()) - 2 * lift + 6);
                sheet.draw(Shape.Path.open(
                        Pencil.dotted(pointedOut ? Ink.CONFIRMED : Ink.INK, 2), one.at(), new Step.Bend(top, end)));
            }
        }
    }

    private void flight(Placed one) {
        one.sighting().flewTo().ifPresent(to -> flight(one, to));
    }

    private void flight(Placed one, Chainage to) {
        double wanted = across.x(one.water().metres(to));
        double x = across.clipped(wanted);
        double y = one.at().y();
        double way = Math.signum(x - one.at().x());
        Pencil pencil = Pencil.solid(Ink.INK, 1.5);
        double lift = Math.min(34, 14 + 0.1 * Math.abs(x - one.at().x()));
        boolean stops = one.sighting().turnedBack() && wanted == x;
        if (stops) {
            sheet.draw(new Shape.Line(new Point(x, y - 11), new Point(x, y + 11), Pencil.solid(Ink.INK, 3)));
        }
        if (Math.abs(x - one.at().x()) < SHORTEST_ARC) {
            return;
        }
        Point end = new Point(x - (stops ? way * 2 : 0), y - 3);
        sheet.draw(Shape.Path.open(
                pencil,
                new Point(one.at().x(), y - 5),
                new Step.Bend(new Point((one.at().x() + x) / 2, y - 5 - lift), end)));
        sheet.draw(Shape.Path.through(
                pencil,
                List.of(
                        new Point(end.x() - way * 6.5, end.y() - 3.5),
                        end,
                        new Point(end.x() - way * 1.5, end.y() - 7.5))));
    }
}

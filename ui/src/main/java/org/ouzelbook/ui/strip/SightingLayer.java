package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Step;

/**
 * The sightings in view, each by its symbol; where symbols would lie over each other, a {@link Crowd}. Dotted lines join birds
 * that were seen at once, arcs show where birds flew and turned back.
 */
final class SightingLayer {
    private static final double LANE = 11;

    /** An arc of fewer pixels would be a blot. */
    private static final double SHORTEST_ARC = 14;

    /** More sightings than this never fit side by side into one cell. */
    private static final int MOST_IN_CELL = 16;

    private final Sheet sheet;
    private final Across across;
    private final List<Placed> placed = new ArrayList<>();
    private final Map<UUID, Placed> byId = new HashMap<>();
    private final List<Tablet> tablets = new ArrayList<>();

    SightingLayer(Sheet sheet, Across across) {
        this.sheet = sheet;
        this.across = across;
    }

    /**
     * Where a row lies.
     *
     * @param y its line, in pixels
     * @param lanes how many symbols have room above each other; odd, 1 or more
     * @param river its river
     * @param metres the water that lies under it; empty where the axis is no river
     */
    record Line(double y, int lanes, String river, Optional<Water> metres) {}

    private record Placed(Sighting sighting, SightingSymbol symbol, Point at, Line line) {}

    private record Tablet(Crowd crowd, Point at, HitArea area) {}

    /**
     * Finds a place for each sighting of a row that is in view.
     *
     * @param row the sightings
     * @param line where the row lies
     */
    void place(SightingRow row, Line line) {
        int end = row.first(Math.nextUp(across.to()));
        double cell = cell();
        List<Rect> standing = new ArrayList<>();
        int i = row.first(across.from());
        int crowdFrom = -1;
        while (i < end) {
            double border = (Math.floor(row.place(i) / cell) + 1) * cell;
            int next = Math.min(end, Math.max(i + 1, row.first(border)));
            if (next - i <= MOST_IN_CELL && sideBySide(row, i, next, line, standing)) {
                crowdFrom = -1;
            } else if (next - i > 1) {
                crowd(row, i, next, line, border - cell, border, standing);
                crowdFrom = i;
            } else if (crowdFrom >= 0) {
                // One alone is no crowd: it joins the one beside it.
                tablets.remove(tablets.size() - 1);
                standing.remove(standing.size() - 1);
                crowd(row, crowdFrom, next, line, border - 2 * cell, border, standing);
            } else {
                Placed alone =
                        new Placed(row.sighting(i), row.symbol(i), new Point(across.x(row.place(i)), line.y()), line);
                placed.add(alone);
                byId.put(alone.sighting().id(), alone);
            }
            i = next;
        }
    }

    /** A power of two of the axis's unit, so that crowds stay together while the paper moves. */
    private double cell() {
        return Math.pow(2, Math.ceil(Math.log((Crowd.WIDEST + 2) * across.metresPerPixel()) / Math.log(2)));
    }

    private boolean sideBySide(SightingRow row, int from, int to, Line line, List<Rect> standing) {
        List<Placed> found = new ArrayList<>();
        int before = standing.size();
        for (int i = from; i < to; i++) {
            Optional<Placed> one = free(row, i, line, standing);
            if (one.isEmpty()) {
                standing.subList(before, standing.size()).clear();
                return false;
            }
            found.add(one.get());
        }
        for (Placed one : found) {
            placed.add(one);
            byId.put(one.sighting().id(), one);
        }
        return true;
    }

    private Optional<Placed> free(SightingRow row, int i, Line line, List<Rect> standing) {
        double half = row.symbol(i).reach();
        double x = across.x(row.place(i));
        for (int lane = 0; lane < line.lanes(); lane++) {
            // On the line first, then above, then below, and so on outwards.
            double dy = (lane % 2 == 0 ? 1 : -1) * Math.ceil(lane / 2.0) * LANE;
            Rect room = new Rect(x - half, line.y() + dy - 4, 2 * half, 8);
            boolean taken = false;
            for (int k = standing.size() - 1; k >= 0 && !taken; k--) {
                taken = room.overlaps(standing.get(k));
            }
            if (!taken) {
                standing.add(room);
                return Optional.of(new Placed(row.sighting(i), row.symbol(i), new Point(x, line.y() + dy), line));
            }
        }
        return Optional.empty();
    }

    private void crowd(
            SightingRow row, int from, int to, Line line, double cellFrom, double cellTo, List<Rect> standing) {
        Crowd crowd = Crowd.of(row, from, to);
        double x = (across.x(row.place(from)) + across.x(row.place(to - 1))) / 2;
        // Within its own cell, so that no two tablets meet.
        double half = crowd.area(new Point(x, line.y())).width() / 2 + 1;
        double within = Math.min(across.x(cellTo) - half, Math.max(across.x(cellFrom) + half, x));
        Point at = new Point(within, line.y());
        Rect area = crowd.area(at);
        standing.add(area);
        Sighting first = row.sighting(from);
        Sighting last = row.sighting(to - 1);
        Subject subject = new Subject.OfCrowd(
                first.place().riverId(),
                Stretch.between(first.place().chainage(), last.place().chainage()),
                first.date(),
                last.date());
        tablets.add(new Tablet(crowd, at, new HitArea(area, subject, crowd::aloud)));
    }

    /**
     * Draws everything that found a place.
     *
     * @param ofTerritories keys of the sightings that belong to an accepted territory
     */
    void draw(Set<UUID> ofTerritories) {
        placed.forEach(this::links);
        placed.forEach(this::flight);
        for (Placed one : placed) {
            UUID id = one.sighting().id();
            Ink ink = ofTerritories.contains(id) ? Ink.INK : Ink.MUTED;
            sheet.draw(
                    new Shape.Mark(one.at(), one.symbol(), ink, one.sighting().count()));
            sheet.answer(new HitArea(
                    new Rect(one.at().x() - 10, one.at().y() - 10, 20, 20),
                    new Subject.OfSighting(id),
                    () -> aloud(one)));
        }
        for (Tablet tablet : tablets) {
            sheet.draw(new Shape.Tablet(tablet.at(), tablet.crowd()));
            sheet.answer(tablet.area());
        }
    }

    private static String aloud(Placed one) {
        Sighting sighting = one.sighting();
        return Texts.of(
                "strip.sighting",
                one.line().river(),
                sighting.place().chainage(),
                sighting.date(),
                sighting.count(),
                sighting.activities().isEmpty()
                        ? Texts.of("strip.seen")
                        : sighting.activities().stream().sorted().toList());
    }

    private void links(Placed one) {
        for (UUID otherId : one.sighting().simultaneousWith()) {
            Placed other = byId.get(otherId);
            if (other != null && one.sighting().id().compareTo(otherId) < 0) {
                link(one.at(), other.at());
            }
        }
    }

    private void link(Point start, Point end) {
        if (Math.abs(end.x() - start.x()) < SHORTEST_ARC) {
            sheet.draw(new Shape.Line(start, end, Pencil.dotted(Ink.INK, 2)));
            return;
        }
        double lift = Math.min(30, 12 + 0.05 * Math.abs(end.x() - start.x()));
        Point top = new Point((start.x() + end.x()) / 2, Math.min(start.y(), end.y()) - 2 * lift + 6);
        sheet.draw(Shape.Path.open(Pencil.dotted(Ink.INK, 2), start, new Step.Bend(top, end)));
    }

    private void flight(Placed one) {
        one.line().metres().ifPresent(water -> one.sighting().flewTo().ifPresent(to -> flight(one, water, to)));
    }

    private void flight(Placed one, Water water, Chainage to) {
        double wanted = across.x(water.metres(to));
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

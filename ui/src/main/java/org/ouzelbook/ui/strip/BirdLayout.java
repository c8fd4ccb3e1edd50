package org.ouzelbook.ui.strip;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;

/**
 * One bird's life: across, river km; down, the years, each from January above to December below. A line leads from one
 * certain reading to the next; readings that fit other birds too stand beside it with a question mark.
 */
final class BirdLayout {
    private static final double LEFT = 140;
    private static final double RIGHT = 30;
    private static final double BLOCK_GAP = 14;
    private static final double FOOT = 12;
    private static final double CLOSEST = 26;
    private static final double MOST = 160;

    private final BirdPlan plan;
    private final BirdScene scene;
    private final List<Water> waters;
    private final Across across;
    private final double width;
    private final double rowHeight;
    private final int firstYear;
    private final int years;
    private final Sheet sheet;

    BirdLayout(BirdPlan plan, Frame frame) {
        this.plan = plan;
        this.scene = plan.scene();
        this.waters = plan.waters();
        this.width = frame.width();
        this.across = new Across(LEFT, frame.width() - RIGHT, frame.from(), frame.to());
        List<TerritoryMap> maps = scene.maps();
        this.firstYear = maps.get(0).season();
        this.years = maps.get(maps.size() - 1).season() - firstYear + 1;
        double fixed = waters.size() * (Ribbon.HEIGHT + FOOT) + (waters.size() - 1) * BLOCK_GAP;
        this.rowHeight =
                Math.max(CLOSEST, Math.min(MOST, (frame.height() - fixed) / Math.max(1, waters.size() * years)));
        double height = Math.max(frame.height(), fixed + rowHeight * waters.size() * years);
        this.sheet = new Sheet(width, height);
    }

    private double top(int block) {
        return block * (Ribbon.HEIGHT + years * rowHeight + FOOT + BLOCK_GAP);
    }

    private double rowsTop(int block) {
        return top(block) + Ribbon.HEIGHT;
    }

    StripDrawing drawing() {
        List<Ribbon> ribbons = new ArrayList<>();
        for (Water water : waters) {
            ribbons.add(new Ribbon(sheet, across, water, top(ribbons.size())));
        }
        Ribbon.elbows(ribbons);
        for (int block = 0; block < waters.size(); block++) {
            double bottom = rowsTop(block) + years * rowHeight;
            for (int year = firstYear; year < firstYear + years; year++) {
                year(block, year);
            }
            ribbons.get(block).kilometres(bottom);
            ribbons.get(block).draw(scene.landmarks(), scene.waters());
            ringed(block);
        }
        life();
        return sheet.drawing(across, plan.words());
    }

    private void year(int block, int year) {
        Water water = waters.get(block);
        double top = rowsTop(block) + (year - firstYear) * rowHeight;
        Optional<TerritoryMap.RiverMap> map = scene.maps().stream()
                .filter(one -> one.season() == year)
                .flatMap(one -> one.rivers().stream())
                .filter(one -> one.river().id().equals(water.river().id()))
                .findFirst();
        sheet.draw(new Shape.Line(
                new Point(across.left(), top), new Point(across.right(), top), Pencil.solid(Ink.GRID, 1)));
        sheet.write(new Shape.Label(
                new Point(across.left() - 14, top + rowHeight / 2 + 4.5),
                Integer.toString(year),
                Anchor.END,
                Lettering.BODY,
                Ink.INK));
        sheet.answer(new HitArea(
                new Rect(0, top, width, rowHeight),
                new Subject.OfSeason(year, water.river().id()),
                () -> StripWords.year(scene, year)));
        List<Stretch> surveyed = map.map(TerritoryMap.RiverMap::surveyed).orElse(List.of());
        for (Stretch gap : Unwalked.of(water.extent(), surveyed)) {
            double left = across.clipped(across.x(water.metres(gap.lower())));
            double right = across.clipped(across.x(water.metres(gap.upper())));
            if (right - left >= 0.5) {
                sheet.draw(new Shape.Hatch(new Rect(left, top + 3, right - left, rowHeight - 6)));
            }
        }
        map.ifPresent(one -> one.territories().forEach(territory -> ground(water, year, territory, top)));
    }

    /** The territories in which it was read, faintly, with their letters. */
    private void ground(Water water, int year, Territory territory, double top) {
        boolean read = scene.readings().stream()
                .map(reading -> reading.sighting().id())
                .anyMatch(id -> territory.registrations().stream()
                        .anyMatch(one -> one.id().equals(id)));
        Fade fade = Fade.of(across, water, territory.stretch(), 8);
        if (!read || fade.right() <= across.left() || fade.left() >= across.right()) {
            return;
        }
        double left = across.clipped(fade.left());
        double right = across.clipped(fade.right());
        Rect area = new Rect(left, top + 2, right - left, rowHeight - 4);
        sheet.draw(new Shape.Band(
                area, Math.max(0, fade.coreLeft() - left), Math.max(0, right - fade.coreRight()), Ink.COLUMN));
        sheet.write(new Shape.Label(
                new Point(right + 5, top + rowHeight / 2 + 4),
                territory.id(),
                Anchor.START,
                Lettering.SMALL,
                Ink.MUTED));
        sheet.answer(new HitArea(
                area,
                new Subject.OfTerritory(year, water.river().id(), territory.id()),
                () -> StripWords.territory(territory)));
    }

    private void ringed(int block) {
        scene.bird()
                .ringed()
                .filter(day -> day.getYear() >= firstYear && day.getYear() < firstYear + years)
                .ifPresent(day -> {
                    double y = y(block, day);
                    sheet.draw(new Shape.Line(
                            new Point(across.left(), y), new Point(across.right(), y), Pencil.dotted(Ink.MUTED, 1.2)));
                    sheet.write(new Shape.Label(
                            new Point(across.right(), y - 5),
                            Texts.of("strip.bird.ringed", day),
                            Anchor.END,
                            Lettering.SMALL,
                            Ink.MUTED));
                });
    }

    private double y(int block, LocalDate day) {
        double share = (day.getDayOfYear() - 1) / (double) day.lengthOfYear();
        return rowsTop(block) + (day.getYear() - firstYear + share) * rowHeight;
    }

    private Optional<Point> at(Sighting sighting) {
        UUID river = sighting.place().riverId();
        for (int block = 0; block < waters.size(); block++) {
            Water water = waters.get(block);
            if (water.river().id().equals(river)) {
                double x = across.x(water.metres(sighting.place().chainage()));
                return Optional.of(new Point(x, y(block, sighting.date())));
            }
        }
        return Optional.empty();
    }

    private void life() {
        Optional<BirdScene.Reading> before = Optional.empty();
        for (BirdScene.Reading reading : scene.readings()) {
            if (reading.certain()) {
                before.ifPresent(earlier -> line(earlier.sighting(), reading.sighting()));
                before = Optional.of(reading);
            }
        }
        for (BirdScene.Reading reading : scene.readings()) {
            at(reading.sighting())
                    .filter(point -> point.x() >= across.left() && point.x() <= across.right())
                    .ifPresent(point -> mark(reading, point));
        }
    }

    private void line(Sighting from, Sighting to) {
        boolean sameRiver = from.place().riverId().equals(to.place().riverId());
        at(from).ifPresent(start -> at(to).ifPresent(end -> line(start, end, sameRiver)));
    }

    /** The part of the line that lies within the sides; dotted where it leads to another river. */
    private void line(Point from, Point to, boolean whole) {
        double least = Math.min(from.x(), to.x());
        double most = Math.max(from.x(), to.x());
        if (most < across.left() || least > across.right()) {
            return;
        }
        Point start = within(from, to);
        Point end = within(to, from);
        sheet.draw(new Shape.Line(
                start, end, whole ? Pencil.solid(Ink.CONFIRMED, 1.8) : Pencil.dotted(Ink.CONFIRMED, 1.8)));
    }

    private Point within(Point one, Point other) {
        double x = across.clipped(one.x());
        if (x == one.x() || other.x() == one.x()) {
            return one;
        }
        return new Point(x, one.y() + (other.y() - one.y()) * (x - one.x()) / (other.x() - one.x()));
    }

    private void mark(BirdScene.Reading reading, Point at) {
        Sighting sighting = reading.sighting();
        sheet.draw(new Shape.Mark(
                at, SightingSymbol.of(sighting), reading.certain() ? Ink.INK : Ink.MUTED, sighting.count()));
        if (!reading.certain()) {
            sheet.write(
                    new Shape.Label(new Point(at.x() + 10, at.y() - 4), "?", Anchor.START, Lettering.SMALL, Ink.MUTED));
        }
        sheet.answer(new HitArea(
                new Rect(at.x() - 10, at.y() - 8, 20, 16),
                new Subject.OfSighting(sighting.id()),
                () -> StripWords.reading(reading)));
    }
}

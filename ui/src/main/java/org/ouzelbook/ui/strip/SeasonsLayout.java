package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;

/** All seasons: across, river km; down, the years, with the count and its range beside each; river under river. */
final class SeasonsLayout {
    private static final double LEFT = 140;
    /** Room for the year, which stands left of its row. */
    private static final double LABEL = 66;

    private static final double COUNTS = 250;
    private static final double GAP = 40;
    private static final double ROOM_BELOW = 10;
    private static final double BLOCK_GAP = 14;
    private static final double CLOSEST = 20;
    private static final double MOST = 160;
    private static final double BAR = 14;
    private static final double SCORES_FROM = 34;

    /** How far a bar reaches beyond its outermost registrations, in pixels. */
    private static final double BEYOND = 6;

    private final SeasonsPlan plan;
    private final SeasonsScene scene;
    private final Across across;
    private final double width;
    private final double rowHeight;
    private final Sheet sheet;

    SeasonsLayout(SeasonsPlan plan, Frame frame) {
        this.plan = plan;
        this.scene = plan.scene();
        this.width = frame.width();
        this.across = new Across(LEFT, frame.width() - COUNTS - GAP, frame.from(), frame.to());
        int blocks = scene.waters().list().size();
        double fixed = blocks * (Ribbon.HEIGHT + ROOM_BELOW) + (blocks - 1) * BLOCK_GAP;
        this.rowHeight = Math.max(CLOSEST, Math.min(MOST, (frame.height() - fixed) / Math.max(1, blocks * years())));
        double height = Math.max(frame.height(), fixed + rowHeight * blocks * years());
        this.sheet = new Sheet(width, height);
    }

    private int firstYear() {
        return scene.maps().get(0).season();
    }

    private int years() {
        return scene.maps().get(scene.maps().size() - 1).season() - firstYear() + 1;
    }

    StripDrawing drawing() {
        List<Ribbon> ribbons = new ArrayList<>();
        double blockHeight = Ribbon.HEIGHT + years() * rowHeight + ROOM_BELOW + BLOCK_GAP;
        for (Water water : scene.waters().list()) {
            ribbons.add(new Ribbon(sheet, across, water, ribbons.size() * blockHeight));
        }
        Ribbon.elbows(ribbons);
        if (!scene.nests().isEmpty()) {
            sheet.write(new Shape.Label(
                    new Point(width - 4, 12), Texts.of("strip.private"), Anchor.END, Lettering.STRONG, Ink.NEST));
        }
        for (int i = 0; i < ribbons.size(); i++) {
            Water water = scene.waters().list().get(i);
            double top = i * blockHeight;
            double rowsTop = top + Ribbon.HEIGHT;
            double bottom = rowsTop + years() * rowHeight;
            ribbons.get(i).kilometres(bottom);
            ribbons.get(i).draw(scene.landmarks(), scene.waters());
            years(water, rowsTop);
            counts(water, top, rowsTop, bottom);
        }
        return sheet.drawing(across, plan.words());
    }

    private double rowMiddle(double rowsTop, int year) {
        return Math.round(rowsTop + (year - firstYear() + 0.5) * rowHeight) + 0.5;
    }

    private Optional<TerritoryMap.RiverMap> riverMap(Water water, int year) {
        return scene.maps().stream()
                .filter(map -> map.season() == year)
                .flatMap(map -> map.rivers().stream())
                .filter(river -> river.river().id().equals(water.river().id()))
                .findFirst();
    }

    private void years(Water water, double rowsTop) {
        for (int year = firstYear(); year < firstYear() + years(); year++) {
            double y = rowMiddle(rowsTop, year);
            Optional<TerritoryMap.RiverMap> map = riverMap(water, year);
            List<Stretch> surveyed = map.map(TerritoryMap.RiverMap::surveyed).orElse(List.of());
            Subject subject = new Subject.OfSeason(year, water.river().id());
            sheet.write(new Shape.Label(
                    new Point(across.left() - 14, y + 4.5),
                    Integer.toString(year),
                    Anchor.END,
                    Lettering.BODY,
                    Ink.INK));
            sheet.answer(new HitArea(
                    new Rect(across.left() - LABEL, y - rowHeight / 2, width - across.left() + LABEL, rowHeight),
                    subject,
                    () -> map.map(river -> StripWords.found(subjectYear(subject), river))
                            .orElseGet(() -> Integer.toString(subjectYear(subject)))));
            row(water, year, surveyed, y);
            List<Territory> territories =
                    map.map(TerritoryMap.RiverMap::territories).orElse(List.of());
            rooms(water, year, y);
            for (Territory territory : territories) {
                territory(water, year, territory, y);
            }
            between(water, year, territories, y);
            beside(water, year, y);
        }
    }

    private static int subjectYear(Subject subject) {
        return subject instanceof Subject.OfSeason season ? season.season() : 0;
    }

    private void row(Water water, int year, List<Stretch> surveyed, double y) {
        for (Stretch walked : surveyed) {
            double left = across.clipped(across.x(water.metres(walked.lower())));
            double right = across.clipped(across.x(water.metres(walked.upper())));
            if (right > left) {
                sheet.draw(new Shape.Line(new Point(left, y), new Point(right, y), Pencil.solid(Ink.GRID, 1.4)));
            }
        }
        for (Stretch gap : Unwalked.of(water.extent(), surveyed)) {
            double left = across.clipped(across.x(water.metres(gap.lower())));
            double right = across.clipped(across.x(water.metres(gap.upper())));
            if (right - left >= 0.5) {
                Rect area = new Rect(left, y - BAR / 2 - 2, right - left, BAR + 4);
                sheet.draw(new Shape.Hatch(area));
                sheet.answer(new HitArea(
                        area,
                        new Subject.OfUnwalked(year, water.river().id(), gap, Optional.empty()),
                        () -> Texts.of("strip.unwalked", gap, Integer.toString(year))));
            }
        }
    }

    private void territory(Water water, int year, Territory territory, double y) {
        Optional<ModelShading.Ground> ground = ground(water, year, territory);
        Fade fade = fade(water, year, territory);
        if (fade.right() <= across.left() || fade.left() >= across.right()) {
            return;
        }
        double left = across.clipped(fade.left());
        double right = across.clipped(fade.right());
        Rect area = new Rect(left, y - BAR / 2, right - left, BAR);
        if (TerritoryInk.isCounted(territory)) {
            double high = BAR * TerritoryInk.height(TerritoryInk.fill(territory));
            sheet.draw(new Shape.Band(
                    new Rect(left, y - high / 2, right - left, high),
                    Math.max(0, fade.coreLeft() - left),
                    Math.max(0, right - fade.coreRight()),
                    TerritoryInk.fill(territory)));
        } else {
            sheet.draw(new Shape.Box(
                    area,
                    Math.min(BAR, area.width()) / 2,
                    Optional.empty(),
                    Optional.of(Pencil.dotted(Ink.MUTED, 1.5))));
        }
        Subject subject = new Subject.OfTerritory(year, water.river().id(), territory.id());
        sheet.answer(new HitArea(area, subject, () -> StripWords.territory(territory, ground)));
    }

    private Optional<ModelShading.Ground> ground(Water water, int year, Territory territory) {
        return shading(water, year).flatMap(model -> model.ground(territory.id()));
    }

    private Fade fade(Water water, int year, Territory territory) {
        return ground(water, year, territory)
                .filter(known -> TerritoryInk.isCounted(territory))
                .map(known -> Fade.of(across, water, known))
                .orElseGet(() -> Fade.of(across, water, territory.stretch(), BEYOND));
    }

    private Optional<ModelShading.OnRiver> shading(Water water, int year) {
        return Optional.ofNullable(scene.shadings().get(year))
                .flatMap(model -> model.of(water.river().id()));
    }

    private void rooms(Water water, int year, double y) {
        shading(water, year)
                .ifPresent(model -> model.rooms().forEach(room -> Room.draw(sheet, across, water, year, room, y)));
    }

    private void beside(Water water, int year, double y) {
        double below = y + Math.max(BAR / 2 + 1, Math.min(BAR / 2 + 9, rowHeight / 2 - 6));
        scene.samples().stream()
                .filter(shown -> shown.sample().date().getYear() == year)
                .filter(shown ->
                        shown.sample().place().riverId().equals(water.river().id()))
                .forEach(shown -> {
                    double metres = water.metres(shown.sample().place().chainage());
                    if (across.shows(metres)) {
                        shown.draw(sheet, new Point(across.x(metres), below), rowHeight >= SCORES_FROM);
                    }
                });
        scene.nests().stream()
                .filter(shown -> shown.days().get(0).getYear() == year)
                .filter(shown ->
                        shown.nest().place().riverId().equals(water.river().id()))
                .forEach(shown -> {
                    double metres = water.metres(shown.nest().place().chainage());
                    if (across.shows(metres)) {
                        shown.drawAt(sheet, new Point(across.x(metres), y));
                    }
                });
    }

    /** A thin line of paper between neighbours whose bars touch, so that two are never taken for one. */
    private void between(Water water, int year, List<Territory> goingUpstream, double y) {
        for (int i = 1; i < goingUpstream.size(); i++) {
            double end =
                    across.x(water.metres(goingUpstream.get(i - 1).stretch().upper()));
            double start = across.x(water.metres(goingUpstream.get(i).stretch().lower()));
            double x = (end + start) / 2;
            boolean meet = fade(water, year, goingUpstream.get(i - 1)).right()
                    > fade(water, year, goingUpstream.get(i)).left();
            if (meet && x > across.left() && x < across.right()) {
                sheet.draw(new Shape.Line(
                        new Point(x, y - BAR / 2 - 1), new Point(x, y + BAR / 2 + 1), Pencil.solid(Ink.PAPER, 2)));
            }
        }
    }

    private void counts(Water water, double top, double rowsTop, double bottom) {
        Across scale = new Across(width - COUNTS, width - 76, 0, mostCounted());
        sheet.write(new Shape.Label(
                new Point(scale.left(), top + 14), Texts.of("strip.counts"), Anchor.START, Lettering.SMALL, Ink.INK));
        int step = Math.max(1, (int) Math.ceil(22 / (scale.x(1) - scale.x(0))));
        for (int count = 0; count <= mostCounted(); count += step) {
            double x = Math.round(scale.x(count)) + 0.5;
            sheet.write(new Shape.Label(
                    new Point(x, rowsTop - 8), Integer.toString(count), Anchor.MIDDLE, Lettering.SMALL, Ink.MUTED));
            sheet.draw(new Shape.Line(new Point(x, rowsTop), new Point(x, bottom), Pencil.solid(Ink.GRID, 1)));
        }
        for (int year = firstYear(); year < firstYear() + years(); year++) {
            count(riverMap(water, year), scale, rowMiddle(rowsTop, year));
        }
    }

    /** The highest count of any river and season: one scale for all, so that they compare. */
    private int mostCounted() {
        return scene.maps().stream()
                .flatMap(map -> map.rivers().stream())
                .mapToInt(river -> river.count().max())
                .reduce(1, Math::max);
    }

    private void count(Optional<TerritoryMap.RiverMap> map, Across scale, double y) {
        if (map.isEmpty() || !map.get().isCounted()) {
            int visits = map.map(TerritoryMap.RiverMap::effectiveVisits).orElse(0);
            sheet.write(new Shape.Label(
                    new Point(scale.left() + 6, y + 4.5),
                    Texts.of("strip.noCount", visits),
                    Anchor.START,
                    Lettering.SMALL,
                    Ink.MUTED));
            return;
        }
        TerritoryMap.Count count = map.get().count();
        sheet.draw(new Shape.Line(
                new Point(scale.x(count.min()), y), new Point(scale.x(count.max()), y), Pencil.solid(Ink.INK, 2)));
        sheet.draw(new Shape.Disc(
                new Point(scale.x(count.likely()), y),
                5,
                Optional.of(Ink.CONFIRMED),
                Optional.of(Pencil.solid(Ink.PAPER, 1.5))));
        sheet.write(new Shape.Label(
                new Point(scale.right() + 34, y + 4.5),
                Integer.toString(count.likely()),
                Anchor.END,
                Lettering.STRONG,
                Ink.INK));
        sheet.write(new Shape.Label(
                new Point(width - 4, y + 4.5),
                count.min() == count.max() ? "" : count.min() + "–" + count.max(),
                Anchor.END,
                Lettering.SMALL,
                Ink.MUTED));
    }
}

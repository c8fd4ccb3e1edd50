package org.ouzelbook.ui.strip;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;

/** One place: across, the days of the year; down, the years; beside each, how many of the visits that went by saw the bird. */
final class PlaceLayout {
    private static final double LEFT = 140;
    private static final double RIGHT = 150;
    private static final double HEAD = Ribbon.HEIGHT;
    private static final double FOOT = 12;
    private static final double CLOSEST = 22;
    private static final double MOST = 150;
    private static final double HATCH_HEIGHT = 16;

    private final PlacePlan plan;
    private final PlaceScene scene;
    private final Across across;
    private final double width;
    private final double rowHeight;
    private final int firstYear;
    private final int years;
    private final Sheet sheet;
    private boolean explained;

    PlaceLayout(PlacePlan plan, Frame frame) {
        this.plan = plan;
        this.scene = plan.scene();
        this.width = frame.width();
        this.across = new Across(LEFT, frame.width() - RIGHT, frame.from(), frame.to());
        this.firstYear = scene.years().get(0);
        this.years = scene.years().get(scene.years().size() - 1) - firstYear + 1;
        this.rowHeight = Math.max(CLOSEST, Math.min(MOST, (frame.height() - HEAD - FOOT) / years));
        double height = Math.max(frame.height(), HEAD + FOOT + years * rowHeight);
        this.sheet = new Sheet(width, height);
    }

    StripDrawing drawing() {
        head();
        double bottom = HEAD + years * rowHeight;
        YearDays.axis(sheet, across, HEAD - 8, HEAD, bottom);
        SightingLayer layer = new SightingLayer(sheet, across);
        int lanes = SeasonLayout.lanes(rowHeight);
        for (int year = firstYear; year < firstYear + years; year++) {
            double y = y(year);
            row(year, y);
            SightingRow row = plan.rows().get(year);
            if (row != null) {
                layer.place(row, new SightingLayer.Line(y, lanes, scene.river().name(), Optional.empty()));
            }
        }
        layer.draw(scene.sightings().stream().map(Sighting::id).collect(Collectors.toUnmodifiableSet()));
        samplesAndNests();
        return sheet.drawing(across, plan.words());
    }

    private double y(int year) {
        return Math.round(HEAD + (year - firstYear + 0.5) * rowHeight) + 0.5;
    }

    private void head() {
        scene.kind()
                .ifPresent(kind ->
                        LandmarkSymbol.parts(kind, across.left() + 9, 26).forEach(sheet::draw));
        double left = across.left() + (scene.kind().isPresent() ? 26 : 0);
        sheet.write(
                new Shape.Label(new Point(left, 24), scene.place().name(), Anchor.START, Lettering.STRONG, Ink.INK));
        sheet.write(new Shape.Label(
                new Point(left, 42),
                Texts.of(
                        "strip.place.where", scene.river().name(), scene.place().around()),
                Anchor.START,
                Lettering.SMALL,
                Ink.MUTED));
        sheet.write(new Shape.Label(
                new Point(across.right() + 26, HEAD - 8),
                Texts.of("strip.place.seenBy"),
                Anchor.START,
                Lettering.SMALL,
                Ink.MUTED));
        if (!scene.nests().isEmpty()) {
            sheet.write(new Shape.Label(
                    new Point(width - 4, 24), Texts.of("strip.private"), Anchor.END, Lettering.STRONG, Ink.NEST));
        }
    }

    private void row(int year, double y) {
        List<Visit> passing = plan.passing(year).visits();
        Subject subject = new Subject.OfSeason(year, scene.river().id());
        sheet.write(new Shape.Label(
                new Point(across.left() - 14, y + 4.5),
                Integer.toString(year),
                Anchor.END,
                Lettering.BODY,
                passing.isEmpty() ? Ink.MUTED : Ink.INK));
        sheet.answer(new HitArea(
                new Rect(0, y - rowHeight / 2, width, rowHeight), subject, () -> StripWords.year(scene, year)));
        if (passing.isEmpty()) {
            unpassed(y);
            return;
        }
        sheet.draw(
                new Shape.Line(new Point(across.left(), y), new Point(across.right(), y), Pencil.solid(Ink.GRID, 1.4)));
        List<Double> days = passing.stream()
                .map(visit -> YearDays.of(visit.date()))
                .distinct()
                .toList();
        for (double day : days) {
            if (across.shows(day)) {
                double x = across.x(day);
                sheet.draw(new Shape.Line(new Point(x, y - 7), new Point(x, y + 7), Pencil.solid(Ink.WALKED, 1.6)));
            }
        }
        sheet.write(new Shape.Label(
                new Point(across.right() + 26, y + 4.5),
                Texts.of("strip.place.seenOf", plan.passing(year).saw(), passing.size()),
                Anchor.START,
                Lettering.BODY,
                Ink.INK));
    }

    private void unpassed(double y) {
        sheet.draw(new Shape.Hatch(
                new Rect(across.left(), y - HATCH_HEIGHT / 2, across.right() - across.left(), HATCH_HEIGHT)));
        if (!explained) {
            Shape.Label words = new Shape.Label(
                    new Point(across.left() + 12, y + 4),
                    Texts.of("strip.place.nobody"),
                    Anchor.START,
                    Lettering.SMALL,
                    Ink.MUTED);
            sheet.draw(new Shape.Box(words.bounds().grown(2), 3, Optional.of(Ink.UNWALKED), Optional.empty()));
            explained = sheet.write(words);
        }
    }

    private void samplesAndNests() {
        scene.samples().forEach(shown -> {
            int year = shown.sample().date().getYear();
            double day = YearDays.of(shown.sample().date());
            if (across.shows(day) && year >= firstYear && year < firstYear + years) {
                shown.draw(sheet, new Point(across.x(day), y(year) + Math.min(14, rowHeight / 2 - 6)), true);
            }
        });
        scene.nests()
                .forEach(shown -> shown.days().forEach(date -> {
                    if (across.shows(YearDays.of(date))) {
                        shown.drawAt(sheet, new Point(across.x(YearDays.of(date)), y(date.getYear())));
                    }
                }));
    }
}

package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;

/** The territories of one river in one season: soft columns through the dates, and a row of bars with their letters below. */
final class TerritoryRow {
    /** Height of the bars with their words, in pixels. */
    static final double HEIGHT = 54;

    private static final double BAR = 22;
    private static final double NARROWEST = 20;
    private static final double SEAM = 3;

    private final Sheet sheet;
    private final Across across;
    private final Water water;
    private final int season;
    private final Optional<ModelShading.OnRiver> model;
    private final double rowsTop;
    private final double rowsBottom;

    TerritoryRow(
            Sheet sheet,
            Across across,
            Water water,
            int season,
            Optional<ModelShading.OnRiver> model,
            double rowsTop,
            double rowsBottom) {
        this.sheet = sheet;
        this.across = across;
        this.water = water;
        this.season = season;
        this.model = model;
        this.rowsTop = rowsTop;
        this.rowsBottom = rowsBottom;
    }

    /**
     * Draws the columns, under everything else.
     *
     * @param territories the territories of the river
     */
    void columns(List<Territory> territories) {
        for (int i = 0; i < territories.size(); i++) {
            Reach reach = reach(territories, i);
            if (reach.isHidden(across)) {
                continue;
            }
            if (TerritoryInk.isCounted(territories.get(i))) {
                Fade fade = fade(territories, i);
                double left = across.clipped(fade.left());
                double right = across.clipped(fade.right());
                Rect area = new Rect(left, rowsTop, right - left, rowsBottom - rowsTop);
                sheet.answer(answer(territories.get(i), area));
                sheet.draw(new Shape.Band(
                        area, Math.max(0, fade.coreLeft() - left), Math.max(0, right - fade.coreRight()), Ink.COLUMN));
            } else {
                side(reach.left());
                side(reach.right());
            }
        }
        seams(territories);
    }

    private HitArea answer(Territory territory, Rect area) {
        return new HitArea(
                area,
                new Subject.OfTerritory(season, water.river().id(), territory.id()),
                () -> StripWords.territory(territory, ground(territory)));
    }

    private Fade fade(List<Territory> territories, int i) {
        Reach reach = reach(territories, i);
        return ground(territories.get(i))
                .map(known -> Fade.of(across, water, known))
                .orElseGet(() -> new Fade(
                        reach.left() - reach.fadeLeft(),
                        reach.left(),
                        reach.right(),
                        reach.right() + reach.fadeRight()));
    }

    /** A seam of paper where two neighbours fade into each other, so that two are never taken for one. */
    private void seams(List<Territory> territories) {
        for (int i = 1; i < territories.size(); i++) {
            double x =
                    (reach(territories, i - 1).right() + reach(territories, i).left()) / 2;
            boolean both = TerritoryInk.isCounted(territories.get(i - 1)) && TerritoryInk.isCounted(territories.get(i));
            if (both
                    && x > across.left()
                    && x < across.right()
                    && fade(territories, i - 1).right() > fade(territories, i).left()) {
                sheet.draw(
                        new Shape.Line(new Point(x, rowsTop), new Point(x, rowsBottom), Pencil.solid(Ink.PAPER, SEAM)));
            }
        }
    }

    private void side(double x) {
        if (x >= across.left() && x <= across.right()) {
            sheet.draw(new Shape.Line(new Point(x, rowsTop), new Point(x, rowsBottom), Pencil.dotted(Ink.WALKED, 1.5)));
        }
    }

    /** Where a territory lies on the paper. */
    private record Reach(double left, double right, double fadeLeft, double fadeRight) {
        boolean isHidden(Across across) {
            return right <= across.left() || left >= across.right();
        }
    }

    private Reach reach(List<Territory> territories, int i) {
        Territory territory = territories.get(i);
        double left = across.x(water.metres(territory.stretch().lower()));
        double right = across.x(water.metres(territory.stretch().upper()));
        double missing = Math.max(0, NARROWEST - (right - left)) / 2;
        double roomLeft = i == 0
                ? 1000
                : left - across.x(water.metres(territories.get(i - 1).stretch().upper()));
        double roomRight = i == territories.size() - 1
                ? 1000
                : across.x(water.metres(territories.get(i + 1).stretch().lower())) - right;
        double widenLeft = Math.min(missing, Math.max(0, roomLeft / 2 - 1));
        double widenRight = Math.min(missing, Math.max(0, roomRight / 2 - 1));
        double fade = 2 * uncertainty(territory) / across.metresPerPixel();
        return new Reach(
                left - widenLeft,
                right + widenRight,
                Math.max(3, Math.min(fade, roomLeft / 2 - widenLeft)),
                Math.max(3, Math.min(fade, roomRight / 2 - widenRight)));
    }

    private Optional<ModelShading.Ground> ground(Territory territory) {
        return model.flatMap(known -> known.ground(territory.id()));
    }

    private static double uncertainty(Territory territory) {
        return territory.registrations().stream()
                .mapToDouble(sighting -> sighting.place().uncertaintyMetres())
                .max()
                .orElse(50);
    }

    /**
     * Draws the bars.
     *
     * @param territories the territories of the river
     */
    void bars(List<Territory> territories) {
        double top = rowsBottom + 8;
        sheet.write(new Shape.Label(
                new Point(across.left() - 14, top + BAR / 2 + 4.5),
                Texts.of("strip.territories"),
                Anchor.END,
                Lettering.BODY,
                Ink.INK));
        for (int i = 0; i < territories.size(); i++) {
            Reach reach = reach(territories, i);
            if (!reach.isHidden(across)) {
                bar(territories.get(i), reach, top, room(territories, i));
            }
        }
        model.ifPresent(known -> known.rooms()
                .forEach(room -> Room.draw(sheet, across, water, season, room, top + BAR / 2, top + BAR + 16)));
    }

    private void bar(Territory territory, Reach reach, double top, double room) {
        double left = across.clipped(reach.left());
        double right = across.clipped(reach.right());
        double middle = (left + right) / 2;
        Rect area = new Rect(left, top, right - left, BAR);
        boolean counted = TerritoryInk.isCounted(territory);
        sheet.draw(new Shape.Box(
                area,
                Math.min(BAR, right - left) / 2,
                counted ? Optional.of(TerritoryInk.fill(territory)) : Optional.empty(),
                counted ? Optional.empty() : Optional.of(Pencil.dotted(Ink.MUTED, 1.6))));
        if (TextWidths.of(territory.id(), Lettering.STRONG) + 2 <= right - left) {
            sheet.write(new Shape.Label(
                    new Point(middle, top + BAR / 2 + 5),
                    territory.id(),
                    Anchor.MIDDLE,
                    Lettering.STRONG,
                    TerritoryInk.letter(territory)));
        }
        words(territory, middle, top + BAR + 16, room);
        // The words answer, too, but the frame round what is pointed out would go through them.
        sheet.answer(answer(territory, new Rect(left, top, right - left, BAR + 18)));
        sheet.answer(answer(territory, new Rect(left, rowsTop, right - left, top + BAR - rowsTop)));
        end(territory, reach.left(), top, false);
        end(territory, reach.right(), top, true);
    }

    /** The evidence and the model's probability; only one of them where the neighbours leave no more room. */
    private void words(Territory territory, double middle, double y, double room) {
        String plain = TerritoryInk.words(territory);
        List<String> choices = new ArrayList<>();
        ground(territory).filter(known -> TerritoryInk.isCounted(territory)).ifPresent(known -> {
            String share = Texts.of("strip.share", known.probability());
            choices.add(Texts.of("strip.sure", plain, share));
            choices.add(plain);
            choices.add(share);
        });
        if (choices.isEmpty()) {
            choices.add(plain);
        }
        for (String words : choices) {
            boolean fits = TextWidths.of(words, Lettering.SMALL) <= room;
            if (fits
                    && sheet.write(
                            new Shape.Label(new Point(middle, y), words, Anchor.MIDDLE, Lettering.SMALL, Ink.MUTED))) {
                return;
            }
        }
    }

    /** Twice the way from the middle of a bar to where the words of its nearer neighbour begin. */
    private double room(List<Territory> territories, int i) {
        double middle = middle(territories.get(i));
        double left = i == 0 ? 1000 : middle - middle(territories.get(i - 1));
        double right = i == territories.size() - 1 ? 1000 : middle(territories.get(i + 1)) - middle;
        return Math.min(left, right) - 6;
    }

    private double middle(Territory territory) {
        return across.x(water.metres(territory.stretch().middle()));
    }

    private void end(Territory territory, double x, double top, boolean upper) {
        if (x >= across.left() && x <= across.right()) {
            sheet.answer(new HitArea(
                    new Rect(x - 4, top, 8, BAR),
                    new Subject.OfEnd(season, water.river().id(), territory.id(), upper),
                    () -> Texts.of("strip.end", upper ? 1 : 0, territory.id())));
        }
    }
}

package org.ouzelbook.ui.strip;

import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;

/** The territories of one river in one season: soft columns through the dates, and a row of bars with their letters below. */
final class TerritoryRow {
    /** Height of the bars with their words, in pixels. */
    static final double HEIGHT = 54;

    private static final double BAR = 22;
    private static final double NARROWEST = 20;

    private final Sheet sheet;
    private final Across across;
    private final Water water;
    private final int season;
    private final double rowsTop;
    private final double rowsBottom;

    TerritoryRow(Sheet sheet, Across across, Water water, int season, double rowsTop, double rowsBottom) {
        this.sheet = sheet;
        this.across = across;
        this.water = water;
        this.season = season;
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
            Territory territory = territories.get(i);
            Reach reach = reach(territories, i);
            if (reach.isHidden(across)) {
                continue;
            }
            if (TerritoryInk.isCounted(territory)) {
                double left = across.clipped(reach.left() - reach.fadeLeft());
                double right = across.clipped(reach.right() + reach.fadeRight());
                sheet.draw(new Shape.Band(
                        new Rect(left, rowsTop, right - left, rowsBottom - rowsTop),
                        Math.max(0, reach.left() - left),
                        Math.max(0, right - reach.right()),
                        Ink.COLUMN));
            } else {
                side(reach.left());
                side(reach.right());
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
     * @param selected letter of the one to point out
     */
    void bars(List<Territory> territories, Optional<String> selected) {
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
                bar(
                        territories.get(i),
                        reach,
                        top,
                        selected.equals(Optional.of(territories.get(i).id())));
            }
        }
    }

    private void bar(Territory territory, Reach reach, double top, boolean selected) {
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
        if (selected) {
            Rect column = new Rect(left - 4, rowsTop, right - left + 8, top + BAR + 4 - rowsTop);
            sheet.draw(new Shape.Box(column, 8, Optional.empty(), Optional.of(Pencil.solid(Ink.CONFIRMED, 2))));
        }
        sheet.write(new Shape.Label(
                new Point(middle, top + BAR / 2 + 5),
                territory.id(),
                Anchor.MIDDLE,
                Lettering.STRONG,
                TerritoryInk.letter(territory)));
        sheet.write(new Shape.Label(
                new Point(middle, top + BAR + 16),
                TerritoryInk.words(territory),
                Anchor.MIDDLE,
                Lettering.SMALL,
                Ink.MUTED));
        sheet.answer(new HitArea(
                new Rect(left, rowsTop, right - left, top + BAR + 18 - rowsTop),
                new Subject.OfTerritory(season, water.river().id(), territory.id()),
                StripWords.territory(territory)));
    }
}

package org.ouzelbook.ui.strip;

import java.util.List;
import java.util.Optional;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.Shape.Anchor;
import org.ouzelbook.ui.strip.Shape.Lettering;
import org.ouzelbook.ui.strip.Shape.Step;
import org.ouzelbook.ui.strip.SightingSymbol.Middle;

/** Every symbol with its meaning, in as many columns as the paper has room for. */
final class LegendLayout {
    private static final double CELL_WIDTH = 270;
    private static final int MEANINGS = 24;
    private static final double CELL_HEIGHT = 30;
    private static final double SAMPLE = 24;

    private final Sheet sheet;
    private final double top;
    private final double width;
    private final int columns;
    private final int rows;
    private int cell;

    /**
     * @param width width of the paper
     * @param top how far down it begins
     */
    LegendLayout(double width, double top) {
        this.width = width;
        this.top = top;
        this.columns = Math.max(1, Math.min(3, (int) (width / CELL_WIDTH)));
        this.rows = (MEANINGS + columns - 1) / columns;
        this.sheet = new Sheet(width, top + rows * CELL_HEIGHT);
    }

    StripDrawing drawing() {
        symbol("seen", new SightingSymbol(Middle.ONE, false, 0));
        symbol("song", new SightingSymbol(Middle.ONE, true, 0));
        symbol("call", new SightingSymbol(Middle.ONE, false, 1));
        symbol("alarm", new SightingSymbol(Middle.ONE, false, 2));
        symbol("pair", new SightingSymbol(Middle.PAIR, false, 0));
        symbol("young", new SightingSymbol(Middle.YOUNG, false, 0));
        symbol("material", new SightingSymbol(Middle.MATERIAL, false, 0));
        symbol("food", new SightingSymbol(Middle.FOOD, false, 0));
        symbol("dead", new SightingSymbol(Middle.DEAD, false, 0));
        Point at = next("apart");
        sheet.draw(Shape.Path.open(
                Pencil.dotted(Ink.INK, 2),
                new Point(at.x() - 18, at.y() + 4),
                new Step.Bend(new Point(at.x(), at.y() - 16), new Point(at.x() + 18, at.y() + 4))));
        turnedBack(next("turnedBack"));
        bar(next("confirmed"), Optional.of(Ink.CONFIRMED), Optional.empty());
        bar(next("probable"), Optional.of(Ink.PROBABLE), Optional.empty());
        bar(next("possible"), Optional.of(Ink.POSSIBLE), Optional.empty());
        bar(next("hollow"), Optional.empty(), Optional.of(Pencil.dotted(Ink.MUTED, 1.6)));
        at = next("unwalked");
        sheet.draw(new Shape.Hatch(new Rect(at.x() - 20, at.y() - 8, 40, 16)));
        at = next("count");
        sheet.draw(new Shape.Line(
                new Point(at.x() - 18, at.y()), new Point(at.x() + 18, at.y()), Pencil.solid(Ink.INK, 2)));
        sheet.draw(new Shape.Disc(at, 5, Optional.of(Ink.CONFIRMED), Optional.of(Pencil.solid(Ink.PAPER, 1.5))));
        at = next("crowd");
        sheet.draw(new Shape.Tablet(at, new Crowd(12, 0, 0, 1)));
        at = next("room");
        sheet.draw(new Shape.Line(
                new Point(at.x() - 18, at.y()), new Point(at.x() + 18, at.y()), Pencil.dotted(Ink.CONFIRMED, 2.2)));
        at = next("fade");
        sheet.draw(new Shape.Band(new Rect(at.x() - 20, at.y() - 8, 40, 16), 16, 8, Ink.CONFIRMED));
        at = next("passed");
        sheet.draw(new Shape.Line(
                new Point(at.x() - 18, at.y()), new Point(at.x() + 18, at.y()), Pencil.solid(Ink.GRID, 1.4)));
        sheet.draw(new Shape.Line(
                new Point(at.x(), at.y() - 7), new Point(at.x(), at.y() + 7), Pencil.solid(Ink.WALKED, 1.6)));
        at = next("life");
        sheet.draw(new Shape.Line(
                new Point(at.x() - 14, at.y() - 5),
                new Point(at.x() + 14, at.y() + 5),
                Pencil.solid(Ink.CONFIRMED, 1.8)));
        ShownSample.shapes(next("sample")).forEach(sheet::draw);
        ShownNest.star(next("nest")).forEach(sheet::draw);
        return new StripDrawing(
                width,
                top + rows * CELL_HEIGHT,
                sheet.shapes(),
                List.of(),
                List.of(),
                new Across(0, width, 0, 1),
                Texts.of("strip.legend"),
                "");
    }

    private void symbol(String meaning, SightingSymbol symbol) {
        sheet.draw(new Shape.Mark(next(meaning), symbol, Ink.INK, 1));
    }

    /** Writes the meaning into the next cell and gives the place for its sample. */
    private Point next(String meaning) {
        double x = Math.floorDiv(cell, rows) * (width / columns);
        double y = top + cell % rows * CELL_HEIGHT + CELL_HEIGHT / 2;
        cell++;
        sheet.write(new Shape.Label(
                new Point(x + 2 * SAMPLE + 8, y + 4.5),
                Texts.of("strip.legend." + meaning),
                Anchor.START,
                Lettering.BODY,
                Ink.INK));
        return new Point(x + SAMPLE, y);
    }

    private void turnedBack(Point at) {
        Pencil pencil = Pencil.solid(Ink.INK, 1.5);
        sheet.draw(Shape.Path.open(
                pencil,
                new Point(at.x() - 18, at.y() + 2),
                new Step.Bend(new Point(at.x() - 2, at.y() - 18), new Point(at.x() + 13, at.y() + 2))));
        sheet.draw(new Shape.Line(
                new Point(at.x() + 15, at.y() - 8), new Point(at.x() + 15, at.y() + 10), Pencil.solid(Ink.INK, 3)));
    }

    private void bar(Point at, Optional<Ink> fill, Optional<Pencil> outline) {
        double high = 16 * fill.map(TerritoryInk::height).orElse(1.0);
        sheet.draw(new Shape.Box(new Rect(at.x() - 20, at.y() - high / 2, 40, high), high / 2, fill, outline));
    }
}

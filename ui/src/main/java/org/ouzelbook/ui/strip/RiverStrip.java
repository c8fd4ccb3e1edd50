package org.ouzelbook.ui.strip;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.ui.app.Texts;

/** Draws the river strip: one season, all seasons, one place, one bird, and the legend to all of them. */
public final class RiverStrip {
    private static final double CAPTION = 30;

    private RiverStrip() {}

    /**
     * {@return the strip of one season}
     *
     * @param scene what it shows
     * @param frame the paper
     * @param selected what is to be pointed out
     */
    public static StripDrawing season(SeasonScene scene, Frame frame, Optional<Subject> selected) {
        return drawn(ready(scene), frame, selected);
    }

    /**
     * {@return the strip of all seasons}
     *
     * @param scene what it shows
     * @param frame the paper
     * @param selected what is to be pointed out
     */
    public static StripDrawing seasons(SeasonsScene scene, Frame frame, Optional<Subject> selected) {
        return drawn(ready(scene), frame, selected);
    }

    private static StripDrawing drawn(ReadyStrip strip, Frame frame, Optional<Subject> selected) {
        return strip.drawing(frame)
                .pointingOut(selected, selected.map(strip::recordsOf).orElse(List.of()));
    }

    /**
     * {@return one season, ready to be drawn from any distance}
     *
     * @param scene what it shows
     */
    public static ReadyStrip ready(SeasonScene scene) {
        return new SeasonPlan(scene);
    }

    /**
     * {@return all seasons, ready to be drawn from any distance}
     *
     * @param scene what they show
     */
    public static ReadyStrip ready(SeasonsScene scene) {
        return SeasonsPlan.of(scene);
    }

    /**
     * {@return one place over the years, ready to be drawn from any distance}
     *
     * @param scene what it shows
     */
    public static ReadyStrip ready(PlaceScene scene) {
        return new PlacePlan(scene);
    }

    /**
     * {@return the life of one bird, ready to be drawn from any distance}
     *
     * @param scene what it shows
     */
    public static ReadyStrip ready(BirdScene scene) {
        return BirdPlan.of(scene);
    }

    /**
     * {@return the legend}
     *
     * @param width width of the paper, in pixels
     */
    public static StripDrawing legend(double width) {
        return new LegendLayout(width, 0).drawing();
    }

    /**
     * {@return a strip as it is saved and printed: with its name and its legend below it, and the reminder that single records
     * tell where birds nest}
     *
     * @param drawing a strip
     */
    public static Picture sheet(StripDrawing drawing) {
        List<Shape> shapes = new ArrayList<>(drawing.picture().shapes());
        double y = drawing.height() + CAPTION;
        shapes.add(new Shape.Line(
                new Point(0, drawing.height() + 8),
                new Point(drawing.width(), drawing.height() + 8),
                Pencil.solid(Ink.GRID, 1)));
        shapes.add(
                new Shape.Label(new Point(4, y), drawing.title(), Shape.Anchor.START, Shape.Lettering.STRONG, Ink.INK));
        shapes.add(new Shape.Label(
                new Point(drawing.width() - 4, y),
                Texts.of("strip.exact"),
                Shape.Anchor.END,
                Shape.Lettering.SMALL,
                Ink.MUTED));
        StripDrawing legend = new LegendLayout(drawing.width(), y + 12).drawing();
        shapes.addAll(legend.shapes());
        return new Picture(drawing.width(), legend.height() + 8, shapes, drawing.title(), drawing.description());
    }
}

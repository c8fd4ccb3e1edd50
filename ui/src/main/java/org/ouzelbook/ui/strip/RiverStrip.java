package org.ouzelbook.ui.strip;

import java.util.List;
import java.util.Optional;

/** Draws the river strip: one season, all seasons, one place, one bird, and the legend to all of them. */
public final class RiverStrip {
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
        return new SeasonsPlan(scene);
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
        return new BirdPlan(scene);
    }

    /**
     * {@return the legend}
     *
     * @param width width of the paper, in pixels
     */
    public static StripDrawing legend(double width) {
        return new LegendLayout(width).drawing();
    }
}

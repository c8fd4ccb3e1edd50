package org.ouzelbook.ui.window;

import java.util.Optional;
import org.ouzelbook.ui.strip.Frame;
import org.ouzelbook.ui.strip.ReadyStrip;
import org.ouzelbook.ui.strip.StripView;

/**
 * From how far the strip is looked at: how much paper there is, what of the axis is on it, and how much room time has. The river
 * keeps its place from season to season; the days of a place do not.
 */
final class StripFraming {
    private static final double NARROWEST = 480;
    private static final double MOST_STRETCH = 12;

    private Optional<Frame> river = Optional.empty();
    private Optional<Frame> days = Optional.empty();
    private double stretch = 1;
    private double width = 900;
    private double height = 600;

    void resize(double newWidth, double newHeight) {
        width = Math.max(NARROWEST, newWidth);
        height = Math.max(1, newHeight);
    }

    private Optional<Frame> near(StripView view) {
        return view instanceof StripView.OnePlace ? days : river;
    }

    private void near(StripView view, Optional<Frame> frame) {
        if (view instanceof StripView.OnePlace) {
            days = frame;
        } else {
            river = frame;
        }
    }

    /** {@return what of a strip is on the paper} */
    Frame frame(StripView view, ReadyStrip strip) {
        double tall = height * stretch;
        return near(view)
                .map(seen -> new Frame(width, tall, seen.from(), seen.to()))
                .orElseGet(() -> strip.farthest(width, tall));
    }

    /** {@return whether all of the axis is in view} */
    boolean isFitted(StripView view) {
        return near(view).isEmpty();
    }

    private void look(StripView view, ReadyStrip strip, Frame frame) {
        Frame limits = strip.farthest(width, height);
        boolean all = frame.to() - frame.from() >= limits.to() - limits.from() - 1e-6;
        near(view, all ? Optional.empty() : Optional.of(frame));
    }

    /** Comes nearer or goes farther, with one place of the axis kept where it is. */
    void zoom(StripView view, ReadyStrip strip, double factor, double about) {
        Frame now = frame(view, strip);
        look(view, strip, now.zoomed(factor, about, strip.farthest(width, height), strip.closest()));
    }

    /** Moves along the axis, by its unit. */
    void move(StripView view, ReadyStrip strip, double by) {
        look(view, strip, frame(view, strip).moved(by, strip.farthest(width, height)));
    }

    /** Shows all of the axis, and all of time on the paper. */
    void fit(StripView view) {
        near(view, Optional.empty());
        stretch = 1;
    }

    /** {@return how many times the paper's height time has been given; 1 or more} */
    double stretch() {
        return stretch;
    }

    /** {@return how many times it would be, stretched once more} */
    double stretched(double factor) {
        return Math.max(1, Math.min(MOST_STRETCH, stretch * factor));
    }

    /** {@return by how much time was really stretched} */
    double stretch(double factor) {
        double next = stretched(factor);
        double really = next / stretch;
        stretch = next;
        return really;
    }

    /** {@return the part of the river's axis that is in view; empty for all of it} */
    Optional<StripPlace.Near> river() {
        return river.map(seen -> new StripPlace.Near(seen.from(), seen.to()));
    }

    /** Begins with a part of the river's axis, as far as a strip has it. */
    void settle(ReadyStrip strip, StripPlace.Near near) {
        Frame limits = strip.farthest(width, height);
        river = Optional.of(limits.showing(near.from(), near.to()).moved(0, limits));
    }

    /** Begins with all of time, and with all days of a place. */
    void arrive() {
        stretch = 1;
        days = Optional.empty();
    }

    /** Begins with all water, since it is other water. */
    void forgetRiver() {
        river = Optional.empty();
    }
}

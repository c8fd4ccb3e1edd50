package org.ouzelbook.ui.window;

import javafx.event.Event;
import javafx.event.EventType;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.PickResult;
import javafx.scene.input.ScrollEvent;

/** A hand on the strip that drags it along the river and turns the wheel, one event for each frame. */
final class BenchHand {
    private static final double PIXELS = 22;
    private static final double WHEEL = 40;
    private static final int TURN = 24;
    private static final int NOTCHES = 8;

    private final StripPane pane;
    private double x;

    BenchHand(StripPane pane) {
        this.pane = pane;
        x = pane.getWidth() / 2;
        mouse(MouseEvent.MOUSE_PRESSED);
    }

    /** Drags three times and then turns the wheel once: some notches nearer, and one fewer farther, so that it never leads out. */
    void move(int frame) {
        int notch = frame / 4 % (2 * NOTCHES);
        if (frame % 4 != 3) {
            x += frame / TURN % 2 == 0 ? PIXELS : -PIXELS;
            mouse(MouseEvent.MOUSE_DRAGGED);
        } else if (notch < NOTCHES) {
            wheel(WHEEL);
        } else if (notch < 2 * NOTCHES - 1) {
            wheel(-WHEEL);
        }
    }

    private void mouse(EventType<MouseEvent> type) {
        double y = pane.getHeight() / 2;
        PickResult here = new PickResult(pane, x, y);
        Event.fireEvent(
                pane,
                new MouseEvent(
                        type,
                        x,
                        y,
                        x,
                        y,
                        MouseButton.PRIMARY,
                        1,
                        false,
                        false,
                        false,
                        false,
                        true,
                        false,
                        false,
                        false,
                        false,
                        false,
                        here));
    }

    private void wheel(double up) {
        double middle = pane.getWidth() / 2;
        double y = pane.getHeight() / 2;
        Event.fireEvent(
                pane,
                new ScrollEvent(
                        ScrollEvent.SCROLL,
                        middle,
                        y,
                        middle,
                        y,
                        false,
                        false,
                        false,
                        false,
                        false,
                        false,
                        0,
                        up,
                        0,
                        up,
                        ScrollEvent.HorizontalTextScrollUnits.NONE,
                        0,
                        ScrollEvent.VerticalTextScrollUnits.NONE,
                        0,
                        0,
                        new PickResult(pane, middle, y)));
    }
}

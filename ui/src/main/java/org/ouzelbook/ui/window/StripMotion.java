package org.ouzelbook.ui.window;

import javafx.animation.Animation;
import javafx.animation.Interpolator;
import javafx.animation.KeyFrame;
import javafx.animation.KeyValue;
import javafx.animation.Timeline;
import javafx.scene.Node;
import javafx.scene.transform.Scale;
import javafx.util.Duration;

/** A short motion that shows whether one came nearer or went farther; none where the person at the keyboard wants none. */
final class StripMotion {
    private static final Duration LENGTH = Duration.millis(160);
    private static final double NEARER = 0.9;
    private static final double FARTHER = 1.08;

    private final Node moved;
    private final Look look;
    private final Scale scale = new Scale(1, 1);
    private final Timeline timeline = new Timeline();

    /**
     * @param moved what moves
     * @param look says whether anything may
     */
    StripMotion(Node moved, Look look) {
        this.moved = moved;
        this.look = look;
        moved.getTransforms().add(scale);
    }

    /**
     * Moves into a new view.
     *
     * @param nearer whether it is a nearer one
     * @param y the place that it comes out of, in pixels
     */
    void arrive(boolean nearer, double y) {
        if (timeline.getStatus() == Animation.Status.RUNNING) {
            timeline.stop();
        }
        scale.setPivotY(y);
        if (!look.motion().get()) {
            scale.setY(1);
            moved.setOpacity(1);
            return;
        }
        timeline.getKeyFrames()
                .setAll(
                        new KeyFrame(
                                Duration.ZERO,
                                new KeyValue(scale.yProperty(), nearer ? NEARER : FARTHER),
                                new KeyValue(moved.opacityProperty(), 0.2)),
                        new KeyFrame(
                                LENGTH,
                                new KeyValue(scale.yProperty(), 1, Interpolator.EASE_OUT),
                                new KeyValue(moved.opacityProperty(), 1, Interpolator.EASE_OUT)));
        timeline.playFromStart();
    }
}

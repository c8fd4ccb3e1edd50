package org.ouzelbook.ui.window;

import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.layout.StackPane;
import javafx.scene.shape.Rectangle;
import org.ouzelbook.ui.strip.Picture;
import org.ouzelbook.ui.strip.Rect;

/** A picture, as large as it is, with its description for those who cannot see it. */
final class PictureView extends StackPane {
    private final Canvas canvas = new Canvas();
    private final Look look;
    private Optional<Picture> shown = Optional.empty();

    private final Rectangle mark = new Rectangle();

    PictureView(Look look) {
        this.look = look;
        look.dark().addListener((property, before, now) -> shown.ifPresent(this::show));
        getStyleClass().add("picture");
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setMaxSize(USE_PREF_SIZE, USE_PREF_SIZE);
        setAlignment(Pos.TOP_LEFT);
        mark.getStyleClass().add("mark");
        mark.setManaged(false);
        mark.setMouseTransparent(true);
        mark.setVisible(false);
        getChildren().addAll(canvas, mark);
    }

    /**
     * Shows a picture.
     *
     * @param picture the picture
     */
    void show(Picture picture) {
        canvas.setWidth(picture.width());
        canvas.setHeight(picture.height());
        shown = Optional.of(picture);
        new CanvasPen(canvas.getGraphicsContext2D(), look.palette()).draw(picture);
        mark.setVisible(false);
        setAccessibleText(picture.title() + ". " + picture.description());
    }

    /**
     * Marks a part of the picture.
     *
     * @param place where it lies
     */
    void mark(Rect place) {
        mark.setX(place.x());
        mark.setY(place.y());
        mark.setWidth(place.width());
        mark.setHeight(place.height());
        mark.setVisible(true);
    }

    /** Marks nothing. */
    void unmark() {
        mark.setVisible(false);
    }
}

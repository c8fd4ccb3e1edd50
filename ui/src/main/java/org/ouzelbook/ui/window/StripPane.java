package org.ouzelbook.ui.window;

import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.geometry.Point2D;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.input.ZoomEvent;
import javafx.scene.layout.Region;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.HitArea;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.StripDrawing;
import org.ouzelbook.ui.strip.Subject;

/** The strip on its canvas, with the keys and the pointer that move about on it. */
final class StripPane extends Region {
    private static final double STEP = 1.25;
    private static final double CLICK = 4;
    private static final PseudoClass FOCUS = PseudoClass.getPseudoClass("at-keyboard");

    private final StripViewModel strip;
    private final Canvas canvas = new Canvas();
    private final CanvasPen pen = new CanvasPen(canvas.getGraphicsContext2D(), Palette.LIGHT);
    private final Tooltip tip = new Tooltip();
    private final Keys keys;
    private double down;
    private Point2D pressed = Point2D.ZERO;
    private Point2D dragged = Point2D.ZERO;

    StripPane(StripViewModel strip) {
        this.strip = strip;
        this.keys = bound();
        getStyleClass().add("strip");
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleHelp(Texts.of("window.strip.help"));
        canvas.setManaged(false);
        getChildren().add(canvas);
        strip.drawing().addListener((property, before, now) -> paint(now));
        focusedProperty().addListener((property, before, now) -> pseudoClassStateChanged(FOCUS, now));
        setOnMousePressed(this::press);
        setOnMouseDragged(this::drag);
        setOnMouseReleased(this::release);
        setOnMouseMoved(this::hover);
        setOnScroll(this::scroll);
        setOnZoom(this::pinch);
        setOnKeyPressed(event -> keys.press(event, false));
    }

    /**
     * {@return where on the screen something on the strip lies; empty if it is not in view}
     *
     * @param subject something on the strip
     */
    Optional<Point2D> onScreen(Subject subject) {
        return strip.drawing()
                .get()
                .flatMap(one -> one.areas().stream()
                        .filter(area -> area.subject().equals(subject))
                        .map(HitArea::area)
                        .map(area -> localToScreen(area.x() + area.width() / 2, area.bottom() - 3 - down))
                        .findFirst());
    }

    @Override
    protected void layoutChildren() {
        double width = Math.floor(getWidth());
        double height = Math.floor(getHeight());
        if (width != canvas.getWidth() || height != canvas.getHeight()) {
            canvas.setWidth(width);
            canvas.setHeight(height);
            strip.resize(width, height);
            paint(strip.drawing().get());
        }
    }

    private void paint(Optional<StripDrawing> drawing) {
        down = Math.max(0, Math.min(down, drawing.map(StripDrawing::height).orElse(0.0) - canvas.getHeight()));
        if (drawing.isPresent()) {
            pen.draw(drawing.get(), down);
            setAccessibleText(drawing.get().title() + ". " + drawing.get().description());
        } else {
            pen.clear();
            setAccessibleText(Texts.of("window.strip.empty"));
        }
    }

    private void press(MouseEvent event) {
        requestFocus();
        pressed = new Point2D(event.getX(), event.getY());
        dragged = pressed;
    }

    private void drag(MouseEvent event) {
        Point2D now = new Point2D(event.getX(), event.getY());
        if (now.distance(pressed) > CLICK) {
            setCursor(Cursor.CLOSED_HAND);
            strip.pan(dragged.getX() - now.getX());
            slide(dragged.getY() - now.getY());
        }
        dragged = now;
    }

    private void release(MouseEvent event) {
        setCursor(Cursor.DEFAULT);
        Point2D now = new Point2D(event.getX(), event.getY());
        if (now.distance(pressed) <= CLICK) {
            if (strip.allSeasons().get()) {
                strip.openAt(now.getX(), now.getY() + down);
            } else {
                strip.selectAt(now.getX(), now.getY() + down);
            }
        }
    }

    private void hover(MouseEvent event) {
        Optional<HitArea> under = strip.drawing().get().flatMap(one -> one.at(event.getX(), event.getY() + down));
        setCursor(under.isPresent() ? Cursor.HAND : Cursor.DEFAULT);
        if (under.isPresent()) {
            tip.setText(under.get().name());
            Tooltip.install(this, tip);
        } else {
            Tooltip.uninstall(this, tip);
        }
    }

    private void scroll(ScrollEvent event) {
        double most = strip.drawing().get().map(StripDrawing::height).orElse(0.0) - canvas.getHeight();
        if (event.isShiftDown() || event.getDeltaX() != 0) {
            strip.pan(-(event.getDeltaX() + (event.isShiftDown() ? event.getDeltaY() : 0)));
        } else if (most > 1 && !event.isControlDown()) {
            slide(-event.getDeltaY());
        } else if (event.getDeltaY() != 0) {
            strip.zoom(event.getDeltaY() > 0 ? STEP : 1 / STEP, event.getX());
        }
        event.consume();
    }

    private void pinch(ZoomEvent event) {
        strip.zoom(event.getZoomFactor(), event.getX());
        event.consume();
    }

    private void slide(double pixels) {
        down += pixels;
        paint(strip.drawing().get());
    }

    private Keys bound() {
        return new Keys("window.keys.strip")
                .on("window.does.nearer", () -> strip.zoom(STEP), Stroke.typed("+"), Stroke.typed("="))
                .on("window.does.farther", () -> strip.zoom(1 / STEP), Stroke.typed("-"))
                .on("window.does.allWater", strip::fit, Stroke.typed("0"))
                .on("window.does.downstream", () -> strip.pan(-60), Stroke.of(KeyCode.LEFT))
                .on("window.does.upstream", () -> strip.pan(60), Stroke.of(KeyCode.RIGHT))
                .on("window.does.up", () -> slide(-40), Stroke.of(KeyCode.UP))
                .on("window.does.down", () -> slide(40), Stroke.of(KeyCode.DOWN))
                .on("window.does.earlier", strip::earlier, Stroke.of(KeyCode.PAGE_UP))
                .on("window.does.later", strip::later, Stroke.of(KeyCode.PAGE_DOWN))
                .on("window.does.allSeasons", strip::showAllSeasons, Stroke.of(KeyCode.Y))
                .on("window.does.openSeason", strip::open, Stroke.of(KeyCode.ENTER))
                .on("window.does.next", () -> strip.selectNext(1), Stroke.typed("."))
                .on("window.does.before", () -> strip.selectNext(-1), Stroke.typed(","))
                .on("window.does.unselect", () -> strip.select(Optional.empty()), Stroke.of(KeyCode.ESCAPE))
                .pointer("window.pointer.wheel", "window.does.zoom")
                .pointer("window.pointer.drag", "window.does.move")
                .pointer("window.pointer.click", "window.does.why");
    }

    /** {@return the keys that it hears while it has the keyboard} */
    Keys keys() {
        return keys;
    }
}

package org.ouzelbook.ui.window;

import java.util.List;
import java.util.Optional;
import javafx.css.PseudoClass;
import javafx.geometry.Point2D;
import javafx.scene.AccessibleRole;
import javafx.scene.Cursor;
import javafx.scene.canvas.Canvas;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.input.ZoomEvent;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.strip.HitArea;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.StripDrawing;
import org.ouzelbook.ui.strip.StripView;
import org.ouzelbook.ui.strip.Subject;

/** The strip on its canvas, with the keys and the pointer that move about on it. */
final class StripPane extends Region {
    private static final double STEP = 1.25;
    private static final double CLICK = 4;
    private static final double MARGIN = 140;
    private static final double NEAR = 10;
    private static final double FAR = 100;
    private static final PseudoClass FOCUS = PseudoClass.getPseudoClass("at-keyboard");

    private final StripViewModel strip;
    private final Look look;
    private final Canvas ground = new Canvas();
    private final Tooltip tip = new Tooltip();
    private final StripMotion motion;
    private final Keys keys;
    private Stamps stamps = new Stamps(Palette.LIGHT, 1);
    private double down;
    private boolean dirty = true;
    private Point2D pressed = Point2D.ZERO;
    private Point2D dragged = Point2D.ZERO;
    private final EndMove ends;
    private boolean byKeys;
    private boolean pulling;
    private Place place = (x, y) -> false;

    /** Hears where on the drawing a click fell, before the strip does. */
    interface Place {
        /** {@return whether the click was meant for it} */
        boolean at(double x, double y);
    }

    StripPane(StripViewModel strip, EndMove ends, Look look) {
        this.strip = strip;
        this.ends = ends;
        this.look = look;
        this.motion = new StripMotion(ground, look);
        this.keys = bound();
        getStyleClass().add("strip");
        setFocusTraversable(true);
        setAccessibleRole(AccessibleRole.IMAGE_VIEW);
        setAccessibleHelp(Texts.of("window.strip.help"));
        ground.setManaged(false);
        getChildren().add(ground);
        Rectangle paper = new Rectangle();
        paper.widthProperty().bind(widthProperty());
        paper.heightProperty().bind(heightProperty());
        setClip(paper);
        strip.drawing().addListener((property, before, now) -> dirty());
        strip.path().addListener((property, before, now) -> arrive(before, now));
        ends.held().addListener((property, before, now) -> dirty());
        ends.count().addListener((property, before, now) -> dirty());
        look.dark().addListener((property, before, now) -> dirty());
        focusedProperty().addListener((property, before, now) -> pseudoClassStateChanged(FOCUS, now));
        setOnMousePressed(this::press);
        setOnMouseDragged(this::drag);
        setOnMouseReleased(this::release);
        setOnMouseMoved(this::hover);
        setOnScroll(this::scroll);
        setOnZoom(this::pinch);
        setOnKeyPressed(this::key);
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
                        .reduce((lower, upper) -> upper));
    }

    /**
     * Lets somebody else hear of clicks first, who may have asked for a place.
     *
     * @param hearer who
     */
    void placeTo(Place hearer) {
        place = hearer;
    }

    @Override
    protected void layoutChildren() {
        double width = Math.floor(getWidth());
        double height = Math.floor(getHeight());
        if (width != ground.getWidth() || height != ground.getHeight()) {
            ground.setWidth(width);
            ground.setHeight(height);
            dirty = true;
            strip.resize(width, height);
        }
        if (dirty) {
            dirty = false;
            paint(strip.drawing().get());
        }
    }

    /** Paints with the next pulse, however many things change until then. */
    private void dirty() {
        dirty = true;
        requestLayout();
    }

    private void arrive(List<StripView> before, List<StripView> now) {
        down = 0;
        motion.arrive(now.size() >= before.size(), pressed.getY());
        dirty();
    }

    private void paint(Optional<StripDrawing> drawing) {
        down = Math.max(0, Math.min(down, drawing.map(StripDrawing::height).orElse(0.0) - ground.getHeight()));
        CanvasPen pen = new CanvasPen(ground.getGraphicsContext2D(), look.palette(), Optional.of(stamps()));
        pen.clear();
        if (drawing.isPresent()) {
            pen.draw(drawing.get().shapes(), down);
            pen.draw(drawing.get().over(), down);
            guide(pen, drawing.get());
            setAccessibleText(drawing.get().title() + ". " + drawing.get().description());
        } else {
            setAccessibleText(Texts.of("window.strip.empty"));
        }
    }

    private Stamps stamps() {
        double scale = getScene() == null ? 1 : getScene().getWindow().getOutputScaleX();
        if (!stamps.fit(look.palette(), scale)) {
            stamps = new Stamps(look.palette(), scale);
        }
        return stamps;
    }

    /** Shows where the end that is held has come to. */
    private void guide(CanvasPen pen, StripDrawing drawing) {
        ends.held()
                .get()
                .ifPresent(one -> strip.water(one.end().riverId())
                        .ifPresent(water -> pen.guide(
                                drawing.across().x(water.metres(one.from())),
                                drawing.across().x(water.metres(one.at())),
                                ends.told(byKeys))));
    }

    private void press(MouseEvent event) {
        pressed = new Point2D(event.getX(), event.getY());
        dragged = pressed;
        ends.leave();
        Optional<Subject.OfEnd> end = event.getButton() == MouseButton.PRIMARY ? endAt(event) : Optional.empty();
        pulling = end.map(ends::take).orElse(false);
        if (pulling) {
            byKeys = false;
            requestFocus();
        }
    }

    private Optional<Subject.OfEnd> endAt(MouseEvent event) {
        return strip.at(event.getX(), event.getY() + down)
                .map(HitArea::subject)
                .filter(Subject.OfEnd.class::isInstance)
                .map(Subject.OfEnd.class::cast);
    }

    private void drag(MouseEvent event) {
        Point2D now = new Point2D(event.getX(), event.getY());
        if (now.distance(pressed) > CLICK) {
            if (pulling) {
                pull(now.getX());
            } else {
                setCursor(Cursor.CLOSED_HAND);
                strip.pan(dragged.getX() - now.getX());
                slide(dragged.getY() - now.getY());
            }
        }
        dragged = now;
    }

    private void pull(double x) {
        setCursor(Cursor.H_RESIZE);
        ends.held().get().flatMap(one -> strip.chainage(one.end().riverId(), x)).ifPresent(ends::to);
    }

    private void release(MouseEvent event) {
        setCursor(Cursor.DEFAULT);
        Point2D now = new Point2D(event.getX(), event.getY());
        boolean click = now.distance(pressed) <= CLICK;
        boolean pulled = pulling && !click;
        pulling = false;
        if (pulled) {
            ends.letGo();
            return;
        }
        ends.leave();
        if (click && place.at(now.getX(), now.getY() + down)) {
            return;
        }
        requestFocus();
        if (click && event.getButton() == MouseButton.PRIMARY && event.getClickCount() == 2) {
            strip.openAt(now.getX(), now.getY() + down);
        } else if (click) {
            strip.selectAt(now.getX(), now.getY() + down);
        }
    }

    /**
     * Takes hold of an end of the territory that is selected, to be moved by keys.
     *
     * @param upper whether of the upper one
     * @return whether a territory of the season shown is selected
     */
    boolean hold(boolean upper) {
        boolean held = strip.view() instanceof StripView.OneSeason
                && strip.selected().get().orElse(null) instanceof Subject.OfTerritory one
                && ends.take(new Subject.OfEnd(one.season(), one.riverId(), one.id(), upper));
        if (held) {
            byKeys = true;
            requestFocus();
        }
        return held;
    }

    private void key(KeyEvent event) {
        if (ends.held().get().isPresent() && moveEnd(event)) {
            event.consume();
        } else {
            keys.press(event, false);
        }
    }

    /** {@return whether the key was meant for the end that is held} */
    private boolean moveEnd(KeyEvent event) {
        double step = event.isShiftDown() ? FAR : NEAR;
        switch (event.getCode()) {
            case LEFT -> ends.by(-step);
            case RIGHT -> ends.by(step);
            case ENTER -> ends.letGo();
            case ESCAPE -> ends.leave();
            default -> {
                return false;
            }
        }
        return true;
    }

    private void hover(MouseEvent event) {
        Optional<HitArea> under = strip.at(event.getX(), event.getY() + down);
        boolean end = endAt(event).isPresent();
        setCursor(end ? Cursor.H_RESIZE : under.isPresent() ? Cursor.HAND : Cursor.DEFAULT);
        if (under.isPresent()) {
            tip.setText(under.get().name());
            Tooltip.install(this, tip);
        } else {
            Tooltip.uninstall(this, tip);
        }
    }

    /** The wheel comes nearer along the river; beside the river, or with the control key, in time. */
    private void scroll(ScrollEvent event) {
        if (event.isShiftDown() || event.getDeltaX() != 0) {
            strip.pan(-(event.getDeltaX() + (event.isShiftDown() ? event.getDeltaY() : 0)));
        } else if (event.getDeltaY() != 0) {
            double factor = event.getDeltaY() > 0 ? STEP : 1 / STEP;
            pressed = new Point2D(event.getX(), event.getY());
            if (event.isControlDown() || event.getX() < MARGIN) {
                stretch(factor, event.getY());
            } else {
                strip.zoom(factor, event.getX());
            }
        }
        event.consume();
    }

    private void stretch(double factor, double y) {
        double really = strip.stretch(factor, y + down);
        down = (down + y) * really - y;
        dirty();
    }

    private void pinch(ZoomEvent event) {
        strip.zoom(event.getZoomFactor(), event.getX());
        event.consume();
    }

    private void slide(double pixels) {
        down += pixels;
        dirty();
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
                .on("window.does.moreTime", () -> stretch(STEP, getHeight() / 2), Stroke.command(KeyCode.EQUALS))
                .on("window.does.lessTime", () -> stretch(1 / STEP, getHeight() / 2), Stroke.command(KeyCode.MINUS))
                .on("window.does.next", () -> strip.selectNext(1), Stroke.typed("."))
                .on("window.does.before", () -> strip.selectNext(-1), Stroke.typed(","))
                .on("window.does.into", strip::open, Stroke.of(KeyCode.ENTER))
                .on("window.does.out", strip::out, Stroke.of(KeyCode.BACK_SPACE))
                .on("window.does.unselect", this::escape, Stroke.of(KeyCode.ESCAPE))
                .on("window.does.earlier", strip::earlier, Stroke.of(KeyCode.PAGE_UP))
                .on("window.does.later", strip::later, Stroke.of(KeyCode.PAGE_DOWN))
                .on("window.does.allSeasons", strip::showAllSeasons, Stroke.of(KeyCode.Y))
                .on("window.does.birds", strip::showBirds, Stroke.of(KeyCode.R))
                .on("window.does.fold", strip::foldTributaries, Stroke.of(KeyCode.T))
                .on("window.does.nests", strip::switchNests, Stroke.of(KeyCode.P))
                .pointer("window.pointer.wheel", "window.does.zoom")
                .pointer("window.pointer.wheelTime", "window.does.zoomTime")
                .pointer("window.pointer.drag", "window.does.move")
                .pointer("window.pointer.dragEnd", "window.does.dragEnd")
                .pointer("window.pointer.click", "window.does.why")
                .pointer("window.pointer.twice", "window.does.into");
    }

    /** {@return the end of a territory that the pointer or the keys move here} */
    EndMove ends() {
        return ends;
    }

    /** {@return what it shows} */
    StripViewModel strip() {
        return strip;
    }

    /** {@return the keys that it hears while it has the keyboard} */
    Keys keys() {
        return keys;
    }

    /** Lets go of what is selected; with nothing selected, goes out. */
    private void escape() {
        if (strip.selected().get().isPresent()) {
            strip.select(Optional.empty());
        } else {
            strip.out();
        }
    }
}

package org.ouzelbook.ui.window;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.ui.strip.Frame;
import org.ouzelbook.ui.strip.HitArea;
import org.ouzelbook.ui.strip.RiverStrip;
import org.ouzelbook.ui.strip.SeasonScene;
import org.ouzelbook.ui.strip.SeasonsScene;
import org.ouzelbook.ui.strip.StripDrawing;
import org.ouzelbook.ui.strip.Subject;
import org.ouzelbook.ui.strip.Waters;

/** Which part of the strip is seen, from how far, and what is selected on it. */
final class StripViewModel {
    private static final double NARROWEST = 480;

    private final ReadOnlyObjectWrapper<Optional<StripDrawing>> drawing = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<Subject>> selected = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyIntegerWrapper season = new ReadOnlyIntegerWrapper();
    private final ReadOnlyBooleanWrapper allSeasons = new ReadOnlyBooleanWrapper();

    private Optional<BookContents> contents = Optional.empty();
    private Optional<SeasonScene> seasonScene = Optional.empty();
    private Optional<SeasonsScene> seasonsScene = Optional.empty();
    private Waters waters = new Waters(List.of());
    private Optional<Frame> frame = Optional.empty();
    private double width = 900;
    private double height = 600;

    /** {@return the drawing; empty while there is nothing to draw} */
    ReadOnlyObjectProperty<Optional<StripDrawing>> drawing() {
        return drawing.getReadOnlyProperty();
    }

    /** {@return what is selected} */
    ReadOnlyObjectProperty<Optional<Subject>> selected() {
        return selected.getReadOnlyProperty();
    }

    /** {@return the season shown, or last shown} */
    ReadOnlyIntegerProperty season() {
        return season.getReadOnlyProperty();
    }

    /** {@return whether all seasons are shown} */
    ReadOnlyBooleanProperty allSeasons() {
        return allSeasons.getReadOnlyProperty();
    }

    /**
     * Shows new contents, and stays where it was as far as they allow.
     *
     * @param newContents the contents
     */
    void show(BookContents newContents) {
        boolean otherSpecies = contents.filter(there -> !there.species().equals(newContents.species()))
                .isPresent();
        contents = Optional.of(newContents);
        seasonsScene = Optional.empty();
        Waters newWaters = Waters.of(newContents.records());
        if (!newWaters.equals(waters)) {
            waters = newWaters;
            frame = Optional.empty();
        }
        if (!newContents.maps().isEmpty() && !newContents.maps().containsKey(season.get())) {
            season.set(newContents.maps().lastKey());
        }
        if (otherSpecies) {
            selected.set(Optional.empty());
        }
        prepareSeason();
        redraw();
    }

    /**
     * Wishes for a season before anything is shown; the last one is shown if the wished one is not there.
     *
     * @param year a season
     */
    void startWith(int year) {
        season.set(year);
    }

    private void prepareSeason() {
        seasonScene = contents.flatMap(there ->
                Optional.ofNullable(there.maps().get(season.get())).map(map -> SeasonScene.of(there.records(), map)));
    }

    /**
     * Gives the drawing other paper.
     *
     * @param newWidth width, in pixels
     * @param newHeight height, in pixels
     */
    void resize(double newWidth, double newHeight) {
        width = Math.max(NARROWEST, newWidth);
        height = Math.max(1, newHeight);
        frame = frame.map(old -> new Frame(width, height, old.from(), old.to()));
        redraw();
    }

    private Frame farthest() {
        return Frame.fitting(waters, width, height);
    }

    private Frame frame() {
        return frame.orElseGet(this::farthest);
    }

    /** {@return whether all water is in view} */
    boolean isFitted() {
        return frame.isEmpty();
    }

    private void look(Frame newFrame) {
        Frame limits = farthest();
        boolean all = newFrame.to() - newFrame.from() >= limits.to() - limits.from() - 1e-6;
        frame = all ? Optional.empty() : Optional.of(newFrame);
        redraw();
    }

    /**
     * Comes nearer or goes farther; going farther than all water leads from the season to all seasons.
     *
     * @param factor above 1 comes nearer
     * @param x where the pointer is, in pixels
     */
    void zoom(double factor, double x) {
        if (factor < 1 && isFitted()) {
            showAllSeasons();
            return;
        }
        double about = drawing.get().map(one -> one.across().metres(x)).orElse(0.0);
        look(frame().zoomed(factor, about, farthest()));
    }

    /**
     * Comes nearer or goes farther about the middle of the drawing.
     *
     * @param factor above 1 comes nearer
     */
    void zoom(double factor) {
        drawing.get().map(StripDrawing::across).ifPresent(across -> zoom(factor, (across.left() + across.right()) / 2));
    }

    /**
     * Moves along the water.
     *
     * @param pixels how far upstream
     */
    void pan(double pixels) {
        double metres =
                drawing.get().map(one -> one.across().metresPerPixel() * pixels).orElse(0.0);
        look(frame().moved(metres, farthest()));
    }

    /** Shows all water. */
    void fit() {
        look(farthest());
    }

    /** Shows all seasons. */
    void showAllSeasons() {
        if (contents.filter(there -> !there.maps().isEmpty()).isPresent() && !allSeasons.get()) {
            allSeasons.set(true);
            selected.set(Optional.empty());
            redraw();
        }
    }

    /**
     * Shows one season.
     *
     * @param year a season of the book
     */
    void showSeason(int year) {
        if (contents.filter(there -> there.maps().containsKey(year)).isPresent()) {
            season.set(year);
            allSeasons.set(false);
            selected.set(Optional.empty());
            prepareSeason();
            redraw();
        }
    }

    /** Shows the season before. */
    void earlier() {
        Integer before =
                contents.map(there -> there.maps().lowerKey(season.get())).orElse(null);
        if (before != null) {
            stepTo(before);
        }
    }

    /** Shows the season after. */
    void later() {
        Integer after =
                contents.map(there -> there.maps().higherKey(season.get())).orElse(null);
        if (after != null) {
            stepTo(after);
        }
    }

    private void stepTo(int year) {
        if (allSeasons.get()) {
            season.set(year);
            redraw();
        } else {
            showSeason(year);
        }
    }

    /**
     * Selects something, or nothing.
     *
     * @param subject what
     */
    void select(Optional<Subject> subject) {
        if (!Objects.equals(selected.get(), subject)) {
            selected.set(subject);
            redraw();
        }
    }

    /**
     * Selects what lies at a point.
     *
     * @param x to the right, in pixels
     * @param y downwards, in pixels
     */
    void selectAt(double x, double y) {
        select(drawing.get().flatMap(one -> one.at(x, y)).map(HitArea::subject));
    }

    /**
     * Opens what lies at a point of all seasons: its season.
     *
     * @param x to the right, in pixels
     * @param y downwards, in pixels
     */
    void openAt(double x, double y) {
        selectAt(x, y);
        open();
    }

    /** Opens what is selected: from a year, or a territory of a year, to its season. */
    void open() {
        if (!allSeasons.get()) {
            return;
        }
        Optional<Subject> subject = selected.get();
        if (subject.isPresent() && subject.get() instanceof Subject.OfTerritory territory) {
            showSeason(territory.season());
            select(subject);
        } else if (subject.isPresent() && subject.get() instanceof Subject.OfSeason year) {
            showSeason(year.season());
        } else {
            showSeason(season.get());
        }
    }

    /**
     * Selects the next thing: territories first, then sightings, visits and landmarks.
     *
     * @param step 1 for the next, −1 for the one before
     */
    void selectNext(int step) {
        List<Subject> order = drawing.get()
                .map(one -> one.areas().stream()
                        .map(HitArea::subject)
                        .distinct()
                        .sorted((a, b) -> Integer.compare(rank(a), rank(b)))
                        .toList())
                .orElse(List.of());
        if (order.isEmpty()) {
            return;
        }
        int now = selected.get().map(order::indexOf).orElse(-1);
        int next = now < 0 ? (step > 0 ? 0 : order.size() - 1) : Math.floorMod(now + step, order.size());
        select(Optional.of(order.get(next)));
    }

    private static int rank(Subject subject) {
        if (subject instanceof Subject.OfTerritory) {
            return 0;
        }
        if (subject instanceof Subject.OfSeason) {
            return 1;
        }
        if (subject instanceof Subject.OfSighting) {
            return 2;
        }
        return subject instanceof Subject.OfVisit ? 3 : 4;
    }

    /** {@return the map of the season shown; empty where there is none} */
    Optional<TerritoryMap> map() {
        return contents.flatMap(there -> Optional.ofNullable(there.maps().get(season.get())));
    }

    private void redraw() {
        if (waters.isEmpty()) {
            drawing.set(Optional.empty());
        } else if (allSeasons.get()) {
            if (seasonsScene.isEmpty()) {
                seasonsScene = contents.map(there -> SeasonsScene.of(
                        there.records(), List.copyOf(there.maps().values())));
            }
            drawing.set(seasonsScene.map(scene -> RiverStrip.seasons(scene, frame(), selected.get())));
        } else {
            drawing.set(seasonScene.map(scene -> RiverStrip.season(scene, frame(), selected.get())));
        }
    }
}

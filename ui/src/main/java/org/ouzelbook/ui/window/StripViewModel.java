package org.ouzelbook.ui.window;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyBooleanWrapper;
import javafx.beans.property.ReadOnlyIntegerProperty;
import javafx.beans.property.ReadOnlyIntegerWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.strip.BirdScene;
import org.ouzelbook.ui.strip.HitArea;
import org.ouzelbook.ui.strip.HitIndex;
import org.ouzelbook.ui.strip.PlaceScene;
import org.ouzelbook.ui.strip.ReadyStrip;
import org.ouzelbook.ui.strip.StripDrawing;
import org.ouzelbook.ui.strip.StripView;
import org.ouzelbook.ui.strip.Subject;
import org.ouzelbook.ui.strip.Water;

/**
 * What the strip shows, from how far, and what is selected on it. There is one way to move: nearer, into what is selected, and
 * farther, out to where one came from; all seasons, one season, and one place or one bird lie one behind the other.
 */
final class StripViewModel {
    /** All seasons stretched beyond this become the season under the pointer. */
    private static final double STRETCH_INTO_SEASON = 2.6;

    private final ReadOnlyObjectWrapper<Optional<StripDrawing>> drawing = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<Optional<Subject>> selected = new ReadOnlyObjectWrapper<>(Optional.empty());
    private final ReadOnlyObjectWrapper<List<StripView>> path = new ReadOnlyObjectWrapper<>();
    private final ReadOnlyIntegerWrapper season = new ReadOnlyIntegerWrapper();
    private final ReadOnlyBooleanWrapper allSeasons = new ReadOnlyBooleanWrapper();
    private final ReadOnlyBooleanWrapper nestsShown = new ReadOnlyBooleanWrapper();

    private Optional<StripPlace> wished = Optional.empty();
    private final StripPath way = new StripPath();
    private final StripScenes scenes = new StripScenes();
    private final StripFraming framing = new StripFraming();
    private Optional<StripDrawing> plain = Optional.empty();
    private HitIndex hits = HitIndex.of(List.of());

    StripViewModel() {
        way.to(new StripView.OneSeason(0));
        path.set(way.whole());
    }

    /** {@return the drawing; empty while there is nothing to draw} */
    ReadOnlyObjectProperty<Optional<StripDrawing>> drawing() {
        return drawing.getReadOnlyProperty();
    }

    /** {@return what is selected} */
    ReadOnlyObjectProperty<Optional<Subject>> selected() {
        return selected.getReadOnlyProperty();
    }

    /** {@return the way from all seasons to what is shown now} */
    ReadOnlyObjectProperty<List<StripView>> path() {
        return path.getReadOnlyProperty();
    }

    /** {@return what is shown now} */
    StripView view() {
        return way.now();
    }

    /** {@return the season shown, or last shown} */
    ReadOnlyIntegerProperty season() {
        return season.getReadOnlyProperty();
    }

    /** {@return whether all seasons are shown} */
    ReadOnlyBooleanProperty allSeasons() {
        return allSeasons.getReadOnlyProperty();
    }

    /** {@return whether nests are shown: never unless asked for} */
    ReadOnlyBooleanProperty nestsShown() {
        return nestsShown.getReadOnlyProperty();
    }

    /**
     * Shows new contents, and stays where it was as far as they allow.
     *
     * @param newContents the contents
     */
    void show(BookContents newContents) {
        boolean otherSpecies = scenes.contents()
                .filter(there -> !there.species().equals(newContents.species()))
                .isPresent();
        if (scenes.show(newContents)) {
            framing.forgetRiver();
        }
        if (!newContents.maps().isEmpty() && !newContents.maps().containsKey(season.get())) {
            season.set(newContents.maps().lastKey());
        }
        if (!scenes.has(view()) && !allSeasons.get()) {
            way.to(new StripView.OneSeason(season.get()));
        }
        if (otherSpecies) {
            selected.set(Optional.empty());
        }
        arrived();
        wished.filter(place -> scenes.has(place.view())).ifPresent(this::settle);
    }

    private void settle(StripPlace place) {
        wished = Optional.empty();
        ready().ifPresent(strip -> place.near().ifPresent(near -> framing.settle(strip, near)));
        selected.set(place.selected());
        redraw();
    }

    /** {@return where the strip is now, to come back to another day} */
    StripPlace whereNow() {
        return new StripPlace(season.get(), view(), framing.river(), selected.get());
    }

    /**
     * Takes what the model makes of the seasons of the contents shown.
     *
     * @param shadings what it makes of each season
     */
    void shade(Map<Integer, ModelShading> shadings) {
        scenes.shade(shadings);
        redraw();
    }

    /** {@return what the model makes of a season; empty while it counts} */
    Optional<ModelShading> shading(int year) {
        return scenes.shading(year);
    }

    /**
     * Wishes for a place before anything is shown; what is no longer there is let be.
     *
     * @param place where somebody left the strip
     */
    void startAt(StripPlace place) {
        season.set(place.season());
        way.to(new StripView.OneSeason(place.season()));
        way.to(place.view());
        allSeasons.set(place.view() instanceof StripView.AllSeasons);
        wished = Optional.of(place);
    }

    /**
     * Gives the drawing other paper.
     *
     * @param newWidth width, in pixels
     * @param newHeight height, in pixels
     */
    void resize(double newWidth, double newHeight) {
        framing.resize(newWidth, newHeight);
        redraw();
    }

    private Optional<ReadyStrip> ready() {
        return scenes.ready(view());
    }

    /** {@return whether all of the axis is in view} */
    boolean isFitted() {
        return framing.isFitted(view());
    }

    /**
     * Comes nearer or goes farther along the axis; going farther than all of it leads out.
     *
     * @param factor above 1 comes nearer
     * @param x where the pointer is, in pixels
     */
    void zoom(double factor, double x) {
        if (factor < 1 && isFitted()) {
            out();
            return;
        }
        ready().ifPresent(strip -> {
            double about = drawing.get().map(one -> one.across().metres(x)).orElse(0.0);
            framing.zoom(view(), strip, factor, about);
            redraw();
        });
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
     * Gives time more room or less; less than the paper leads from a season to all seasons, and all seasons with much room
     * become the season under the pointer.
     *
     * @param factor above 1 gives more room
     * @param y where the pointer is, in pixels from the top of the drawing
     * @return by how much the drawing was really stretched
     */
    double stretch(double factor, double y) {
        if (factor < 1 && framing.stretch() <= 1) {
            out();
            return 1;
        }
        if (allSeasons.get() && framing.stretched(factor) > STRETCH_INTO_SEASON) {
            hits.at(1, y)
                    .map(HitArea::subject)
                    .filter(Subject.OfSeason.class::isInstance)
                    .map(Subject.OfSeason.class::cast)
                    .ifPresent(year -> showSeason(year.season()));
            return 1;
        }
        double really = framing.stretch(factor);
        redraw();
        return really;
    }

    /** {@return how many times the paper's height time has been given} */
    double stretch() {
        return framing.stretch();
    }

    /**
     * Moves along the axis.
     *
     * @param pixels how far to the right, upstream
     */
    void pan(double pixels) {
        ready().ifPresent(strip -> {
            double moved = drawing.get()
                    .map(one -> one.across().metresPerPixel() * pixels)
                    .orElse(0.0);
            framing.move(view(), strip, moved);
            redraw();
        });
    }

    /** Shows all of the axis, and all of time on the paper. */
    void fit() {
        framing.fit(view());
        redraw();
    }

    /**
     * Goes to a view, if there is something to show in it.
     *
     * @param view the view
     */
    void go(StripView view) {
        if (scenes.has(view) && !view().equals(view)) {
            way.to(view);
            selected.set(Optional.empty());
            arrived();
        }
    }

    /** Goes out: to where one came from, and at last to all seasons. */
    void out() {
        if (scenes.has(new StripView.AllSeasons()) && way.out()) {
            selected.set(Optional.empty());
            arrived();
        }
    }

    private void arrived() {
        framing.arrive();
        if (view() instanceof StripView.OneSeason one && scenes.has(one)) {
            season.set(one.year());
        }
        allSeasons.set(view() instanceof StripView.AllSeasons);
        path.set(way.whole());
        redraw();
    }

    /** Shows all seasons. */
    void showAllSeasons() {
        go(new StripView.AllSeasons());
    }

    /**
     * Shows one season.
     *
     * @param year a season of the book
     */
    void showSeason(int year) {
        go(new StripView.OneSeason(year));
    }

    /** Shows the season before, the next place downstream or the ringed bird before. */
    void earlier() {
        step(-1);
    }

    /** Shows the season after, the next place upstream or the next ringed bird. */
    void later() {
        step(1);
    }

    private void step(int step) {
        scenes.contents().ifPresent(there -> {
            if (view() instanceof StripView.OnePlace place) {
                StripSteps.nextPlace(there, place, step).ifPresent(this::go);
            } else if (view() instanceof StripView.OneBird bird) {
                StripSteps.nextBird(there, Optional.of(bird.bird()), step).ifPresent(this::go);
            } else {
                Integer year = step < 0
                        ? there.maps().lowerKey(season.get())
                        : there.maps().higherKey(season.get());
                if (year != null && allSeasons.get()) {
                    season.set(year);
                } else if (year != null) {
                    showSeason(year);
                }
            }
        });
    }

    /** Shows the ringed bird that was read most often. */
    void showBirds() {
        scenes.contents()
                .flatMap(there -> BirdScene.mostRead(there.records())
                        .<StripView>map(bird -> new StripView.OneBird(bird.id()))
                        .or(() -> StripSteps.nextBird(there, Optional.empty(), 1)))
                .ifPresent(this::go);
    }

    /** Shows the nests, which are private, or hides them again. */
    void switchNests() {
        nestsShown.set(!nestsShown.get());
        scenes.showNests(nestsShown.get());
        redraw();
    }

    /** Folds every tributary away, or unfolds them. */
    void foldTributaries() {
        scenes.foldAll();
        redraw();
    }

    /**
     * Folds a tributary away, or unfolds it.
     *
     * @param riverId its key
     */
    void fold(UUID riverId) {
        scenes.fold(riverId);
        redraw();
    }

    /**
     * Selects something, or nothing.
     *
     * @param subject what
     */
    void select(Optional<Subject> subject) {
        if (!Objects.equals(selected.get(), subject)) {
            selected.set(subject);
            pointOut();
        }
    }

    /**
     * {@return what lies uppermost at a point of the drawing}
     *
     * @param x to the right, in pixels
     * @param y downwards, in pixels
     */
    Optional<HitArea> at(double x, double y) {
        return hits.at(x, y);
    }

    /**
     * Selects what lies at a point.
     *
     * @param x to the right, in pixels
     * @param y downwards, in pixels
     */
    void selectAt(double x, double y) {
        select(at(x, y).map(HitArea::subject).map(StripViewModel::whole));
    }

    /** The territory of an end: the end alone says nothing. */
    private static Subject whole(Subject subject) {
        return subject instanceof Subject.OfEnd end
                ? new Subject.OfTerritory(end.season(), end.riverId(), end.id())
                : subject;
    }

    /**
     * Goes into what lies at a point.
     *
     * @param x to the right, in pixels
     * @param y downwards, in pixels
     */
    void openAt(double x, double y) {
        selectAt(x, y);
        open();
    }

    /** Goes into what is selected: a year, a place, a bird, a crowd; with nothing selected, from all seasons into one. */
    void open() {
        Optional<Subject> subject = selected.get();
        if (subject.isEmpty() && allSeasons.get()) {
            showSeason(season.get());
        }
        subject.ifPresent(this::into);
    }

    private void into(Subject subject) {
        if (subject instanceof Subject.OfRiver tributary) {
            fold(tributary.id());
        } else if (subject instanceof Subject.OfCrowd) {
            drawing.get()
                    .flatMap(one -> one.areas().stream()
                            .filter(area -> area.subject().equals(subject))
                            .findFirst())
                    .ifPresent(area -> zoom(4, area.area().x() + area.area().width() / 2));
        } else {
            scenes.contents()
                    .flatMap(there -> StripSteps.into(there, view(), subject))
                    .ifPresent(next -> {
                        go(next);
                        boolean stays = subject instanceof Subject.OfTerritory || subject instanceof Subject.OfSighting;
                        if (stays && next instanceof StripView.OneSeason) {
                            select(Optional.of(subject));
                        }
                    });
        }
    }

    /**
     * Selects the next thing: territories first, then sightings, visits and landmarks.
     *
     * @param step 1 for the next, −1 for the one before
     */
    void selectNext(int step) {
        select(StripOrder.next(drawing.get(), selected.get(), step));
    }

    /**
     * {@return the place along a river that lies at an x; empty where the axis is no river, or the river is not shown}
     *
     * @param riverId key of the river
     * @param x to the right, in pixels
     */
    Optional<Chainage> chainage(UUID riverId, double x) {
        return view() instanceof StripView.OnePlace
                ? Optional.empty()
                : drawing.get()
                        .flatMap(one -> scenes.chainage(riverId, one.across().metres(x)));
    }

    /** {@return the water of a river that is shown, unfolded; empty where it is not} */
    Optional<Water> water(UUID riverId) {
        return scenes.water(riverId);
    }

    /** {@return the map of the season shown; empty where there is none} */
    Optional<TerritoryMap> map() {
        return scenes.contents()
                .flatMap(there -> Optional.ofNullable(there.maps().get(season.get())));
    }

    /** {@return the place shown; empty in other views} */
    Optional<PlaceScene> place() {
        return view() instanceof StripView.OnePlace place
                ? scenes.contents().map(there -> scenes.place(there, place))
                : Optional.empty();
    }

    /** {@return the bird shown; empty in other views} */
    Optional<BirdScene> bird() {
        return view() instanceof StripView.OneBird bird
                ? scenes.contents().map(there -> scenes.life(there, bird))
                : Optional.empty();
    }

    private void redraw() {
        plain = ready().map(strip -> strip.drawing(framing.frame(view(), strip)));
        hits = HitIndex.of(plain.map(StripDrawing::areas).orElse(List.of()));
        pointOut();
    }

    private void pointOut() {
        drawing.set(plain.map(one -> one.pointingOut(
                selected.get(),
                ready().flatMap(strip -> selected.get().map(strip::recordsOf)).orElse(List.of()))));
    }
}

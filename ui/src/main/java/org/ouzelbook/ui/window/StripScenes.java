package org.ouzelbook.ui.window;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.ui.app.ModelShading;
import org.ouzelbook.ui.strip.BirdScene;
import org.ouzelbook.ui.strip.PlaceScene;
import org.ouzelbook.ui.strip.ReadyStrip;
import org.ouzelbook.ui.strip.RiverStrip;
import org.ouzelbook.ui.strip.SeasonScene;
import org.ouzelbook.ui.strip.SeasonsScene;
import org.ouzelbook.ui.strip.StripView;
import org.ouzelbook.ui.strip.Water;
import org.ouzelbook.ui.strip.Waters;

/** Makes ready what each view of a book shows, and keeps the one made last. */
final class StripScenes {
    /** With more rivers than this, tributaries begin folded away. */
    private static final int MOST_UNFOLDED = 3;

    private final Set<UUID> folded = new HashSet<>();
    private Optional<BookContents> contents = Optional.empty();
    private Waters waters = new Waters(List.of());
    private Map<Integer, ModelShading> shadings = Map.of();
    private boolean nests;
    private Optional<StripView> view = Optional.empty();
    private Optional<ReadyStrip> ready = Optional.empty();

    /**
     * Takes new contents.
     *
     * @param newContents the contents
     * @return whether their water is other water than before
     */
    boolean show(BookContents newContents) {
        contents = Optional.of(newContents);
        shadings = Map.of();
        forget();
        Waters all = Waters.of(newContents.records());
        if (all.equals(waters.folding(Set.of()))) {
            return false;
        }
        folded.clear();
        if (all.list().size() > MOST_UNFOLDED) {
            all.list().forEach(water -> folded.add(water.river().id()));
        }
        waters = all.folding(folded);
        return true;
    }

    private void forget() {
        view = Optional.empty();
        ready = Optional.empty();
    }

    /** Takes what the model makes of the seasons. */
    void shade(Map<Integer, ModelShading> newShadings) {
        shadings = Map.copyOf(newShadings);
        forget();
    }

    /** {@return what the model makes of a season; empty where it is not ready} */
    Optional<ModelShading> shading(int season) {
        return Optional.ofNullable(shadings.get(season));
    }

    /** Shows the nests, or hides them. */
    void showNests(boolean shown) {
        nests = shown;
        forget();
    }

    /** Folds a tributary away, or unfolds it. */
    void fold(UUID river) {
        if (!folded.remove(river)) {
            folded.add(river);
        }
        waters = waters.folding(folded);
        forget();
    }

    /** Folds every tributary away, or unfolds them all if any is folded. */
    void foldAll() {
        if (waters.folded().isEmpty()) {
            waters.list().forEach(water -> folded.add(water.river().id()));
        } else {
            folded.clear();
        }
        waters = waters.folding(folded);
        forget();
    }

    /** {@return the water of a river; empty where it is folded away, or none is known} */
    Optional<Water> water(UUID riverId) {
        return waters.of(riverId);
    }

    /** {@return a place of a river, within the water that is shown of it} */
    Optional<Chainage> chainage(UUID riverId, double metres) {
        return water(riverId).map(water -> water.nearest(metres - water.mouthMetres()));
    }

    Optional<BookContents> contents() {
        return contents;
    }

    /** {@return whether a view has something to show} */
    boolean has(StripView wanted) {
        return contents.filter(there -> {
                    if (wanted instanceof StripView.OneSeason season) {
                        return there.maps().containsKey(season.year());
                    }
                    return !there.maps().isEmpty()
                            && (!(wanted instanceof StripView.OneBird bird)
                                    || bird(there, bird).isPresent());
                })
                .isPresent();
    }

    /** {@return a view made ready; empty where there is nothing to show} */
    Optional<ReadyStrip> ready(StripView wanted) {
        if (!view.equals(Optional.of(wanted)) || ready.isEmpty()) {
            view = Optional.of(wanted);
            ready = waters.isEmpty() || !has(wanted) ? Optional.empty() : contents.map(there -> make(there, wanted));
        }
        return ready;
    }

    private ReadyStrip make(BookContents there, StripView wanted) {
        if (wanted instanceof StripView.OneSeason season) {
            TerritoryMap map = Objects.requireNonNull(there.maps().get(season.year()));
            SeasonScene scene = SeasonScene.of(there.records(), map).on(waters).shaded(shading(season.year()));
            return RiverStrip.ready(nests ? scene.withNests(there.records()) : scene);
        }
        if (wanted instanceof StripView.OnePlace place) {
            return RiverStrip.ready(place(there, place));
        }
        if (wanted instanceof StripView.OneBird bird) {
            return RiverStrip.ready(life(there, bird).on(waters));
        }
        SeasonsScene scene = SeasonsScene.of(
                        there.records(), List.copyOf(there.maps().values()))
                .on(waters)
                .shaded(shadings);
        return RiverStrip.ready(nests ? scene.withNests(there.records()) : scene);
    }

    /** {@return what was ever seen at a place} */
    PlaceScene place(BookContents there, StripView.OnePlace place) {
        return PlaceScene.of(there.records(), there.species(), place, nests);
    }

    /** {@return the life of a bird that is in the book} */
    BirdScene life(BookContents there, StripView.OneBird wanted) {
        return BirdScene.of(
                there.records(),
                bird(there, wanted).orElseThrow(),
                List.copyOf(there.maps().values()));
    }

    static Optional<RingedBird> bird(BookContents there, StripView.OneBird wanted) {
        return there.records().ringedBirds().stream()
                .filter(bird -> bird.id().equals(wanted.bird()))
                .findFirst();
    }
}

package org.ouzelbook.ui.app;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.place.PlaceSettings;
import org.ouzelbook.tracker.place.Places;
import org.ouzelbook.tracker.store.BookView;

/** The places and ringed birds by which lines are read; read again from the book only after it was changed. */
final class KnownWater {
    private long step = -1;
    private @Nullable Water water;

    /**
     * What lines are read by.
     *
     * @param places the rivers and landmarks
     * @param landmarks the landmarks
     * @param ringed the birds with colour rings
     */
    record Water(Places places, List<Landmark> landmarks, List<RingedBird> ringed) {}

    /** {@return the places and ringed birds of a book as they are now} */
    synchronized Water of(BookView view) {
        Water known = water;
        long now = view.lastStep();
        if (known == null || now != step) {
            List<Landmark> landmarks = view.landmarks();
            known = new Water(Places.of(view.network(), landmarks, PlaceSettings.USUAL), landmarks, view.ringedBirds());
            water = known;
            step = now;
        }
        return known;
    }
}

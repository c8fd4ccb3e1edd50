package org.ouzelbook.ui.window;

import java.util.Optional;
import org.ouzelbook.tracker.domain.Species;

/**
 * What somebody asks to see of a book when it is opened. It goes before what was looked at last time, which stands wherever nothing
 * is asked.
 *
 * @param species the species
 * @param season the season
 */
record Wanted(Optional<Species> species, Optional<Integer> season) {
    /** Nothing is asked. */
    static final Wanted NOTHING = new Wanted(Optional.empty(), Optional.empty());

    /**
     * {@return the species to show; empty where nothing tells}
     *
     * @param kept what was looked at last time
     */
    Optional<Species> species(Optional<Desk.View> kept) {
        return species.or(() -> kept.map(Desk.View::species));
    }

    /**
     * {@return where to begin; empty where nothing tells}
     *
     * @param kept what was looked at last time; a place of another species says nothing of this one
     */
    Optional<StripPlace> place(Optional<Desk.View> kept) {
        return season.map(StripPlace::of)
                .or(() -> kept.filter(
                                view -> species.map(view.species()::equals).orElse(true))
                        .map(Desk.View::place));
    }
}

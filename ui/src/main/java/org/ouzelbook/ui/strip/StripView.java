package org.ouzelbook.ui.strip;

import java.util.UUID;
import org.ouzelbook.tracker.domain.Stretch;

/** What a strip shows: all seasons, and nearer in one season, one place over the years, or the life of one bird. */
public sealed interface StripView {
    /** Every season of the book, stacked. */
    record AllSeasons() implements StripView {}

    /**
     * One season: river km across, dates down.
     *
     * @param year the calendar year
     */
    record OneSeason(int year) implements StripView {}

    /**
     * Everything ever seen at one place: the days of the year across, years down.
     *
     * @param riverId key of its river
     * @param around the water that counts as the place
     * @param name what the place is called
     */
    record OnePlace(UUID riverId, Stretch around, String name) implements StripView {}

    /**
     * The life of one ringed bird: river km across, years down.
     *
     * @param bird key of the bird
     */
    record OneBird(UUID bird) implements StripView {}
}

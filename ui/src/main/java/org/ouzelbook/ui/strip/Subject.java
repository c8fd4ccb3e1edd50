package org.ouzelbook.ui.strip;

import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Stretch;

/** What a place on a drawing stands for. */
public sealed interface Subject {
    /**
     * A territory of one season.
     *
     * @param season the calendar year
     * @param riverId key of its river
     * @param id its letter
     */
    record OfTerritory(int season, UUID riverId, String id) implements Subject {}

    /**
     * A sighting.
     *
     * @param id its key
     */
    record OfSighting(UUID id) implements Subject {}

    /**
     * A visit.
     *
     * @param id its key
     */
    record OfVisit(UUID id) implements Subject {}

    /**
     * A season of one river.
     *
     * @param season the calendar year
     * @param riverId key of the river
     */
    record OfSeason(int season, UUID riverId) implements Subject {}

    /**
     * A landmark.
     *
     * @param id its key
     */
    record OfLandmark(UUID id) implements Subject {}

    /**
     * A ringed bird.
     *
     * @param id its key
     */
    record OfBird(UUID id) implements Subject {}

    /**
     * Sightings that stand too close together to be drawn one by one.
     *
     * @param riverId key of their river
     * @param water the water on which they lie
     * @param from the first day
     * @param to the last day
     */
    record OfCrowd(UUID riverId, Stretch water, LocalDate from, LocalDate to) implements Subject {
        boolean holds(Sighting sighting) {
            return sighting.place().riverId().equals(riverId)
                    && water.contains(sighting.place().chainage())
                    && !sighting.date().isBefore(from)
                    && !sighting.date().isAfter(to);
        }
    }

    /**
     * A river that joins another; it can be folded away and unfolded.
     *
     * @param id its key
     */
    record OfRiver(UUID id) implements Subject {}

    /**
     * A kick sample.
     *
     * @param id its key
     */
    record OfSample(UUID id) implements Subject {}

    /**
     * A nest; drawn only where nests were asked for.
     *
     * @param id its key
     */
    record OfNest(UUID id) implements Subject {}

    /**
     * Water where a pair that no visit found would fit.
     *
     * @param season the calendar year
     * @param riverId key of the river
     * @param water the water
     */
    record OfRoom(int season, UUID riverId, Stretch water) implements Subject {}

    /**
     * Water that nobody walked, in a season or on one of its days.
     *
     * @param season the calendar year
     * @param riverId key of the river
     * @param water the water
     * @param day the first day of the round that left it out; empty for the whole season
     */
    record OfUnwalked(int season, UUID riverId, Stretch water, Optional<LocalDate> day) implements Subject {}

    /**
     * Where a territory ends, and may be moved to.
     *
     * @param season the calendar year
     * @param riverId key of its river
     * @param id the territory's letter
     * @param upper whether it is the upper end
     */
    record OfEnd(int season, UUID riverId, String id, boolean upper) implements Subject {}
}

package org.ouzelbook.ui.strip;

import java.util.UUID;

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
}

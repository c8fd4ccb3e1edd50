package org.ouzelbook.stats.survey;

import java.util.Optional;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * An accepted territory as a map draws it: where it lies, and no word on why.
 *
 * @param species whose it is
 * @param season the calendar year
 * @param river its river
 * @param id its letter, as {@link Territory} has it
 * @param stretch from its lowest to its highest registration or turn-back
 * @param centre the middle one of its registrations
 * @param evidence the highest breeding evidence; empty where there is none
 */
public record TerritoryOutline(
        Species species,
        int season,
        River river,
        String id,
        Stretch stretch,
        Chainage centre,
        Optional<Territory.Evidence> evidence) {}

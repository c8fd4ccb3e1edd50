package org.ouzelbook.stats.simulate.fieldwork;

import java.time.MonthDay;
import java.util.List;
import java.util.UUID;
import org.ouzelbook.stats.simulate.nature.RiverBed;
import org.ouzelbook.tracker.domain.Chainage;

/**
 * Kick samples at the same places, spring and autumn.
 *
 * @param bed what lives on the river bed
 * @param sites the places
 * @param spring usual date in spring
 * @param autumn usual date in autumn
 * @param minutes active kicking time, in minutes
 * @param method how they are taken
 * @param sampler who takes them
 * @param missed probability that a sample is not taken
 */
public record KickPlan(
        RiverBed bed,
        List<Site> sites,
        MonthDay spring,
        MonthDay autumn,
        double minutes,
        String method,
        String sampler,
        double missed) {
    /** Copies the list. */
    public KickPlan {
        sites = List.copyOf(sites);
    }

    /**
     * A place that is sampled.
     *
     * @param label short name, the first part of each sample's
     * @param riverId the river
     * @param at distance from the river's mouth
     */
    public record Site(String label, UUID riverId, Chainage at) {}
}

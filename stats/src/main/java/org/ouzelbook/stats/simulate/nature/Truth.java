package org.ouzelbook.stats.simulate.nature;

import java.util.List;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Species;

/**
 * Every pair of every season, found or not.
 *
 * @param pairs the pairs, by species, season, river and distance from the mouth
 */
public record Truth(List<TruePair> pairs) {
    /** Copies the list. */
    public Truth {
        pairs = List.copyOf(pairs);
    }

    /**
     * {@return the pairs of one species in one season}
     *
     * @param species a species
     * @param season a calendar year
     */
    public List<TruePair> pairs(Species species, int season) {
        return pairs.stream()
                .filter(pair -> pair.species().equals(species) && pair.season() == season)
                .toList();
    }

    /**
     * {@return how many pairs nested on one river}
     *
     * @param species a species
     * @param season a calendar year
     * @param riverId the river
     */
    public long count(Species species, int season, UUID riverId) {
        return pairs(species, season).stream()
                .filter(pair -> pair.home().riverId().equals(riverId))
                .count();
    }
}

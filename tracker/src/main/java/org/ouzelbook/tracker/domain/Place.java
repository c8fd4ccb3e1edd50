package org.ouzelbook.tracker.domain;

import java.util.UUID;

/**
 * Where along the water: a river, a distance from its mouth, a bank, and how well it is known.
 *
 * @param riverId the {@link River}
 * @param chainage distance along the water from the river's mouth
 * @param bank the side, looking downstream
 * @param uncertaintyMetres the place lies within this many metres of the chainage, along the water; positive
 * @param lineVersion the version of the {@link RiverLine} that the chainage was measured on; 1 or more
 */
public record Place(UUID riverId, Chainage chainage, Bank bank, double uncertaintyMetres, int lineVersion) {
    /**
     * Checks the uncertainty and the version.
     *
     * @throws IllegalArgumentException if the uncertainty is not positive and finite, or the version is below 1
     */
    public Place {
        if (!(uncertaintyMetres > 0 && uncertaintyMetres < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("Uncertainty must be positive and finite, but was " + uncertaintyMetres);
        }
        if (lineVersion < 1) {
            throw new IllegalArgumentException("Line versions count from 1, but was " + lineVersion);
        }
    }
}

package org.ouzelbook.stats.simulate.nature;

import java.util.UUID;
import org.ouzelbook.tracker.domain.River;

/**
 * A river and how long it is.
 *
 * @param river the river, with its mouth where it is a tributary
 * @param lengthMetres from mouth to source, in metres; positive
 */
public record Course(River river, double lengthMetres) {
    /**
     * Checks the length.
     *
     * @throws IllegalArgumentException if it is not positive and finite
     */
    public Course {
        if (!(lengthMetres > 0 && lengthMetres < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("A course has a length above 0 m, but was " + lengthMetres);
        }
    }

    UUID id() {
        return river.id();
    }
}

package org.ouzelbook.tracker.domain;

import java.util.UUID;

/**
 * A named stretch of a river that is surveyed and reported as one.
 *
 * @param id its key
 * @param name its name; not blank
 * @param riverId the {@link River}
 * @param stretch its two ends; longer than 0 m
 */
public record Reach(UUID id, String name, UUID riverId, Stretch stretch) implements Entry {
    /**
     * Checks the name and the length.
     *
     * @throws IllegalArgumentException if the name is blank or the stretch has no length
     */
    public Reach {
        if (name.isBlank()) {
            throw new IllegalArgumentException("A reach needs a name");
        }
        if (!(stretch.length() > 0)) {
            throw new IllegalArgumentException("Reach " + name + " has no length");
        }
    }
}

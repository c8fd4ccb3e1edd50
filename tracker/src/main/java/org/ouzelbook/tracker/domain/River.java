package org.ouzelbook.tracker.domain;

import java.util.Optional;
import java.util.UUID;

/**
 * A river or side stream, with a name and, where it is a tributary, the place where it joins another.
 *
 * @param id its key
 * @param name its name; not blank
 * @param mouth where its mouth lies on another river of the book; empty for the main river
 */
public record River(UUID id, String name, Optional<Confluence> mouth) implements Entry {
    /**
     * Checks the name.
     *
     * @throws IllegalArgumentException if the name is blank, or the river joins itself
     */
    public River {
        if (name.isBlank()) {
            throw new IllegalArgumentException("A river needs a name");
        }
        if (mouth.isPresent() && mouth.get().riverId().equals(id)) {
            throw new IllegalArgumentException(name + " cannot join itself");
        }
    }

    /**
     * The place on the receiving river where a tributary's mouth lies.
     *
     * @param riverId the receiving {@link River}
     * @param chainage distance along the receiving river from its own mouth
     */
    public record Confluence(UUID riverId, Chainage chainage) {}
}

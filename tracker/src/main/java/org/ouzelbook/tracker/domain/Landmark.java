package org.ouzelbook.tracker.domain;

import java.util.List;
import java.util.UUID;

/**
 * A known rock, bridge or other fixed thing that places are told by.
 *
 * @param id its key
 * @param name its name; not blank
 * @param kind what it is
 * @param place where it is
 * @param aliases other names for it
 * @param nestSite whether birds are known to nest there; a private fact
 */
public record Landmark(UUID id, String name, LandmarkKind kind, Place place, List<String> aliases, boolean nestSite)
        implements Entry {
    /**
     * Copies the aliases and checks the name.
     *
     * @throws IllegalArgumentException if the name is blank
     */
    public Landmark {
        aliases = List.copyOf(aliases);
        if (name.isBlank()) {
            throw new IllegalArgumentException("A landmark needs a name");
        }
    }
}

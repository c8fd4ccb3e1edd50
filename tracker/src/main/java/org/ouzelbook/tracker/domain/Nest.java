package org.ouzelbook.tracker.domain;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * One nesting attempt: one nest from its first egg to its end. Where it is, is private.
 *
 * @param id its key
 * @param label what the surveyor calls it; not blank, unique in its book
 * @param place where it is
 * @param species whose it is
 * @param site what it is built on
 * @param heightMetres height above the water, in metres
 * @param found the date when it was found
 * @param note anything else
 */
public record Nest(
        UUID id,
        String label,
        Place place,
        Species species,
        NestSite site,
        OptionalDouble heightMetres,
        Optional<LocalDate> found,
        String note)
        implements Entry {
    /**
     * Checks the label.
     *
     * @throws IllegalArgumentException if the label is blank
     */
    public Nest {
        if (label.isBlank()) {
            throw new IllegalArgumentException("A nest needs a label");
        }
    }
}

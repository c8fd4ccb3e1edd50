package org.ouzelbook.tracker.domain;

import java.time.LocalDate;
import java.time.Year;
import java.util.Optional;
import java.util.UUID;

/**
 * A bird that carries colour rings; left and right are the bird's own, each position read from the top down.
 *
 * @param id its key
 * @param label what the project calls it; not blank, unique in its book
 * @param leftUpper rings above the joint of the left leg, as written; blank if none
 * @param leftLower rings below the joint of the left leg
 * @param rightUpper rings above the joint of the right leg
 * @param rightLower rings below the joint of the right leg
 * @param ring number of the metal ring; a private fact
 * @param sex its sex
 * @param hatched the year in which it hatched
 * @param ringed the date when it was ringed
 * @param note anything else
 */
public record RingedBird(
        UUID id,
        String label,
        String leftUpper,
        String leftLower,
        String rightUpper,
        String rightLower,
        String ring,
        Sex sex,
        Optional<Year> hatched,
        Optional<LocalDate> ringed,
        String note)
        implements Entry {
    /**
     * Checks the label.
     *
     * @throws IllegalArgumentException if the label is blank
     */
    public RingedBird {
        if (label.isBlank()) {
            throw new IllegalArgumentException("A ringed bird needs a label");
        }
    }
}

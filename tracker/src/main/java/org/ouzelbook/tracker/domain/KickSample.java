package org.ouzelbook.tracker.domain;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * One kick sample of the animals on the river bed.
 *
 * @param id its key
 * @param label what the sampler calls it; not blank, unique in its book
 * @param date the local date
 * @param place where it was taken
 * @param minutes active kicking time, in minutes; empty if not written down
 * @param method how it was taken
 * @param sampler who took it
 * @param note anything else
 * @param taxa what was found, in the order of the sheet
 */
public record KickSample(
        UUID id,
        String label,
        LocalDate date,
        Place place,
        OptionalDouble minutes,
        String method,
        String sampler,
        String note,
        List<Taxon> taxa)
        implements Entry {
    /**
     * Copies the taxa and checks the label.
     *
     * @throws IllegalArgumentException if the label is blank
     */
    public KickSample {
        taxa = List.copyOf(taxa);
        if (label.isBlank()) {
            throw new IllegalArgumentException("A kick sample needs a label");
        }
    }

    /**
     * One line of the sheet.
     *
     * @param name family or other group, as written
     * @param abundance a count, or a class A to D, as written
     */
    public record Taxon(String name, String abundance) {}
}

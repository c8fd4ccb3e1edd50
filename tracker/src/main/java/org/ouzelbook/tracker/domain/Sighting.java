package org.ouzelbook.tracker.domain;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * One registration: a bird, a pair or a group, seen or heard at one place on one visit.
 *
 * @param id its key
 * @param label what the surveyor or the file calls it; blank if nothing
 * @param visitId the {@link Visit}; empty for a casual record
 * @param date the local date
 * @param time the local time
 * @param place where the bird was first met
 * @param species what it was
 * @param count individuals; 1 or more
 * @param age age of the bird or birds
 * @param sex sex of the bird or birds; {@link Sex#UNKNOWN} for a pair
 * @param activities what they were doing
 * @param breedingCode the code that the observer gave; empty if none, then it is derived from the activities
 * @param rings the colour-ring reading as written, left leg first; blank if none
 * @param simultaneousWith keys of sightings that were certainly different birds at the same time; always mutual
 * @param flewTo where it flew to when flushed
 * @param turnedBack whether it turned back at {@code flewTo} towards where it came from: the end of its ground
 * @param observer who saw it
 * @param note anything else
 */
public record Sighting(
        UUID id,
        String label,
        Optional<UUID> visitId,
        LocalDate date,
        Optional<LocalTime> time,
        Place place,
        Species species,
        int count,
        Age age,
        Sex sex,
        Set<Activity> activities,
        Optional<BreedingCode> breedingCode,
        String rings,
        Set<UUID> simultaneousWith,
        Optional<Chainage> flewTo,
        boolean turnedBack,
        String observer,
        String note)
        implements Entry {
    /**
     * Copies the sets and checks what can be checked alone.
     *
     * @throws IllegalArgumentException if the count is below 1, the sighting is simultaneous with itself, or it turned back
     *     at no place
     */
    public Sighting {
        activities = Set.copyOf(activities);
        simultaneousWith = Set.copyOf(simultaneousWith);
        if (count < 1) {
            throw new IllegalArgumentException("A sighting is of one bird or more, but the count was " + count);
        }
        if (simultaneousWith.contains(id)) {
            throw new IllegalArgumentException("A sighting cannot be simultaneous with itself");
        }
        if (turnedBack && flewTo.isEmpty()) {
            throw new IllegalArgumentException("A bird that turned back needs the place where it did");
        }
    }

    /**
     * {@return this sighting, by another observer}
     *
     * @param other who saw it
     */
    public Sighting observedBy(String other) {
        return new Sighting(
                id,
                label,
                visitId,
                date,
                time,
                place,
                species,
                count,
                age,
                sex,
                activities,
                breedingCode,
                rings,
                simultaneousWith,
                flewTo,
                turnedBack,
                other,
                note);
    }
}

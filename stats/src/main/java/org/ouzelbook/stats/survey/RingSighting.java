package org.ouzelbook.stats.survey;

import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.rings.RingReading;
import org.ouzelbook.tracker.rings.RingRegister;

/**
 * A sighting whose rings were read.
 *
 * @param sighting the sighting
 * @param reading what was read; empty if it cannot be understood
 * @param candidates the birds that may have been read so
 */
public record RingSighting(Sighting sighting, Optional<RingReading> reading, List<RingedBird> candidates) {
    /** Copies the list. */
    public RingSighting {
        candidates = List.copyOf(candidates);
    }

    /** What a reading tells. */
    public enum Outcome {
        /** Read completely, and one bird carries these rings. */
        IDENTIFIED,
        /** Read in part, and one bird only may have been read so: a hint, not a certainty. */
        ONE_CANDIDATE,
        /** Several birds may have been read so. */
        SEVERAL_CANDIDATES,
        /** No bird carries such rings. */
        NO_CANDIDATE,
        /** It cannot be understood. */
        NOT_UNDERSTOOD
    }

    static RingSighting of(Sighting sighting, RingRegister register) {
        Optional<RingReading> reading = RingReading.read(sighting.rings());
        return new RingSighting(
                sighting,
                reading,
                reading.map(read -> register.candidates(read, sighting.date())).orElse(List.of()));
    }

    /** {@return what it tells} */
    public Outcome outcome() {
        if (reading.isEmpty()) {
            return Outcome.NOT_UNDERSTOOD;
        }
        return switch (candidates.size()) {
            case 0 -> Outcome.NO_CANDIDATE;
            case 1 -> reading.get().isCertain() ? Outcome.IDENTIFIED : Outcome.ONE_CANDIDATE;
            default -> Outcome.SEVERAL_CANDIDATES;
        };
    }
}

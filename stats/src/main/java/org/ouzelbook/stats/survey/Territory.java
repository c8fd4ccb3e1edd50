package org.ouzelbook.stats.survey;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * A cluster of registrations judged to belong to one pair or holder, and what the rules say of it.
 *
 * @param id a letter, A at the mouth and on upstream
 * @param stretch from its lowest to its highest registration or wall-side end, on the river that the map names
 * @param centre the middle of its registrations
 * @param standing whether it counts
 * @param edge whether it lies across the limit of the surveyed water
 * @param evidence the highest breeding evidence; empty where there is none
 * @param registrations its sightings, by date
 * @param nests its nests
 * @param because why it stands, or does not, and what bounds it
 * @param hangsOn the single records without which the answer would be another
 */
public record Territory(
        String id,
        Stretch stretch,
        Chainage centre,
        Standing standing,
        boolean edge,
        Optional<Evidence> evidence,
        List<Sighting> registrations,
        List<Nest> nests,
        List<Message> because,
        List<HangsOn> hangsOn) {
    /** Copies the lists. */
    public Territory {
        registrations = List.copyOf(registrations);
        nests = List.copyOf(nests);
        because = List.copyOf(because);
        hangsOn = List.copyOf(hangsOn);
    }

    /** What the rules say of a cluster. */
    public enum Standing {
        /** Accepted, and counted for this water. */
        COUNTED,
        /** Accepted, but most of it lies off the surveyed water: shown apart. */
        EDGE,
        /** Too few registrations, or too close in time. */
        NOT_ACCEPTED
    }

    /**
     * The highest breeding evidence and the records that gave it.
     *
     * @param code the code
     * @param records keys of the sightings or nest checks that gave it; two for a derived code 4
     */
    public record Evidence(BreedingCode code, List<UUID> records) {
        /** Copies the list. */
        public Evidence {
            records = List.copyOf(records);
        }
    }

    /**
     * A record on which the answer hangs.
     *
     * @param record key of the sighting or nest
     * @param otherwise what the answer would be without it
     */
    public record HangsOn(UUID record, Message otherwise) {}
}

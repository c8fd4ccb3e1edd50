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
 * @param id a letter, A at the mouth and on upstream; after Z comes AA
 * @param stretch from its lowest to its highest registration or turn-back, on the river that the map names
 * @param arm the part of it on the other side of a confluence, where it reaches into a second river
 * @param centre the middle one of its registrations
 * @param standing whether it counts
 * @param edge whether it lies across the limit of the surveyed water
 * @param evidence the highest breeding evidence; empty where there is none
 * @param registrations its sightings, by date
 * @param nests its nests, by date
 * @param because why it stands, or does not, and what bounds it
 * @param hangsOn the records without which the answer would be another
 */
public record Territory(
        String id,
        Stretch stretch,
        Optional<Arm> arm,
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

    /** {@return whether the rules accept it, wherever it counts} */
    public boolean accepted() {
        return standing != Standing.NOT_ACCEPTED;
    }

    /** What the rules say of a cluster. */
    public enum Standing {
        /** Accepted, and counted for this water. */
        COUNTED,
        /** Accepted, but no more than half of it lies on surveyed water: shown apart. */
        EDGE,
        /** Accepted, and counted for the neighbouring water, where its middle registration lies. */
        ELSEWHERE,
        /** Accepted, but wholly off the surveyed water: casual records, no part of any density. */
        OUTSIDE,
        /** Too few registrations, or too close in time. */
        NOT_ACCEPTED
    }

    /**
     * The part of a territory on a second river.
     *
     * @param riverId key of that river
     * @param stretch its water there; by rule, from its lowest to its highest registration
     */
    public record Arm(UUID riverId, Stretch stretch) {}

    /**
     * The highest breeding evidence and the records behind it.
     *
     * @param code the code
     * @param records keys of the sightings or nest checks that gave it; a derived code 4 names two sightings first
     * @param further keys of further sightings or nest checks of the same class: possible, probable or confirmed
     */
    public record Evidence(BreedingCode code, List<UUID> records, List<UUID> further) {
        /** Copies the lists. */
        public Evidence {
            records = List.copyOf(records);
            further = List.copyOf(further);
        }
    }

    /**
     * Records on which the answer hangs: one alone, or the marks that together keep two territories apart.
     *
     * @param records keys of the sightings or nests
     * @param otherwise what the answer would be without them, naming them
     */
    public record HangsOn(List<UUID> records, Message otherwise) {
        /** Copies the list. */
        public HangsOn {
            records = List.copyOf(records);
        }
    }
}

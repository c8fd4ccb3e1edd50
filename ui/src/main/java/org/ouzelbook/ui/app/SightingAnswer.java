package org.ouzelbook.ui.app;

import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;

/**
 * A sighting as scripts read it.
 *
 * @param key its key
 * @param visit label of its visit
 * @param date the local date
 * @param time the local time
 * @param river name of the river
 * @param km distance from the mouth
 * @param bank the side, looking downstream
 * @param uncertaintyMetres how well the km is known, in metres
 * @param species what it was
 * @param count individuals
 * @param age their age
 * @param sex their sex
 * @param activities what they were doing
 * @param breedingCode the observer's code, 0 to 16
 * @param rings the ring reading as written
 * @param flewToKm where it flew to
 * @param turnedBack whether it turned back there
 * @param simultaneousWith keys of the sightings at the same time
 * @param observer who saw it
 * @param note anything else
 */
public record SightingAnswer(
        UUID key,
        Optional<String> visit,
        LocalDate date,
        Optional<LocalTime> time,
        String river,
        Chainage km,
        Bank bank,
        double uncertaintyMetres,
        Species species,
        int count,
        Age age,
        Sex sex,
        List<Activity> activities,
        Optional<Integer> breedingCode,
        String rings,
        Optional<Chainage> flewToKm,
        boolean turnedBack,
        List<UUID> simultaneousWith,
        String observer,
        String note) {
    /** Copies the lists. */
    public SightingAnswer {
        activities = List.copyOf(activities);
        simultaneousWith = List.copyOf(simultaneousWith);
    }

    static SightingAnswer of(Sighting sighting, RiverNetwork network, Optional<Visit> visit) {
        return new SightingAnswer(
                sighting.id(),
                visit.map(Visit::label),
                sighting.date(),
                sighting.time(),
                network.river(sighting.place().riverId()).name(),
                sighting.place().chainage(),
                sighting.place().bank(),
                sighting.place().uncertaintyMetres(),
                sighting.species(),
                sighting.count(),
                sighting.age(),
                sighting.sex(),
                sighting.activities().stream().sorted().toList(),
                sighting.breedingCode().map(BreedingCode::number),
                sighting.rings(),
                sighting.flewTo(),
                sighting.turnedBack(),
                sighting.simultaneousWith().stream().sorted().toList(),
                sighting.observer(),
                sighting.note());
    }
}

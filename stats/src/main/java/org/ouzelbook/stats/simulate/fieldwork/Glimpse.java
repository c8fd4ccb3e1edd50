package org.ouzelbook.stats.simulate.fieldwork;

import java.time.LocalTime;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Species;

/** A sighting in the making, before the visit's page is put in order. */
final class Glimpse {
    final Species species;
    final double metres;
    final LocalTime time;
    final Set<Activity> activities = EnumSet.noneOf(Activity.class);
    int count = 1;
    Age age = Age.ADULT;
    Sex sex = Sex.UNKNOWN;
    String rings = "";
    String note = "";
    OptionalDouble flewTo = OptionalDouble.empty();
    boolean turnedBack;
    Optional<UUID> quarrel = Optional.empty();

    Glimpse(Species species, double metres, LocalTime time) {
        this.species = species;
        this.metres = metres;
        this.time = time;
    }

    /** Notes what the bird does; a kingfisher calls where others sing, and digs where others carry moss. */
    void does(Activity activity) {
        boolean kingfisher = species.equals(Species.KINGFISHER);
        if (kingfisher && activity == Activity.SINGING) {
            activities.add(Activity.CALLING);
        } else if (kingfisher && activity == Activity.CARRYING_MATERIAL) {
            activities.add(Activity.BUILDING);
        } else {
            activities.add(activity);
        }
    }
}

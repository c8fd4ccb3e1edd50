package org.ouzelbook.tracker.notebook;

import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Sex;

/** Birds of one age at one place, as far as the line has told of them. */
final class Group {
    private static final Set<Activity> OF_ADULTS = EnumSet.of(
            Activity.SINGING,
            Activity.DISPLAY,
            Activity.CARRYING_MATERIAL,
            Activity.BUILDING,
            Activity.AT_NEST_SITE,
            Activity.CARRYING_FOOD,
            Activity.CARRYING_FAECAL_SAC,
            Activity.FEEDING_YOUNG,
            Activity.INCUBATING);

    OptionalInt count = OptionalInt.empty();
    boolean pair;
    Optional<Age> age = Optional.empty();
    Optional<Boolean> dependent = Optional.empty();
    Optional<Sex> sex = Optional.empty();
    String rings = "";
    final Set<Activity> activities = EnumSet.noneOf(Activity.class);

    /** {@return whether only full-grown birds do this, so that it is not said of the young beside them} */
    static boolean isOfAdults(Activity activity) {
        return OF_ADULTS.contains(activity);
    }

    boolean isYoung() {
        return dependent.isPresent() || age.filter(told -> told == Age.JUVENILE).isPresent();
    }

    boolean isEmpty() {
        return count.isEmpty()
                && !pair
                && age.isEmpty()
                && dependent.isEmpty()
                && sex.isEmpty()
                && activities.isEmpty();
    }

    int birds() {
        return pair ? 2 : count.orElse(1);
    }

    Age toldAge() {
        if (dependent.isPresent()) {
            return dependent.get() ? Age.DEPENDENT_JUVENILE : Age.INDEPENDENT_JUVENILE;
        }
        return pair ? Age.ADULT : age.orElse(Age.UNKNOWN);
    }
}

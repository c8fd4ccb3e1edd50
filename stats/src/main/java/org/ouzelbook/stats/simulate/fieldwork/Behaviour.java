package org.ouzelbook.stats.simulate.fieldwork;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.stats.simulate.nature.Attempt;
import org.ouzelbook.stats.simulate.nature.Attempt.Phase;
import org.ouzelbook.stats.simulate.nature.TruePair;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;

/** What a pair's birds are doing when they are met, by where their nest stands. */
final class Behaviour {
    private static final int BUILDING_DAYS = 28;

    private Behaviour() {}

    static Phase phase(TruePair pair, LocalDate day) {
        Phase phase = Phase.AHEAD;
        for (Attempt attempt : pair.attempts()) {
            Phase now = attempt.on(day);
            if (now != Phase.AHEAD) {
                phase = now;
            }
        }
        return phase;
    }

    /** Fills in what the birds do; {@code atNest} when they are met close to the nest site. */
    static void fill(Glimpse glimpse, TruePair pair, LocalDate day, boolean atNest, Draws draws) {
        switch (phase(pair, day)) {
            case AHEAD -> beforeEggs(glimpse, daysToEggs(pair, day), atNest, draws);
            case LAYING, INCUBATION -> withEggs(glimpse, atNest, draws);
            case NESTLINGS -> withNestlings(glimpse, atNest, draws);
            case LED_YOUNG -> withYoung(glimpse, pair, day, draws);
            case OVER -> plain(glimpse, 0.15, draws);
        }
    }

    private static long daysToEggs(TruePair pair, LocalDate day) {
        return pair.attempts().isEmpty()
                ? Long.MAX_VALUE
                : ChronoUnit.DAYS.between(day, pair.attempts().get(0).firstEgg());
    }

    private static void beforeEggs(Glimpse glimpse, long daysToEggs, boolean atNest, Draws draws) {
        if (atNest && daysToEggs < BUILDING_DAYS && draws.happens(0.35)) {
            glimpse.does(draws.happens(0.6) ? Activity.CARRYING_MATERIAL : Activity.BUILDING);
        } else if (atNest && draws.happens(0.12)) {
            glimpse.does(Activity.AT_NEST_SITE);
        } else if (draws.happens(0.06)) {
            glimpse.does(Activity.DISPLAY);
            glimpse.count = 2;
        } else {
            plain(glimpse, 0.45, draws);
        }
        if (draws.happens(0.35)) {
            glimpse.count = 2;
        }
    }

    private static void withEggs(Glimpse glimpse, boolean atNest, Draws draws) {
        if (atNest && draws.happens(0.1)) {
            glimpse.does(Activity.AT_NEST_SITE);
        } else {
            plain(glimpse, 0.25, draws);
        }
        if (draws.happens(0.08)) {
            glimpse.count = 2;
        }
    }

    private static void withNestlings(Glimpse glimpse, boolean atNest, Draws draws) {
        if (draws.happens(atNest ? 0.6 : 0.35)) {
            glimpse.does(draws.happens(0.88) ? Activity.CARRYING_FOOD : Activity.CARRYING_FAECAL_SAC);
        } else if (atNest && draws.happens(0.3)) {
            glimpse.does(Activity.ALARM);
        } else {
            plain(glimpse, 0.12, draws);
        }
        if (draws.happens(0.2)) {
            glimpse.count = 2;
        }
    }

    private static void withYoung(Glimpse glimpse, TruePair pair, LocalDate day, Draws draws) {
        int brood = pair.attempts().stream()
                .filter(attempt -> attempt.on(day) == Phase.LED_YOUNG)
                .mapToInt(attempt -> attempt.young().size())
                .sum();
        if (brood > 0 && draws.happens(0.55)) {
            glimpse.age = Age.DEPENDENT_JUVENILE;
            glimpse.count = Math.max(1, brood - draws.below(3));
            glimpse.does(Activity.DEPENDENT_YOUNG);
            glimpse.note = draws.happens(0.4) ? "begging" : "";
        } else if (draws.happens(0.3)) {
            glimpse.does(Activity.CARRYING_FOOD);
        } else {
            plain(glimpse, 0.15, draws);
        }
    }

    /** Song with this probability, else a bird going about its day. */
    static void plain(Glimpse glimpse, double song, Draws draws) {
        double chance = draws.uniform();
        if (chance < song) {
            glimpse.does(Activity.SINGING);
        } else if (chance < song + (1 - song) * 0.55) {
            glimpse.does(Activity.FEEDING);
        } else if (chance < song + (1 - song) * 0.75) {
            glimpse.does(Activity.CALLING);
        } else if (chance < song + (1 - song) * 0.85) {
            glimpse.does(Activity.BATHING);
        } else if (chance < song + (1 - song) * 0.93) {
            glimpse.does(Activity.RESTING);
        }
    }
}

package org.ouzelbook.stats.simulate.skerra;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Sighting;

/** What people write for what they saw: in the full words of the trade, or in short. */
final class Words {
    private static final List<String> ASIDES = List.of(
            "on the usual stone",
            "dived three times, came up with cased caddis",
            "under the arch",
            "bobbing on the weir sill",
            "very dark water",
            "flew off low over the water",
            "on the ice at the edge",
            "shared the pool with a heron",
            "quite tame",
            "droppings all over the boulder");

    private Words() {}

    static String full(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    static String activities(Sighting sighting, String between) {
        return sighting.activities().stream().sorted().map(Words::full).collect(Collectors.joining(between));
    }

    static String shortActivities(Sighting sighting, String between) {
        return sighting.activities().stream().sorted().map(Words::inShort).collect(Collectors.joining(between));
    }

    private static String inShort(Activity activity) {
        return switch (activity) {
            case SINGING -> "song";
            case CALLING -> "call";
            case AGGRESSION -> "fight";
            case CARRYING_MATERIAL -> "nest material";
            case CARRYING_FOOD -> "food";
            case FLYING_UP -> "flew up";
            case FLYING_DOWN -> "flew down";
            case DEPENDENT_YOUNG -> "fledglings";
            default -> full(activity);
        };
    }

    static String age(Sighting sighting) {
        return sighting.age() == Age.UNKNOWN ? "" : full(sighting.age());
    }

    static String bank(Sighting sighting) {
        return sighting.place().bank() == Bank.UNKNOWN
                ? ""
                : full(sighting.place().bank());
    }

    static String bankLetters(Sighting sighting) {
        return switch (sighting.place().bank()) {
            case LEFT -> "LB";
            case RIGHT -> "RB";
            case CHANNEL -> "mid";
            case UNKNOWN -> "";
        };
    }

    static String yes(boolean is) {
        return is ? "yes" : "";
    }

    /** A remark of no use to anybody's map, on a few of the sightings. */
    static String remark(Sighting sighting) {
        Draws draws = Draws.of(Skerra.SEED).branch("remark", sighting.label());
        Optional<String> aside = draws.happens(0.07) ? Optional.of(draws.oneOf(ASIDES)) : Optional.empty();
        return sighting.note().isEmpty() ? aside.orElse("") : sighting.note();
    }
}

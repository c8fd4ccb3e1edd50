package org.ouzelbook.tracker.exchange.cell;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.ouzelbook.tracker.domain.Activity;

/**
 * What one cell says that birds were doing: several activities by {@code ;} {@code ,} {@code +} {@code &} or "and".
 *
 * @param activities the activities that were recognised
 * @param pair whether the cell says that it was a pair
 * @param turnedBack whether the cell says that the bird turned back
 * @param others the pieces that are no known activity, as written
 */
public record WrittenActivities(Set<Activity> activities, boolean pair, boolean turnedBack, List<String> others) {
    private static final Map<String, Activity> WORDS = words();
    private static final Set<String> PAIR = Set.of("pair", "pr", "p", "2 birds", "pair seen");
    private static final Set<String> TURNED = Set.of("turned back", "turn back", "turned", "back", "doubled back");
    private static final Set<String> PLAIN =
            Set.of("seen", "present", "s", "bird", "single", "sitting", "perched", "none");

    /** Copies the collections. */
    public WrittenActivities {
        activities = Set.copyOf(activities);
        others = List.copyOf(others);
    }

    /**
     * {@return what the cell says}
     *
     * @param text the cell
     */
    public static WrittenActivities of(String text) {
        Set<Activity> activities = EnumSet.noneOf(Activity.class);
        List<String> others = new ArrayList<>();
        boolean pair = false;
        boolean turnedBack = false;
        for (String piece : text.split("[;,+&|\\n]|\\b[aA][nN][dD]\\b", -1)) {
            String key = Words.key(piece);
            Activity whole = WORDS.get(key);
            if (whole != null) {
                activities.add(whole);
            } else if (PAIR.contains(key)) {
                pair = true;
            } else if (TURNED.contains(key)) {
                turnedBack = true;
            } else if (key.startsWith("pair ") && WORDS.containsKey(key.substring(5))) {
                pair = true;
                activities.add(WORDS.get(key.substring(5)));
            } else if (!key.isEmpty() && !PLAIN.contains(key)) {
                others.add(piece.strip());
            }
        }
        return new WrittenActivities(activities, pair, turnedBack, others);
    }

    private static Map<String, Activity> words() {
        Map<String, Activity> words = new HashMap<>();
        for (Activity activity : Activity.values()) {
            words.put(activity.name().toLowerCase(Locale.ROOT).replace('_', ' '), activity);
        }
        put(words, Activity.SINGING, "song", "sing", "sings", "sang", "in song", "singing male", "subsong");
        put(words, Activity.CALLING, "call", "calls", "called", "zit", "heard calling", "heard");
        put(words, Activity.ALARM, "alarming", "alarmed", "alarm call", "alarm calling", "alarms", "agitated");
        put(
                words,
                Activity.DISPLAY,
                "courtship",
                "displaying",
                "bobbing display",
                "mating",
                "copulation",
                "copulating");
        put(words, Activity.AGGRESSION, "fight", "fighting", "chase", "chasing", "chased", "dispute", "aggressive");
        put(words, Activity.FEEDING, "feed", "foraging", "diving", "forage", "fishing", "fed");
        put(words, Activity.BATHING, "bath", "bathe", "preening", "preen", "bathing preening", "bathing or preening");
        put(words, Activity.RESTING, "rest", "rests", "loafing", "asleep");
        put(words, Activity.FLYING_UP, "flew up", "flying upstream", "flew upstream", "up", "fly up", "flushed up");
        put(words, Activity.FLYING_UP, "flushed upstream");
        put(words, Activity.FLYING_DOWN, "flew down", "flying downstream", "flew downstream", "down", "fly down");
        put(words, Activity.FLYING_DOWN, "flushed down", "flushed downstream");
        put(words, Activity.CARRYING_MATERIAL, "mat", "material", "nest material", "carrying nest material", "moss");
        put(words, Activity.CARRYING_MATERIAL, "carrying moss", "nest mat", "with nest material", "carrying mat");
        put(
                words,
                Activity.BUILDING,
                "build",
                "nest building",
                "builds",
                "building nest",
                "nestbuilding",
                "excavating");
        put(words, Activity.AT_NEST_SITE, "nest site", "at site", "visiting nest site", "visiting probable nest site");
        put(
                words,
                Activity.CARRYING_FOOD,
                "food",
                "with food",
                "carries food",
                "carry food",
                "food carried",
                "food carrying");
        put(words, Activity.CARRYING_FOOD, "food in bill", "food in beak", "carried food");
        put(words, Activity.CARRYING_FAECAL_SAC, "faecal sac", "fecal sac", "carrying fecal sac", "sac");
        put(words, Activity.FEEDING_YOUNG, "feeding chicks", "feeding juvs", "feeding juveniles", "feeding fledglings");
        put(
                words,
                Activity.INCUBATING,
                "brooding",
                "on nest",
                "sitting on nest",
                "brooding incubating",
                "incubation",
                "on eggs");
        put(
                words,
                Activity.DEPENDENT_YOUNG,
                "fledglings",
                "fledged young",
                "recently fledged young",
                "with young",
                "brood");
        put(words, Activity.DEPENDENT_YOUNG, "with juvs", "fledged", "with fledglings", "with juveniles");
        put(words, Activity.ROOSTING, "roost", "at roost");
        put(words, Activity.DEAD, "found dead", "corpse");
        return Map.copyOf(words);
    }

    private static void put(Map<String, Activity> words, Activity activity, String... ways) {
        for (String way : ways) {
            words.put(Words.key(way), activity);
        }
    }
}

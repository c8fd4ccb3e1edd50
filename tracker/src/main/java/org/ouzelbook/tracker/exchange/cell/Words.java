package org.ouzelbook.tracker.exchange.cell;

import java.util.Arrays;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.TravelMode;

/**
 * One vocabulary and every way of writing its terms that people use. The first way of each term is the one to suggest.
 *
 * @param <T> the terms
 */
public final class Words<T> {
    /** Banks, looking downstream. */
    public static final Words<Bank> BANKS = new Words<Bank>()
            .with(Bank.LEFT, "left", "l", "lb", "left bank", "lhs", "true left")
            .with(Bank.RIGHT, "right", "r", "rb", "right bank", "rhs", "true right")
            .with(
                    Bank.CHANNEL,
                    "channel",
                    "mid",
                    "middle",
                    "midstream",
                    "mid stream",
                    "island",
                    "in channel",
                    "c",
                    "centre");

    /** Ages as told in the field. */
    public static final Words<Age> AGES = new Words<Age>()
            .with(Age.ADULT, "adult", "ad", "ads", "adults", "a")
            .with(
                    Age.DEPENDENT_JUVENILE,
                    "dependent juvenile",
                    "dependent",
                    "dep juv",
                    "juvenile dependent",
                    "fledgling",
                    "fledglings",
                    "dependent young",
                    "juv dependent",
                    "just fledged")
            .with(
                    Age.INDEPENDENT_JUVENILE,
                    "independent juvenile",
                    "independent",
                    "ind juv",
                    "indep juv",
                    "juvenile independent",
                    "juv independent")
            .with(Age.JUVENILE, "juvenile", "juv", "juvs", "j", "juveniles", "young", "immature", "imm")
            .with(Age.FIRST_YEAR, "first-year", "first year", "1y", "1st year", "1cy");

    /** Sexes. */
    public static final Words<Sex> SEXES = new Words<Sex>()
            .with(Sex.FEMALE, "female", "f", "fem", "♀", "females")
            .with(Sex.MALE, "male", "m", "♂", "males")
            .with(
                    Sex.UNKNOWN,
                    "unknown",
                    "u",
                    "undetermined",
                    "pair",
                    "m f",
                    "f m",
                    "both",
                    "mixed",
                    "mf",
                    "♂♀",
                    "male female");

    /** Kinds of landmark. */
    public static final Words<LandmarkKind> LANDMARK_KINDS = new Words<LandmarkKind>()
            .with(LandmarkKind.BRIDGE, "bridge", "footbridge", "foot bridge", "road bridge", "aqueduct", "br")
            .with(LandmarkKind.WEIR, "weir", "sill", "dam")
            .with(LandmarkKind.ROCK, "rock", "stone", "boulder", "stones", "rocks", "stepping stones")
            .with(LandmarkKind.CONFLUENCE, "confluence", "junction", "mouth", "tributary")
            .with(LandmarkKind.WALL, "wall", "revetment")
            .with(LandmarkKind.FALL, "fall", "falls", "waterfall")
            .with(LandmarkKind.OTHER, "other", "tree", "house", "island", "pool", "ford", "gate", "box", "nest box");

    /** What can be decided about territories. */
    public static final Words<DecisionKind> DECISION_KINDS = new Words<DecisionKind>()
            .with(DecisionKind.BOUNDARY, "boundary")
            .with(DecisionKind.TOGETHER, "together", "one territory")
            .with(DecisionKind.NO_TERRITORY, "no territory")
            .with(DecisionKind.NOTE, "note");

    /** Nest sites. */
    public static final Words<NestSite> NEST_SITES = new Words<NestSite>()
            .with(NestSite.BRIDGE, "bridge", "under bridge", "on bridge", "culvert")
            .with(NestSite.WEIR, "weir", "sill")
            .with(NestSite.ROCK, "rock", "boulder", "rock face", "ledge", "cliff")
            .with(NestSite.WALL, "wall")
            .with(NestSite.BANK, "bank", "earth bank", "bank hole", "river bank")
            .with(NestSite.FALL, "fall", "waterfall", "behind waterfall", "falls")
            .with(NestSite.BOX, "box", "nest box", "nestbox")
            .with(NestSite.TREE, "tree", "roots", "tree roots")
            .with(NestSite.OTHER, "other");

    /** Ways along the river. */
    public static final Words<Direction> DIRECTIONS = new Words<Direction>()
            .with(Direction.UPSTREAM, "upstream", "up", "u", "us", "u s")
            .with(Direction.DOWNSTREAM, "downstream", "down", "d", "ds", "d s");

    /** Ways of travelling. */
    public static final Words<TravelMode> MODES = new Words<TravelMode>()
            .with(TravelMode.FOOT, "foot", "on foot", "walk", "walked", "walking", "wading")
            .with(TravelMode.CANOE, "canoe", "kayak", "boat", "paddle", "by canoe");

    /** Yes and no. */
    public static final Words<Boolean> YES_NO = new Words<Boolean>()
            .with(true, "yes", "y", "true", "1", "x", "t", "✓", "✔")
            .with(false, "no", "n", "false", "0", "f");

    /** Ends of a nest. */
    public static final Words<NestOutcome> OUTCOMES = new Words<NestOutcome>()
            .with(NestOutcome.SUCCESS, "success", "successful", "fledged", "s")
            .with(
                    NestOutcome.FAILURE,
                    "failure",
                    "failed",
                    "fail",
                    "lost",
                    "predated",
                    "flooded",
                    "deserted",
                    "destroyed",
                    "abandoned")
            .with(NestOutcome.UNKNOWN, "unknown", "not known", "uncertain");

    private final Map<String, T> terms = new HashMap<>();
    private final TreeSet<String> suggestions = new TreeSet<>();

    private Words() {}

    private Words<T> with(T term, String... ways) {
        Arrays.stream(ways).forEach(way -> terms.put(key(way), term));
        suggestions.add(ways[0]);
        return this;
    }

    /** Lower case, with every run of punctuation and spaces as one space. */
    static String key(String text) {
        return Blank.plainSpaces(text)
                .toLowerCase(Locale.ROOT)
                .replaceAll("[\\p{Punct}\\s–—]+", " ")
                .strip();
    }

    /**
     * {@return the term that somebody wrote; empty if it is none of them}
     *
     * @param text a cell
     */
    public Optional<T> term(String text) {
        return Optional.ofNullable(terms.get(key(text)));
    }

    /** {@return one way of writing each term, to suggest} */
    public Collection<String> suggestions() {
        return Collections.unmodifiableSet(suggestions);
    }
}

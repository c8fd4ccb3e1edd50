package org.ouzelbook.stats.simulate.skerra;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.UUID;
import org.ouzelbook.tracker.domain.LandmarkKind;

/**
 * A landmark of Skerra.
 *
 * @param aliases other names for it, the short one that people scribble first
 * @param nests whether dippers nest there
 */
record KnownPlace(String name, UUID riverId, double km, LandmarkKind kind, List<String> aliases, boolean nests) {

    static List<KnownPlace> all() {
        return List.of(
                arrel("Tide Stone", 0.35, LandmarkKind.ROCK, false),
                arrel("Harbour Bridge", 0.80, LandmarkKind.BRIDGE, true, "Harbour Br.", "Low Bridge"),
                arrel("Ferry Steps", 1.55, LandmarkKind.OTHER, false, "the Steps"),
                arrel("Mill Bridge", 2.45, LandmarkKind.BRIDGE, true, "Mill Br."),
                arrel("Mill Weir", 2.70, LandmarkKind.WEIR, false),
                arrel("Otter Stone", 3.90, LandmarkKind.ROCK, true, "Otter Rock"),
                arrel("Alder Wall", 4.60, LandmarkKind.WALL, true),
                arrel("Kirk Bridge", 5.50, LandmarkKind.BRIDGE, true, "Kirk Br.", "Church Bridge"),
                arrel("Beckfoot", 6.90, LandmarkKind.CONFLUENCE, true, "the Meeting", "Sorn mouth"),
                arrel("Stepping Stones", 7.80, LandmarkKind.ROCK, true, "the Stones"),
                arrel("Long Weir", 8.90, LandmarkKind.WEIR, true),
                arrel("Heron Rock", 9.85, LandmarkKind.ROCK, true),
                arrel("Quarry Wall", 10.60, LandmarkKind.WALL, true, "Quarry"),
                arrel("Drovers' Bridge", 11.40, LandmarkKind.BRIDGE, true, "Drovers’ Br.", "Drovers Bridge"),
                arrel("Twin Boulders", 12.50, LandmarkKind.ROCK, true, "the Twins"),
                arrel("Salmon Leap", 13.30, LandmarkKind.FALL, true, "the Leap"),
                arrel("Old Sluice", 14.10, LandmarkKind.WALL, true, "Sluice"),
                arrel("Larch Bridge", 15.00, LandmarkKind.BRIDGE, true, "Larch Br."),
                arrel("Shepherd's Ford", 15.90, LandmarkKind.OTHER, true, "Shepherds Ford"),
                arrel("Peat Falls", 16.70, LandmarkKind.FALL, true),
                arrel("Moss Bridge", 17.60, LandmarkKind.BRIDGE, false, "Moss Br."),
                sorn("Sorn Bridge", 0.90, LandmarkKind.BRIDGE, true, "Sorn Br."),
                sorn("Bobbin Mill", 1.60, LandmarkKind.WALL, true, "the Bobbin"),
                sorn("Aqueduct", 2.40, LandmarkKind.BRIDGE, true, "the Arches"),
                sorn("White Linn", 3.20, LandmarkKind.FALL, true),
                sorn("Dipping Pool", 4.10, LandmarkKind.OTHER, true, "Dip Pool"),
                sorn("Cuckoo Bridge", 5.00, LandmarkKind.BRIDGE, true, "Cuckoo Br."),
                sorn("Little Force", 5.90, LandmarkKind.FALL, true),
                sorn("Top Fold", 6.70, LandmarkKind.WALL, true, "Top Sheepfold"));
    }

    private static KnownPlace arrel(String name, double km, LandmarkKind kind, boolean nests, String... aliases) {
        return new KnownPlace(name, Skerra.ARREL, km, kind, List.of(aliases), nests);
    }

    private static KnownPlace sorn(String name, double km, LandmarkKind kind, boolean nests, String... aliases) {
        return new KnownPlace(name, Skerra.SORN, km, kind, List.of(aliases), nests);
    }

    /** The landmark from which people tell a place. */
    static KnownPlace nearest(UUID riverId, double km) {
        return all().stream()
                .filter(place -> place.riverId.equals(riverId))
                .min(Comparator.comparingDouble(place -> Math.abs(place.km - km)))
                .orElseThrow();
    }

    /** The name that people scribble. */
    String scribbled() {
        return aliases.isEmpty() ? name : aliases.get(0);
    }

    String kindWord() {
        return kind.name().toLowerCase(Locale.ROOT);
    }
}

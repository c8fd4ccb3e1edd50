package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;

/**
 * Which sightings of a species and season can belong to a territory, and why the others cannot.
 *
 * @param admitted sightings that take part
 * @param aside sightings that do not, each with its reason
 */
record Admission(List<Sighting> admitted, List<Aside> aside) {
    /** A bird that flew on when flushed is met again within this distance of where it went. Common practice, no source. */
    private static final double FLOWN_ON_METRES = 50;

    /** How birds whose age is in doubt are read. */
    enum DoubtfulAge {
        /** Juveniles of unknown dependence take no part once they may be on their own; birds of unknown age do. */
        USUAL,
        /** All of them are taken for independent juveniles. */
        AS_JUVENILES,
        /** All of them take part. */
        AS_HOLDERS
    }

    /** Why a sighting takes no part. */
    enum Reason {
        OUT_OF_SEASON("map.aside.outOfSeason", false),
        DEAD("map.aside.dead", false),
        NOT_BREEDING("map.aside.notBreeding", true),
        INDEPENDENT_JUVENILE("map.aside.independentJuvenile", true),
        AGE_IN_DOUBT("map.aside.ageInDoubt", true),
        FLOWN_ON("map.aside.flownOn", false);

        private final String key;
        private final boolean unassigned;

        Reason(String key, boolean unassigned) {
            this.key = key;
            this.unassigned = unassigned;
        }

        /** Whether it is a bird of the season without a territory. */
        boolean unassigned() {
            return unassigned;
        }
    }

    /**
     * A sighting that takes no part.
     *
     * @param sighting the sighting
     * @param reason why
     * @param flownFrom the sighting where the same bird was first met
     */
    record Aside(Sighting sighting, Reason reason, Optional<Sighting> flownFrom) {
        Message because() {
            return flownFrom
                    .map(first -> Message.of(reason.key, Member.name(first)))
                    .orElseGet(() -> Message.of(reason.key, sighting.date()));
        }
    }

    static Admission of(List<Sighting> sightings, MapSettings settings, DoubtfulAge reading) {
        Map<UUID, Sighting> flownOn = flownOn(sightings);
        List<Sighting> admitted = new ArrayList<>();
        List<Aside> aside = new ArrayList<>();
        for (Sighting sighting : sightings) {
            Optional<Reason> reason = reason(sighting, settings, reading);
            Optional<Sighting> first = Optional.ofNullable(flownOn.get(sighting.id()));
            if (reason.isEmpty() && first.isPresent()) {
                aside.add(new Aside(sighting, Reason.FLOWN_ON, first));
            } else if (reason.isPresent()) {
                aside.add(new Aside(sighting, reason.get(), Optional.empty()));
            } else {
                admitted.add(sighting);
            }
        }
        return new Admission(List.copyOf(admitted), List.copyOf(aside));
    }

    private static Optional<Reason> reason(Sighting sighting, MapSettings settings, DoubtfulAge reading) {
        if (!settings.inSeason(sighting.date())) {
            return Optional.of(Reason.OUT_OF_SEASON);
        }
        if (sighting.activities().contains(Activity.DEAD)) {
            return Optional.of(Reason.DEAD);
        }
        if (sighting.age() == Age.INDEPENDENT_JUVENILE) {
            return Optional.of(Reason.INDEPENDENT_JUVENILE);
        }
        if (sighting.breedingCode().filter(code -> code.number() == 0).isPresent()) {
            return Optional.of(Reason.NOT_BREEDING);
        }
        boolean aside = switch (reading) {
            case USUAL -> sighting.age() == Age.JUVENILE && settings.juvenilesOnTheirOwn(sighting.date());
            case AS_JUVENILES -> BreedingSigns.ageInDoubt(sighting, settings);
            case AS_HOLDERS -> false;
        };
        return aside ? Optional.of(Reason.AGE_IN_DOUBT) : Optional.empty();
    }

    /** Sightings of a bird that had been flushed before and flew there: key of the later one to the first. */
    private static Map<UUID, Sighting> flownOn(List<Sighting> sightings) {
        Map<UUID, List<Sighting>> byVisit = new HashMap<>();
        sightings.stream()
                .filter(sighting -> sighting.visitId().isPresent())
                .sorted(Comparator.comparing(
                        sighting -> sighting.time().map(Object::toString).orElse("")))
                .forEach(sighting -> byVisit.computeIfAbsent(sighting.visitId().get(), key -> new ArrayList<>())
                        .add(sighting));
        Map<UUID, Sighting> flownOn = new HashMap<>();
        for (List<Sighting> ofVisit : byVisit.values()) {
            Set<UUID> used = new HashSet<>();
            for (Sighting flushed : ofVisit) {
                if (flushed.flewTo().isEmpty() || flushed.turnedBack()) {
                    continue;
                }
                Sighting first = flownOn.getOrDefault(flushed.id(), flushed);
                ofVisit.stream()
                        .filter(later -> metAgain(flushed, later) && !used.contains(later.id()))
                        .filter(later -> !first.id().equals(later.id()))
                        .findFirst()
                        .ifPresent(later -> {
                            used.add(later.id());
                            flownOn.put(later.id(), first);
                        });
            }
        }
        return flownOn;
    }

    private static boolean metAgain(Sighting flushed, Sighting later) {
        boolean notBefore = flushed.time().isEmpty()
                || later.time().isEmpty()
                || !later.time().get().isBefore(flushed.time().get());
        return !later.id().equals(flushed.id())
                && notBefore
                && later.count() <= flushed.count()
                && later.place().riverId().equals(flushed.place().riverId())
                && later.place().chainage().distanceTo(flushed.flewTo().orElseThrow()) <= FLOWN_ON_METRES
                && !flushed.simultaneousWith().contains(later.id())
                && !later.simultaneousWith().contains(flushed.id());
    }
}

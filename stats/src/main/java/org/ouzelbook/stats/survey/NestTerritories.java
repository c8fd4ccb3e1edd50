package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Progress;

/**
 * Which nests are of one territory in one season: those that the map by rule puts into it, and those off its dates whose place lies in it.
 *
 * @param byTerritory attempts of each accepted territory, by their first day
 * @param loose attempts in no accepted territory
 */
record NestTerritories(List<List<NestAttempt>> byTerritory, int loose) {

    /**
     * The territories of attempts.
     *
     * @param maps the maps of the seasons
     * @param progress hears how many seasons are mapped, and may stop the work
     * @throws CancellationException if it is stopped
     */
    static NestTerritories of(SeasonMaps maps, List<NestAttempt> attempts, Progress progress) {
        Map<String, List<NestAttempt>> byTerritory = new TreeMap<>();
        int loose = 0;
        Map<Integer, List<NestAttempt>> bySeason = attempts.stream()
                .collect(Collectors.groupingBy(NestAttempt::season, TreeMap::new, Collectors.toList()));
        List<Integer> seasons = List.copyOf(bySeason.keySet());
        for (TerritoryMap map : maps.all(seasons, Water.ALL, progress)) {
            Map<UUID, String> ofNest = ofNests(map);
            for (NestAttempt attempt : bySeason.getOrDefault(map.season(), List.of())) {
                Optional<String> territory =
                        Optional.ofNullable(ofNest.get(attempt.nest().id())).or(() -> around(map, attempt));
                if (territory.isPresent()) {
                    byTerritory
                            .computeIfAbsent(map.season() + territory.get(), key -> new ArrayList<>())
                            .add(attempt);
                } else {
                    loose++;
                }
            }
        }
        byTerritory.values().forEach(list -> list.sort(Comparator.comparing(NestTerritories::begun)));
        return new NestTerritories(List.copyOf(byTerritory.values()), loose);
    }

    private static Map<UUID, String> ofNests(TerritoryMap map) {
        Map<UUID, String> ofNest = new HashMap<>();
        map.rivers()
                .forEach(river -> river.territories().stream()
                        .filter(Territory::accepted)
                        .forEach(territory -> territory
                                .nests()
                                .forEach(nest ->
                                        ofNest.put(nest.id(), river.river().name() + territory.id()))));
        return ofNest;
    }

    private static Optional<String> around(TerritoryMap map, NestAttempt attempt) {
        Chainage at = attempt.nest().place().chainage();
        return map.rivers().stream()
                .filter(river ->
                        river.river().id().equals(attempt.nest().place().riverId()))
                .flatMap(river -> river.territories().stream()
                        .filter(Territory::accepted)
                        .filter(territory -> territory.stretch().contains(at))
                        .map(territory -> river.river().name() + territory.id()))
                .findFirst();
    }

    private static LocalDate begun(NestAttempt attempt) {
        return attempt.dates()
                .map(dates -> dates.firstEgg().middle())
                .orElse(attempt.nest().found().orElse(LocalDate.MAX));
    }

    /** The attempts before which no other of their territory began. */
    List<NestAttempt> first(List<NestAttempt> attempts) {
        Set<NestAttempt> later = byTerritory.stream()
                .flatMap(list -> list.stream().skip(1))
                .collect(Collectors.toCollection(() -> Collections.newSetFromMap(new IdentityHashMap<>())));
        return attempts.stream().filter(attempt -> !later.contains(attempt)).toList();
    }

    /** Young fledged of each territory all of whose nests are known. */
    List<Integer> fledged() {
        return byTerritory.stream()
                .map(list -> list.stream().map(NestAttempt::fledged).toList())
                .filter(list -> list.stream().allMatch(OptionalInt::isPresent))
                .map(list -> list.stream().mapToInt(OptionalInt::getAsInt).sum())
                .toList();
    }

    /** Pairs of nests of one territory that were in use at the same time: two pairs, or a male with two females. */
    List<String> twoAtOnce() {
        List<String> pairs = new ArrayList<>();
        for (List<NestAttempt> list : byTerritory) {
            for (int i = 0; i < list.size(); i++) {
                for (int j = i + 1; j < list.size(); j++) {
                    if (overlap(list.get(i), list.get(j))) {
                        pairs.add(list.get(i).nest().label() + " + "
                                + list.get(j).nest().label());
                    }
                }
            }
        }
        return pairs;
    }

    private static boolean overlap(NestAttempt one, NestAttempt other) {
        Optional<NestAttempt.Span> a = one.inUse();
        Optional<NestAttempt.Span> b = other.inUse();
        return a.isPresent()
                && b.isPresent()
                && !a.get().from().isAfter(b.get().to())
                && !b.get().from().isAfter(a.get().to());
    }
}

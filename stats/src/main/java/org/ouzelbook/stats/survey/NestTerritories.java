package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Species;

/**
 * Which nests are of one territory in one season: those that the map by rule puts into it, and those off its dates whose place lies in it.
 *
 * @param byTerritory attempts of each accepted territory, by their first day
 * @param loose attempts in no accepted territory
 */
record NestTerritories(List<List<NestAttempt>> byTerritory, int loose) {

    static NestTerritories of(
            SurveyRecords records, Species species, MapSettings settings, List<NestAttempt> attempts) {
        Map<String, List<NestAttempt>> byTerritory = new TreeMap<>();
        int loose = 0;
        Map<Integer, List<NestAttempt>> bySeason =
                attempts.stream().collect(Collectors.groupingBy(NestAttempt::season));
        for (Map.Entry<Integer, List<NestAttempt>> season : bySeason.entrySet()) {
            TerritoryMap map = TerritoryMap.of(records, species, season.getKey(), settings, Water.ALL);
            Map<UUID, String> ofNest = ofNests(map);
            for (NestAttempt attempt : season.getValue()) {
                Optional<String> territory =
                        Optional.ofNullable(ofNest.get(attempt.nest().id())).or(() -> around(map, attempt));
                if (territory.isPresent()) {
                    byTerritory
                            .computeIfAbsent(season.getKey() + territory.get(), key -> new ArrayList<>())
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

    /** Whether no other attempt of its territory began before it. */
    boolean isFirst(NestAttempt attempt) {
        return byTerritory.stream().noneMatch(list -> list.indexOf(attempt) > 0);
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

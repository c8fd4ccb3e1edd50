package org.ouzelbook.stats.simulate.fieldwork;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;

/** The page of one visit: its glimpses in order of time, numbered, with birds seen at once tied together. */
final class Page {
    private static final double UNCERTAINTY_METRES = 50;

    private final Visit visit;
    private final Draws draws;

    private Page(Visit visit, Draws draws) {
        this.visit = visit;
        this.draws = draws;
    }

    static List<Sighting> of(Visit visit, List<Glimpse> glimpses, Draws draws) {
        List<Glimpse> sorted = new ArrayList<>(glimpses);
        sorted.sort(Comparator.comparing((Glimpse glimpse) -> glimpse.time).thenComparing(glimpse -> glimpse.metres));
        Page page = new Page(visit, draws);
        List<UUID> keys = sorted.stream().map(glimpse -> draws.key()).toList();
        Map<UUID, Set<UUID>> quarrels = new HashMap<>();
        for (int i = 0; i < sorted.size(); i++) {
            UUID key = keys.get(i);
            sorted.get(i)
                    .quarrel
                    .ifPresent(quarrel -> quarrels.computeIfAbsent(quarrel, q -> new HashSet<>())
                            .add(key));
        }
        List<Sighting> sightings = new ArrayList<>();
        for (int i = 0; i < sorted.size(); i++) {
            UUID key = keys.get(i);
            Set<UUID> others =
                    new HashSet<>(sorted.get(i).quarrel.map(quarrels::get).orElse(Set.of()));
            others.remove(key);
            sightings.add(page.sighting(sorted.get(i), key, i + 1, others));
        }
        return sightings;
    }

    private Sighting sighting(Glimpse glimpse, UUID key, int number, Set<UUID> atOnce) {
        Bank bank = draws.oneOf(List.of(Bank.LEFT, Bank.RIGHT, Bank.CHANNEL, Bank.UNKNOWN));
        Place place = new Place(visit.riverId(), new Chainage(glimpse.metres), bank, UNCERTAINTY_METRES, 1);
        Optional<Chainage> flewTo =
                glimpse.flewTo.isPresent() ? Optional.of(new Chainage(glimpse.flewTo.getAsDouble())) : Optional.empty();
        return new Sighting(
                key,
                visit.label() + "-" + number,
                Optional.of(visit.id()),
                visit.date(),
                Optional.of(glimpse.time),
                place,
                glimpse.species,
                glimpse.count,
                glimpse.age,
                glimpse.sex,
                glimpse.activities,
                Optional.empty(),
                glimpse.rings,
                atOnce,
                flewTo,
                glimpse.turnedBack,
                visit.observers().get(0),
                glimpse.note);
    }
}

package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.river.RiverNetwork;

/**
 * In which breeding seasons a ringed bird was met, and where. A nestling enters with its first later season, since young birds survive
 * less well and wander.
 *
 * @param bird the bird
 * @param places places of its readings by season; none for a season in which it was only ringed
 */
record BirdSeasons(RingedBird bird, Map<Integer, List<Place>> places) {

    static BirdSeasons of(RingedBird bird, List<RingSighting> readings, Species species) {
        Map<Integer, List<Place>> places = new TreeMap<>();
        int hatched = bird.hatched().map(year -> year.getValue()).orElse(Integer.MIN_VALUE);
        bird.ringed()
                .filter(species::inSeason)
                .filter(day -> day.getYear() > hatched)
                .ifPresent(day -> places.put(day.getYear(), new ArrayList<>()));
        for (RingSighting reading : readings) {
            boolean his = reading.outcome() == RingSighting.Outcome.IDENTIFIED
                    && reading.candidates().get(0).equals(bird);
            int year = reading.sighting().date().getYear();
            if (his && species.inSeason(reading.sighting().date()) && year > hatched) {
                places.computeIfAbsent(year, key -> new ArrayList<>())
                        .add(reading.sighting().place());
            }
        }
        return new BirdSeasons(bird, places);
    }

    /** Its moves between seasons in which it was read, one after the other. */
    List<Survival.Move> moves(RiverNetwork rivers) {
        List<Survival.Move> moves = new ArrayList<>();
        List<Map.Entry<Integer, List<Place>>> read = places.entrySet().stream()
                .filter(season -> !season.getValue().isEmpty())
                .toList();
        for (int i = 1; i < read.size(); i++) {
            Place from = middle(read.get(i - 1).getValue(), rivers);
            Place to = middle(read.get(i).getValue(), rivers);
            moves.add(new Survival.Move(
                    bird, read.get(i - 1).getKey(), read.get(i).getKey(), from, to, rivers.distance(from, to)));
        }
        return moves;
    }

    /** The place from which the others are nearest, along the water. */
    private static Place middle(List<Place> places, RiverNetwork rivers) {
        return places.stream()
                .min(Comparator.comparingDouble(place -> places.stream()
                        .map(other -> rivers.distance(place, other))
                        .mapToDouble(metres -> metres.orElse(1e6))
                        .sum()))
                .orElseThrow();
    }
}

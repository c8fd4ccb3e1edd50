package org.ouzelbook.ui.strip;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.ouzelbook.tracker.domain.Sighting;

/** Sightings of one row in the order of their places, so that those in view are found without asking every one. */
final class SightingRow {
    private final List<Sighting> sightings;
    private final List<SightingSymbol> symbols;
    private final double[] places;
    private final int[] food;
    private final int[] building;
    private final int[] song;

    private SightingRow(List<Sighting> sightings, double[] places) {
        this.sightings = sightings;
        this.places = places;
        this.symbols = sightings.stream().map(SightingSymbol::of).toList();
        this.food = new int[places.length + 1];
        this.building = new int[places.length + 1];
        this.song = new int[places.length + 1];
        for (int i = 0; i < places.length; i++) {
            SightingSymbol symbol = symbols.get(i);
            food[i + 1] = food[i] + (symbol.middle() == SightingSymbol.Middle.FOOD ? 1 : 0);
            building[i + 1] = building[i] + (symbol.middle() == SightingSymbol.Middle.MATERIAL ? 1 : 0);
            song[i + 1] = song[i] + (symbol.sang() ? 1 : 0);
        }
    }

    /**
     * {@return the sightings as a row}
     *
     * @param sightings the sightings, in any order
     * @param place where each lies across the paper, in the unit of its axis
     */
    static SightingRow of(List<Sighting> sightings, ToDoubleFunction<Sighting> place) {
        List<Sighting> sorted =
                sightings.stream().sorted(Comparator.comparingDouble(place)).toList();
        return new SightingRow(sorted, sorted.stream().mapToDouble(place).toArray());
    }

    Sighting sighting(int i) {
        return sightings.get(i);
    }

    SightingSymbol symbol(int i) {
        return symbols.get(i);
    }

    double place(int i) {
        return places[i];
    }

    int size() {
        return places.length;
    }

    /** {@return the number of the first sighting at a place or beyond it} */
    int first(double place) {
        int found = Arrays.binarySearch(places, place);
        int i = found >= 0 ? found : -found - 1;
        while (i > 0 && places[i - 1] >= place) {
            i--;
        }
        return i;
    }

    /** {@return how many of some sightings carried food or a faecal sac} */
    int food(int from, int to) {
        return food[to] - food[from];
    }

    /** {@return how many of some sightings built or carried material} */
    int building(int from, int to) {
        return building[to] - building[from];
    }

    /** {@return how many of some sightings were of song} */
    int song(int from, int to) {
        return song[to] - song[from];
    }
}

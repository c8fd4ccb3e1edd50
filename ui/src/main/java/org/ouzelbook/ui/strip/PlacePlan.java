package org.ouzelbook.ui.strip;

import java.time.LocalDate;
import java.time.Month;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;

/** One place over the years, made ready. */
final class PlacePlan implements ReadyStrip {
    private static final double CLOSEST_DAYS = 14;

    private final PlaceScene scene;
    private final Map<Integer, SightingRow> rows = new TreeMap<>();
    private final Map<Integer, Passing> passing = new TreeMap<>();
    private final StripTelling words;

    /**
     * The visits that went by in a year.
     *
     * @param visits the visits
     * @param saw how many of them saw the species
     */
    record Passing(List<Visit> visits, long saw) {}

    PlacePlan(PlaceScene scene) {
        this.scene = scene;
        this.words = new StripTelling(StripWords.title(scene), () -> StripWords.description(scene));
        for (int year : scene.years()) {
            List<Sighting> seen = scene.sightings().stream()
                    .filter(sighting -> sighting.date().getYear() == year)
                    .toList();
            List<Visit> visits = scene.passingIn(year);
            passing.put(year, new Passing(visits, scene.seenOn(visits)));
            rows.put(year, SightingRow.of(seen, sighting -> YearDays.of(sighting.date())));
        }
    }

    PlaceScene scene() {
        return scene;
    }

    StripTelling words() {
        return words;
    }

    Passing passing(int year) {
        return passing.getOrDefault(year, new Passing(List.of(), 0));
    }

    Map<Integer, SightingRow> rows() {
        return rows;
    }

    @Override
    public StripDrawing drawing(Frame frame) {
        return new PlaceLayout(this, frame).drawing();
    }

    /** Whole months, from the earliest to the latest in which anybody went by or saw something. */
    @Override
    public Frame farthest(double width, double height) {
        List<Month> months = Stream.concat(
                        scene.passing().stream().map(Visit::date),
                        scene.sightings().stream().map(Sighting::date))
                .map(LocalDate::getMonth)
                .sorted()
                .toList();
        Month first = months.isEmpty() ? Month.JANUARY : months.get(0);
        Month last = months.isEmpty() ? Month.DECEMBER : months.get(months.size() - 1);
        return new Frame(width, height, YearDays.firstOf(first), YearDays.endOf(last));
    }

    @Override
    public double closest() {
        return CLOSEST_DAYS;
    }
}

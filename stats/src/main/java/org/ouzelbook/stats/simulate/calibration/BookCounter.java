package org.ouzelbook.stats.simulate.calibration;

import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ouzelbook.stats.simulate.calibration.CountedSeason.ModelCount;
import org.ouzelbook.stats.simulate.mechanism.ForkedBook;
import org.ouzelbook.stats.simulate.mechanism.Registration;
import org.ouzelbook.stats.simulate.mechanism.RiverSeason;
import org.ouzelbook.stats.simulate.mechanism.SimulatedBook;
import org.ouzelbook.stats.simulate.mechanism.Together;
import org.ouzelbook.stats.simulate.mechanism.Walk;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.PlainSeason;
import org.ouzelbook.stats.survey.PlainSeason.PlainSighting;
import org.ouzelbook.stats.survey.PlainSeason.PlainVisit;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/** Counts the territories of a simulated book in the way that those of a true one are counted. */
final class BookCounter {
    private static final String RIVER = "the river";
    private static final String TRIBUTARY = "the tributary";
    private static final int DRAWS = 400;
    static final int FIRST_YEAR = 2001;
    private static final double LEVEL = 0.9;
    static final MapSettings SETTINGS =
            MapSettings.usualFor(Species.DIPPER).withSeason(MonthDay.of(1, 1), MonthDay.of(12, 31));

    private BookCounter() {}

    static CountedBook of(SimulatedBook book) {
        long start = System.nanoTime();
        SurveyRecords records = records(book);
        TerritoryModel model = TerritoryModel.of(records, Species.DIPPER, SETTINGS, Progress.NONE);
        List<CountedSeason> counted = new ArrayList<>();
        for (int i = 0; i < book.seasons().size(); i++) {
            TerritoryMap map = TerritoryMap.of(records, Species.DIPPER, FIRST_YEAR + i, SETTINGS, Water.ALL);
            RiverMap river = map.rivers().get(0);
            Optional<ModelCount> byModel = model.count(
                            FIRST_YEAR + i, river.river().id(), Water.ALL)
                    .map(count -> new ModelCount(count.expected(), count.lower(LEVEL), count.upper(LEVEL)));
            counted.add(new CountedSeason(
                    book.seasons().get(i).trueCount(), river.count().likely(), byModel));
        }
        return new CountedBook((System.nanoTime() - start) / 1e9, counted);
    }

    /**
     * {@return the counts of a river and its tributary together}
     *
     * @param book the book
     * @param joined whether it is known that they meet; otherwise each is counted by itself
     */
    static CountedBook of(ForkedBook book, boolean joined) {
        long start = System.nanoTime();
        List<PlainSeason> seasons = new ArrayList<>();
        for (int i = 0; i < book.seasons().size(); i++) {
            seasons.add(plain(book.seasons().get(i).river(), RIVER, FIRST_YEAR + i));
            seasons.add(plain(book.seasons().get(i).tributary(), TRIBUTARY, FIRST_YEAR + i));
        }
        Map<String, PlainSeason.Mouth> mouths = joined
                ? Map.of(TRIBUTARY, new PlainSeason.Mouth(RIVER, book.waters().below()))
                : Map.of();
        SurveyRecords records = PlainSeason.records(seasons, mouths, Species.DIPPER);
        TerritoryModel model = TerritoryModel.of(records, Species.DIPPER, SETTINGS, Progress.NONE);
        List<CountedSeason> counted = new ArrayList<>();
        for (int i = 0; i < book.seasons().size(); i++) {
            TerritoryMap map = TerritoryMap.of(records, Species.DIPPER, FIRST_YEAR + i, SETTINGS, Water.ALL);
            counted.add(new CountedSeason(
                    book.seasons().get(i).trueCount(),
                    map.rivers().stream()
                            .mapToInt(river -> river.count().likely())
                            .sum(),
                    both(model, map, FIRST_YEAR + i)));
        }
        return new CountedBook((System.nanoTime() - start) / 1e9, counted);
    }

    /** The model's count of several rivers, its limits from maps drawn of all of them. */
    private static Optional<ModelCount> both(TerritoryModel model, TerritoryMap map, int year) {
        double expected = 0;
        long[] draws = new long[DRAWS];
        for (RiverMap river : map.rivers()) {
            Optional<org.ouzelbook.stats.survey.ModelCount> count =
                    model.count(year, river.river().id(), Water.ALL);
            if (count.isEmpty()) {
                return Optional.empty();
            }
            expected += count.get().expected();
            List<Long> drawn = count.get().draws(DRAWS, year);
            for (int i = 0; i < DRAWS; i++) {
                draws[i] += drawn.get(i);
            }
        }
        Arrays.sort(draws);
        int below = (int) Math.floor((1 - LEVEL) / 2 * DRAWS);
        return Optional.of(new ModelCount(expected, draws[below], draws[DRAWS - 1 - below]));
    }

    static SurveyRecords records(SimulatedBook book) {
        List<PlainSeason> seasons = new ArrayList<>();
        for (int i = 0; i < book.seasons().size(); i++) {
            seasons.add(plain(book.seasons().get(i), RIVER, FIRST_YEAR + i));
        }
        return PlainSeason.records(seasons, Species.DIPPER);
    }

    private static PlainSeason plain(RiverSeason season, String river, int year) {
        List<PlainVisit> visits = new ArrayList<>();
        for (int i = 0; i < season.walks().size(); i++) {
            Walk walk = season.walks().get(i);
            if (walk.fromMetres() < walk.toMetres()) {
                visits.add(new PlainVisit(
                        String.valueOf(i),
                        LocalDate.ofYearDay(year, walk.day()),
                        Stretch.ofKm(walk.fromMetres() / 1000, walk.toMetres() / 1000)));
            }
        }
        Map<String, Set<String>> others = new HashMap<>();
        for (Together pair : season.together()) {
            others.computeIfAbsent(pair.one(), any -> new HashSet<>()).add(pair.other());
        }
        List<PlainSighting> sightings = new ArrayList<>();
        for (Registration one : season.registrations()) {
            sightings.add(new PlainSighting(
                    one.id(),
                    String.valueOf(one.visit()),
                    one.metres(),
                    others.getOrDefault(one.id(), Set.of()),
                    one.turnedBackAtMetres()));
        }
        return new PlainSeason(river, year, visits, sightings);
    }
}

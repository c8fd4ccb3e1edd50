package org.ouzelbook.ui.window;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;
import org.ouzelbook.ui.strip.PlaceScene;
import org.ouzelbook.ui.strip.StripView;

/** An invented river with more sightings than any river ever had, for measuring. */
final class BenchRiver {
    static final int LAST_SEASON = 2026;
    private static final double METRES = 40_000;
    private static final int VISITS = 30;
    private static final int TERRITORIES = 30;

    private final River river = new River(new UUID(1, 1), "Bench Water", Optional.empty());
    private final Random random = new Random(100_000);
    private final List<Visit> visits = new ArrayList<>();
    private final List<Sighting> sightings = new ArrayList<>();
    private final List<TerritoryMap> maps = new ArrayList<>();
    private final SurveyRecords records;
    private final StripView.OnePlace place =
            new StripView.OnePlace(river.id(), Stretch.ofKm(19.85, 20.15), "Bench Bridge");

    private BenchRiver(int seasons, int birds) {
        int perVisit = birds / seasons / VISITS;
        int made = 0;
        for (int season = LAST_SEASON - seasons + 1; season <= LAST_SEASON; season++) {
            for (int visit = 0; visit < VISITS; visit++) {
                LocalDate day = LocalDate.of(season, 2, 15).plusDays(4L * visit);
                visits.add(visit(day));
                boolean last = season == LAST_SEASON && visit == VISITS - 1;
                int now = last ? birds - made : perVisit;
                for (int bird = 0; bird < now; bird++) {
                    sightings.add(sighting(made + bird, day));
                }
                made += now;
            }
            maps.add(map(season));
        }
        records = new SurveyRecords(
                RiverNetwork.of(List.of(river), List.of()),
                List.of(),
                List.of(),
                visits,
                sightings,
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    /**
     * {@return a river with sightings spread evenly over its seasons}
     *
     * @param seasons how many seasons
     * @param birds how many sightings
     */
    static BenchRiver of(int seasons, int birds) {
        return new BenchRiver(seasons, birds);
    }

    private Visit visit(LocalDate day) {
        return new Visit(
                new UUID(2, visits.size()),
                "V" + visits.size(),
                river.id(),
                day,
                Optional.empty(),
                Optional.empty(),
                Optional.of(new Stretch(new Chainage(0), new Chainage(METRES))),
                Optional.empty(),
                Optional.empty(),
                List.of("bench"),
                List.of(Species.DIPPER),
                "",
                "",
                true,
                "");
    }

    private Sighting sighting(int number, LocalDate day) {
        Set<Activity> activities = EnumSet.noneOf(Activity.class);
        switch (random.nextInt(8)) {
            case 0, 1 -> activities.add(Activity.SINGING);
            case 2 -> activities.add(Activity.CARRYING_FOOD);
            case 3 -> activities.add(Activity.CARRYING_MATERIAL);
            default -> activities.add(Activity.FEEDING);
        }
        return new Sighting(
                new UUID(3, number),
                "",
                Optional.empty(),
                day,
                Optional.empty(),
                new Place(river.id(), new Chainage(random.nextDouble() * METRES), Bank.UNKNOWN, 30, 1),
                Species.DIPPER,
                1 + random.nextInt(2),
                Age.UNKNOWN,
                Sex.UNKNOWN,
                activities,
                Optional.empty(),
                "",
                Set.of(),
                Optional.empty(),
                false,
                "",
                "");
    }

    private TerritoryMap map(int season) {
        List<Territory> territories = new ArrayList<>();
        double each = METRES / TERRITORIES;
        for (int i = 0; i < TERRITORIES; i++) {
            Stretch stretch = new Stretch(new Chainage(i * each + 200), new Chainage((i + 1) * each - 200));
            territories.add(new Territory(
                    "T" + i,
                    stretch,
                    Optional.empty(),
                    stretch.middle(),
                    Territory.Standing.COUNTED,
                    false,
                    Optional.of(new Territory.Evidence(new BreedingCode(i % 16 + 1), List.of(), List.of())),
                    List.of(),
                    List.of(),
                    List.of(),
                    List.of()));
        }
        TerritoryMap.RiverMap onRiver = new TerritoryMap.RiverMap(
                river,
                List.of(new Stretch(new Chainage(0), new Chainage(METRES))),
                VISITS,
                VISITS,
                Optional.empty(),
                new TerritoryMap.Count(TERRITORIES, TERRITORIES, TERRITORIES, 0, 0, List.of()),
                territories,
                List.of());
        return new TerritoryMap(
                Species.DIPPER, season, MapSettings.usualFor(Species.DIPPER), List.of(onRiver), List.of());
    }

    BookContents contents() {
        NavigableMap<Integer, TerritoryMap> bySeason = new TreeMap<>();
        maps.forEach(map -> bySeason.put(map.season(), map));
        return new BookContents(
                records,
                0,
                List.of(Species.DIPPER),
                Species.DIPPER,
                bySeason,
                Optional.empty(),
                new TreeMap<>(),
                new TreeSet<>());
    }

    StripView place() {
        return place;
    }

    /** {@return how many sightings lie at the place} */
    int atPlace() {
        return PlaceScene.of(records, Species.DIPPER, place, false).sightings().size();
    }
}

package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;

/** What a map says of a record alone, against the map of the same season made anew without that record. */
class HangingRecordsTest {
    private static final River MAIN = new River(new UUID(1, 1), "Main Water", Optional.empty());
    private static final River BECK =
            new River(new UUID(1, 2), "Side Beck", Optional.of(new River.Confluence(MAIN.id(), Chainage.ofKm(2.2))));
    private static final double METRES = 4500;
    private static final MapSettings SETTINGS = MapSettings.usualFor(Species.DIPPER);

    @Test
    void saysOfEachRecordWhatTheMapWithoutItShows() {
        Random random = new Random(42);
        int hanging = 0;
        int told = 0;
        for (int trial = 0; trial < 12; trial++) {
            SurveyRecords records = season(random);
            TerritoryMap map = map(records);
            assertThat(TerritoryMap.outlines(records, Species.DIPPER, 2026, SETTINGS))
                    .as("drawn without reasons, trial %d", trial)
                    .isEqualTo(outlines(map))
                    .isNotEmpty();
            for (TerritoryMap.RiverMap river : map.rivers()) {
                int counted = river.count().likely();
                assertThat(TerritoryMap.counted(
                                records,
                                Species.DIPPER,
                                2026,
                                SETTINGS,
                                river.river().id()))
                        .isEqualTo(counted);
                for (Territory territory : river.territories()) {
                    for (Sighting sighting : territory.registrations()) {
                        Optional<Integer> said =
                                saidOf(territory, sighting.id()).flatMap(HangingRecordsTest::countSaid);
                        if (said.isPresent()) {
                            int without = count(
                                    map(without(records, sighting)),
                                    river.river().id());
                            assertThat(said)
                                    .as("trial %d, %s of territory %s", trial, sighting.label(), territory.id())
                                    .contains(without);
                            told++;
                            hanging += without == counted ? 0 : 1;
                        }
                    }
                }
            }
        }
        assertThat(hanging).as("of %d that were told", told).isGreaterThan(20);
    }

    private static List<TerritoryOutline> outlines(TerritoryMap map) {
        return map.rivers().stream()
                .flatMap(river -> river.territories().stream()
                        .filter(Territory::accepted)
                        .map(territory -> new TerritoryOutline(
                                map.species(),
                                map.season(),
                                river.river(),
                                territory.id(),
                                territory.stretch(),
                                territory.centre(),
                                territory.evidence())))
                .toList();
    }

    private static Optional<Message> saidOf(Territory territory, UUID record) {
        return territory.hangsOn().stream()
                .filter(one -> one.records().equals(List.of(record)))
                .map(Territory.HangsOn::otherwise)
                .filter(one -> !one.key().equals("map.without.marks"))
                .findFirst();
    }

    /** The count that a message tells in a message of its own; none where only the evidence would be weaker. */
    private static Optional<Integer> countSaid(Message message) {
        return message.facts().stream()
                .filter(Message.class::isInstance)
                .map(count -> (Integer) ((Message) count).facts().get(0))
                .findFirst();
    }

    private static TerritoryMap map(SurveyRecords records) {
        return TerritoryMap.of(records, Species.DIPPER, 2026, SETTINGS, Water.ALL);
    }

    private static int count(TerritoryMap map, UUID riverId) {
        return map.rivers().stream()
                .filter(river -> river.river().id().equals(riverId))
                .findFirst()
                .orElseThrow()
                .count()
                .likely();
    }

    private static SurveyRecords without(SurveyRecords records, Sighting left) {
        return records(
                records.visits(),
                records.sightings().stream().filter(one -> !one.equals(left)).toList());
    }

    private static SurveyRecords records(List<Visit> visits, List<Sighting> sightings) {
        return new SurveyRecords(
                RiverNetwork.of(List.of(MAIN, BECK), List.of()),
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

    /** Eight visits to two rivers, birds anywhere, some of them turned back or seen at once with the one before. */
    private static SurveyRecords season(Random random) {
        List<Visit> visits = new ArrayList<>();
        List<Sighting> sightings = new ArrayList<>();
        for (int number = 0; number < 16; number++) {
            River river = number % 2 == 0 ? MAIN : BECK;
            LocalDate day = LocalDate.of(2026, 3, 1).plusDays(8L * (number / 2));
            visits.add(visit(number, river.id(), day));
            for (int bird = random.nextInt(5); bird > 0; bird--) {
                boolean atOnce = bird > 1
                        && !sightings.isEmpty()
                        && random.nextInt(4) == 0
                        && sightings.get(sightings.size() - 1).date().equals(day);
                sightings.add(sighting(
                        random,
                        sightings.size(),
                        river.id(),
                        day,
                        atOnce ? Set.of(sightings.get(sightings.size() - 1).id()) : Set.of()));
            }
        }
        return records(visits, sightings);
    }

    private static Visit visit(int number, UUID riverId, LocalDate day) {
        return new Visit(
                new UUID(2, number),
                "V" + number,
                riverId,
                day,
                Optional.empty(),
                Optional.empty(),
                Optional.of(new Stretch(new Chainage(0), new Chainage(METRES))),
                Optional.empty(),
                Optional.empty(),
                List.of("x"),
                List.of(Species.DIPPER),
                "",
                "",
                true,
                "");
    }

    private static Sighting sighting(Random random, int number, UUID riverId, LocalDate day, Set<UUID> atOnce) {
        double at = random.nextDouble() * METRES;
        boolean turnedBack = random.nextInt(8) == 0;
        Activity activity = random.nextInt(12) == 0
                ? Activity.CARRYING_FOOD
                : random.nextBoolean() ? Activity.SINGING : Activity.FEEDING;
        return new Sighting(
                new UUID(3, number),
                "s" + number,
                Optional.empty(),
                day,
                Optional.empty(),
                new Place(riverId, new Chainage(at), Bank.UNKNOWN, 30, 1),
                Species.DIPPER,
                1,
                Age.ADULT,
                Sex.UNKNOWN,
                EnumSet.of(activity),
                Optional.empty(),
                "",
                atOnce,
                turnedBack ? Optional.of(new Chainage(Math.min(METRES, at + 250))) : Optional.empty(),
                turnedBack,
                "",
                "");
    }
}

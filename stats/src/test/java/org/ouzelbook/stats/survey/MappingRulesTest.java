package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ouzelbook.stats.survey.Notebook.ARREL;
import static org.ouzelbook.stats.survey.Notebook.SORN;
import static org.ouzelbook.stats.survey.Notebook.key;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.survey.Territory.HangsOn;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/** Single rules of the mapping, each on a notebook of its own, worked out by hand. */
class MappingRulesTest {
    private static Notebook threeVisits() {
        return new Notebook()
                .visit("V1", "2026-03-01", ARREL, 10, 20)
                .visit("V2", "2026-03-20", ARREL, 10, 20)
                .visit("V3", "2026-04-20", ARREL, 10, 20);
    }

    private static RiverMap arrel(TerritoryMap map) {
        return map.rivers().get(0);
    }

    private static List<String> warnings(TerritoryMap map) {
        return map.warnings().stream().map(Message::key).toList();
    }

    private static List<Object> hanging(Territory territory) {
        return territory.hangsOn().stream().map(HangsOn::otherwise).map(Message::key).distinct().toList().stream()
                .map(Object.class::cast)
                .toList();
    }

    @Test
    void acceptsANestWithEggsAlone() {
        RiverMap map = arrel(threeVisits()
                .nest("N1", ARREL, 12.5)
                .check("N1", "2026-04-12", NestStage.EGGS)
                .map(2026));

        assertThat(map.count().likely()).isEqualTo(1);
        Territory territory = map.territories().get(0);
        assertThat(territory.evidence().orElseThrow().code()).isEqualTo(new BreedingCode(15));
        assertThat(territory.evidence().orElseThrow().records()).containsExactly(key("N12026-04-12"));
        assertThat(territory.because()).contains(Message.of("map.because.decisive", "N1", 15));
    }

    /** Food carried in (code 14) and a nest with eggs (15): the nest gives the code, and both records are named. */
    @Test
    void namesTheFurtherProofOfBreeding() {
        Territory a = arrel(SixVisits.notebook()
                        .nest("N1", ARREL, 12.6)
                        .check("N1", "2026-04-12", NestStage.EGGS)
                        .map(2026))
                .territories()
                .get(0);

        assertThat(a.evidence().orElseThrow().code()).isEqualTo(new BreedingCode(15));
        assertThat(a.evidence().orElseThrow().records()).containsExactly(key("N12026-04-12"));
        assertThat(a.evidence().orElseThrow().further()).containsExactly(key("a4"));
    }

    @Test
    void letsSongOutOfSeasonRaiseNothing() {
        Notebook book = threeVisits();
        book.casual("winter", "2026-01-12", ARREL, 12.5).doing(Activity.SINGING).noted();

        RiverMap map = arrel(book.map(2026));

        assertThat(map.territories()).isEmpty();
        assertThat(map.count().unassigned()).isZero();
        assertThat(map.setAside().get(0).because())
                .isEqualTo(Message.of("map.aside.outOfSeason", LocalDate.parse("2026-01-12")));
    }

    @Test
    void countsASecondBroodInAnotherNestAsOneTerritory() {
        Notebook book = SixVisits.notebook()
                .nest("N1", ARREL, 12.58)
                .check("N1", "2026-04-12", NestStage.EGGS)
                .check("N1", "2026-05-17", NestStage.EMPTY, Optional.of(NestOutcome.SUCCESS))
                .nest("N2", ARREL, 12.83)
                .check("N2", "2026-06-02", NestStage.EGGS);

        TerritoryMap map = book.map(2026);

        assertThat(arrel(map).count().likely()).isEqualTo(3);
        assertThat(arrel(map).territories().get(0).nests()).hasSize(2);
        assertThat(arrel(map).territories().get(0).because()).contains(Message.of("map.because.attempts", 2));
        assertThat(warnings(map)).doesNotContain("map.warning.twoNests");
    }

    @Test
    void keepsTwoNestsInUseAtOnceApartAndAsks() {
        TerritoryMap map = threeVisits()
                .nest("N1", ARREL, 12.58)
                .check("N1", "2026-04-20", NestStage.EGGS)
                .nest("N2", ARREL, 12.83)
                .check("N2", "2026-04-20", NestStage.EGGS)
                .map(2026);

        assertThat(arrel(map).count().likely()).isEqualTo(2);
        assertThat(map.warnings()).contains(Message.of("map.warning.twoNests", "N1", "N2"));
    }

    @Test
    void takesNoOldNestForEvidence() {
        TerritoryMap map = threeVisits()
                .nest("N1", ARREL, 12.58)
                .check("N1", "2026-04-20", NestStage.COMPLETE)
                .map(2026);

        assertThat(arrel(map).territories()).isEmpty();
        assertThat(map.warnings()).contains(Message.of("map.warning.oldNests", 1, List.of("N1")));
    }

    @Test
    void givesABroodToTheNestItCanHaveLeft() {
        Notebook book = threeVisits()
                .visit("V4", "2026-05-20", ARREL, 10, 20)
                .nest("N1", ARREL, 12.0)
                .check("N1", "2026-04-12", NestStage.EGGS);
        book.bird("brood", "V4", 13.3).aged(Age.DEPENDENT_JUVENILE).noted();
        book.bird("x", "V1", 13.4).doing(Activity.SINGING).noted();
        book.bird("y", "V2", 13.5).doing(Activity.SINGING).noted();

        RiverMap map = arrel(book.map(2026));

        assertThat(map.territories().get(0).because()).contains(Message.of("map.because.brood", "brood", "N1"));
    }

    @Test
    void countsAFlushedBirdOnlyWhereItWasFirstMet() {
        Notebook book = threeVisits();
        book.bird("f1", "V1", 12.0).at("07:10").flewTo(12.4).noted();
        book.bird("f2", "V1", 12.4).at("07:30").flewTo(12.9).noted();
        book.bird("f3", "V1", 12.9).at("07:50").noted();

        TerritoryMap map = book.map(2026);

        assertThat(arrel(map).territories().get(0).registrations()).hasSize(1);
        assertThat(arrel(map).setAside())
                .extracting(TerritoryMap.SetAside::because)
                .containsOnly(Message.of("map.aside.flownOn", "f1"));
        assertThat(map.warnings()).contains(Message.of("map.warning.flushedBird", 2, List.of("f2", "f3")));
    }

    @Test
    void joinsTwoSightingsOfOneRingedBird() {
        Notebook book = threeVisits();
        book.bird("r1", "V1", 12.0).ringed("R/N · m/W").noted();
        book.bird("r2", "V3", 13.4).ringed("R/N · m/W").noted();
        book.bird("n", "V2", 13.6).doing(Activity.SINGING).noted();
        book.bird("o", "V1", 13.7).doing(Activity.SINGING).noted();

        Territory territory = arrel(book.map(2026)).territories().get(0);

        assertThat(territory.registrations()).extracting(one -> one.label()).contains("r1", "r2");
        assertThat(territory.because()).contains(Message.of("map.because.sameRings", "r1", "r2"));
    }

    @Test
    void passesOverASimultaneousMarkWhereRingsShowOneBird() {
        Notebook book = threeVisits();
        book.bird("r1", "V1", 12.0).ringed("R/N").noted();
        book.bird("r2", "V1", 14.1).ringed("R/N").sameTimeAs("r1").noted();

        assertThat(book.map(2026).warnings())
                .contains(
                        Message.of("map.warning.notTwoBirds", "r1", "r2"),
                        Message.of("map.warning.oneBirdTwoTerritories", "r1", "r2"));
    }

    @Test
    void setsLateJuvenilesAsideAndAsksForTheirAge() {
        Notebook book = threeVisits().visit("V4", "2026-05-20", ARREL, 10, 20);
        book.bird("j", "V4", 12.0).aged(Age.JUVENILE).noted();

        TerritoryMap map = book.map(2026);

        assertThat(arrel(map).territories()).isEmpty();
        assertThat(map.warnings()).contains(Message.of("map.warning.ageAsked", 1, List.of("j")));
    }

    /** A beck joins at km 16.4: a bird at km 16.7 and one 0.3 km up the beck are 0.6 km apart, along the water. */
    @Test
    void joinsATerritoryThroughAConfluence() {
        Notebook book = new Notebook()
                .withSornBeck()
                .visit("V1", "2026-03-01", ARREL, 12, 17)
                .visit("V2", "2026-03-20", ARREL, 12, 17)
                .visit("S1", "2026-03-01", SORN, 0, 2)
                .visit("S2", "2026-03-20", SORN, 0, 2);
        book.bird("m1", "V1", 16.7).noted();
        book.bird("m2", "V2", 16.7).noted();
        book.bird("s", "S1", 0.3).noted();

        TerritoryMap map = book.map(2026);

        assertThat(map.rivers().get(1).territories()).isEmpty();
        Territory territory = arrel(map).territories().get(0);
        assertThat(territory.registrations()).hasSize(3);
        assertThat(territory.arm()).contains(new Territory.Arm(SORN.id(), Stretch.ofKm(0.3, 0.3)));
        assertThat(territory.because())
                .contains(Message.of("map.because.joined", "Sorn Beck", List.of("s"), "Arrel Water"));
    }

    @Test
    void joinsNothingAcrossATurnBackAtAConfluence() {
        Notebook book = new Notebook()
                .withSornBeck()
                .visit("V1", "2026-03-01", ARREL, 12, 17)
                .visit("S1", "2026-03-01", SORN, 0, 2)
                .visit("S2", "2026-03-20", SORN, 0, 2);
        book.bird("m", "V1", 16.7).turnedBackAt(16.45).noted();
        book.bird("s1", "S1", 0.3).noted();
        book.bird("s2", "S2", 0.3).noted();

        TerritoryMap map = book.map(2026);

        assertThat(arrel(map).territories()).hasSize(1);
        assertThat(map.rivers().get(1).territories()).hasSize(1);
    }

    /** Reaches North and South meet at km 17.0; a cluster from 16.9 to 17.1 has three of its five registrations in South. */
    @Test
    void countsATerritoryAcrossTwoReachesOnce() {
        Notebook book = new Notebook()
                .reach("South", ARREL, 12, 17)
                .reach("North", ARREL, 17, 20)
                .visit("V1", "2026-03-01", ARREL, 12, 20)
                .visit("V2", "2026-03-20", ARREL, 12, 20)
                .visit("V3", "2026-04-10", ARREL, 12, 20)
                .visit("V4", "2026-04-25", ARREL, 12, 20)
                .visit("V5", "2026-05-08", ARREL, 12, 20);
        book.bird("p1", "V1", 16.9).noted();
        book.bird("p2", "V2", 16.9).noted();
        book.bird("p3", "V3", 16.95).noted();
        book.bird("p4", "V4", 17.05).noted();
        book.bird("p5", "V5", 17.1).aged(Age.ADULT).noted();
        SurveyRecords records = book.records();
        MapSettings usual = MapSettings.usualFor(Species.DIPPER);

        List<Integer> counts = records.reaches().stream()
                .map(reach -> Water.ofReach(reach, records.reaches()))
                .map(water -> arrel(TerritoryMap.of(records, Species.DIPPER, 2026, usual, water)))
                .map(map -> map.count().likely())
                .toList();
        TerritoryMap north = TerritoryMap.of(
                records,
                Species.DIPPER,
                2026,
                usual,
                Water.ofReach(records.reaches().get(1), records.reaches()));

        assertThat(counts).containsExactly(1, 0);
        assertThat(arrel(book.map(2026)).count().likely()).isEqualTo(1);
        assertThat(arrel(north).territories().get(0).standing()).isEqualTo(Standing.ELSEWHERE);
        assertThat(arrel(north).surveyedKm()).isEqualTo(3.0);
    }

    @Test
    void givesABirdAtTheBridgeBetweenTwoReachesToTheUpperOne() {
        Notebook book = new Notebook()
                .reach("South", ARREL, 12, 17)
                .reach("North", ARREL, 17, 20)
                .visit("V1", "2026-03-01", ARREL, 12, 20)
                .visit("V2", "2026-03-20", ARREL, 12, 20);
        book.bird("q1", "V1", 17.0).noted();
        book.bird("q2", "V2", 17.0).noted();
        SurveyRecords records = book.records();

        assertThat(records.reaches())
                .extracting(reach -> arrel(TerritoryMap.of(
                                records,
                                Species.DIPPER,
                                2026,
                                MapSettings.usualFor(Species.DIPPER),
                                Water.ofReach(reach, records.reaches())))
                        .count()
                        .likely())
                .containsExactly(0, 1);
    }

    @Test
    void saysThatTheFourthTerritoryHangsOnTheAgeOfOneBird() {
        Territory fourth = arrel(SixVisits.notebook()
                        .change("d1", bird -> bird.aged(Age.UNKNOWN))
                        .map(2026))
                .territories()
                .get(3);

        assertThat(fourth.hangsOn())
                .contains(new HangsOn(
                        List.of(key("d1")),
                        Message.of(
                                "map.without.standing",
                                List.of("d1"),
                                Standing.EDGE,
                                Message.of("map.without.count", 3, 4))));
    }

    @Test
    void saysThatTwoTerritoriesWouldBeOneWithoutTheMarksBetweenThem() {
        Territory b = arrel(SixVisits.notebook().map(2026)).territories().get(1);

        assertThat(b.hangsOn()).anySatisfy(hangs -> {
            assertThat(hangs.records()).containsExactlyInAnyOrder(key("b2"), key("c1"), key("b3"), key("c3"));
            assertThat(hangs.otherwise().key()).isEqualTo("map.without.marks");
            assertThat(hangs.otherwise().facts().subList(1, 3))
                    .containsExactly("C", Message.of("map.without.count", 2, 3));
        });
    }

    @Test
    void saysWhenAConfirmedTerritoryRestsOnOneRecord() {
        Territory a = arrel(SixVisits.notebook().map(2026)).territories().get(0);

        assertThat(a.hangsOn())
                .contains(new HangsOn(
                        List.of(key("a4")),
                        Message.of("map.without.evidence", List.of("a4"), BreedingCode.EvidenceClass.PROBABLE, 9)));
        assertThat(hanging(a)).containsExactly("map.without.evidence");
    }

    @Test
    void countsTwoObserversOfOneMorningAsOneVisit() {
        TerritoryMap map =
                threeVisits().visit("V1b", "2026-03-01", ARREL, 12, 18).map(2026);

        assertThat(arrel(map).visits()).isEqualTo(4);
        assertThat(arrel(map).effectiveVisits()).isEqualTo(3);
        assertThat(map.warnings())
                .contains(Message.of("map.warning.twoObservers", List.of("V1", "V1b"), LocalDate.parse("2026-03-01")));
    }

    @Test
    void warnsOfOtherEffortThanTheYearBeforeAndOfPartVisits() {
        TerritoryMap map = threeVisits()
                .visit("V4", "2026-05-01", ARREL, 10, 22)
                .visit("W1", "2025-03-01", ARREL, 10, 20)
                .visit("W2", "2025-04-01", ARREL, 10, 20)
                .map(2026);

        assertThat(warnings(map))
                .contains("map.warning.otherEffort", "map.warning.partVisits", "map.warning.thinWater");
    }

    @Test
    void suspectsDayAndMonthExchanged() {
        Notebook book =
                new Notebook().visit("V1", "2026-03-09", ARREL, 10, 20).visit("V2", "2026-04-20", ARREL, 10, 20);
        book.casual("september", "2026-09-03", ARREL, 12).noted();

        assertThat(book.map(2026).warnings()).contains(Message.of("map.warning.dayAndMonth", 1, List.of("september")));
    }

    @Test
    void warnsOfRoundedPlacesLongTerritoriesAndOtherRules() {
        Notebook book = threeVisits();
        for (int i = 0; i < 9; i++) {
            book.bird("w" + i, "V" + (1 + i % 3), 12 + i % 4 * 0.5).noted();
        }
        TerritoryMap map = book.map(2026, MapSettings.usualFor(Species.DIPPER).withMinimumRegistrations(2));

        assertThat(warnings(map))
                .contains(
                        "map.warning.roundedPlaces", "map.warning.long", "map.warning.otherRules", "map.warning.crowd");
    }

    @Test
    void gradesVisitEfficiency() {
        Notebook book = new Notebook();
        for (int i = 1; i <= 6; i++) {
            book.visit("V" + i, "2026-0" + (2 + i / 4) + "-1" + (i % 4 + 5), ARREL, 10, 20);
        }
        book.bird("g1", "V1", 12).noted();
        book.bird("g2", "V6", 12).noted();

        TerritoryMap map = book.map(2026);

        assertThat(arrel(map).visitEfficiency().orElseThrow()).isEqualTo(2.0 / 6);
        assertThat(warnings(map)).contains("map.warning.lowEfficiency");
    }
}

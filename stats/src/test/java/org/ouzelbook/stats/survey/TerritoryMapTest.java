package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.ouzelbook.stats.survey.Notebook.key;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.stats.survey.TerritoryMap.Count;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/** The invented season of {@link SixVisits} and its variations, worked out by hand from the rules. */
class TerritoryMapTest {
    private static final MapSettings USUAL = MapSettings.usualFor(Species.DIPPER);

    private static RiverMap arrel(TerritoryMap map) {
        return map.rivers().get(0);
    }

    private static List<String> labels(Territory territory) {
        return territory.registrations().stream().map(Sighting::label).sorted().toList();
    }

    private static List<String> keys(Territory territory) {
        return territory.because().stream().map(Message::key).toList();
    }

    private static void assertCount(Count count, int likely, int min, int max, int edge, int unassigned) {
        assertThat(List.of(count.likely(), count.min(), count.max(), count.edge(), count.unassigned()))
                .isEqualTo(List.of(likely, min, max, edge, unassigned));
    }

    @Test
    void countsThreeTerritoriesWithAnEdgeAndABirdWithoutOne() {
        RiverMap map = arrel(SixVisits.notebook().map(2026));

        assertCount(map.count(), 3, 3, 4, 1, 1);
        assertThat(map.surveyedKm()).isCloseTo(5.0, within(1e-9));
        assertThat(map.visits()).isEqualTo(6);
        assertThat(map.effectiveVisits()).isEqualTo(6);
        assertThat(map.territories()).extracting(Territory::id).containsExactly("A", "B", "C", "D");
        assertThat(map.territories())
                .extracting(Territory::standing)
                .containsExactly(Standing.COUNTED, Standing.COUNTED, Standing.COUNTED, Standing.EDGE);
        assertThat(map.territories())
                .extracting(TerritoryMapTest::labels)
                .containsExactly(
                        List.of("a1", "a2", "a3", "a4"),
                        List.of("b1", "b2", "b3"),
                        List.of("c1", "c2", "c3"),
                        List.of("e1", "e2"));
        assertThat(map.setAside()).extracting(aside -> aside.sighting().label()).containsExactly("d1");
    }

    @Test
    void endsTerritoriesWhereBirdsTurnedBack() {
        List<Territory> territories = arrel(SixVisits.notebook().map(2026)).territories();

        assertThat(territories.get(1).stretch()).isEqualTo(Stretch.ofKm(14.0, 14.55));
        assertThat(territories.get(2).stretch()).isEqualTo(Stretch.ofKm(14.6, 15.2));
    }

    @Test
    void gradesEachTerritoryWithTheRecordsBehindIt() {
        List<Territory> territories = arrel(SixVisits.notebook().map(2026)).territories();

        assertThat(territories)
                .extracting(territory -> territory.evidence().orElseThrow().code())
                .containsExactly(new BreedingCode(14), new BreedingCode(4), new BreedingCode(4), new BreedingCode(2));
        assertThat(territories.get(0).evidence().orElseThrow().records()).containsExactly(key("a4"));
        assertThat(territories.get(1).evidence().orElseThrow().records()).containsExactly(key("b1"), key("b3"));
        assertThat(territories.get(2).evidence().orElseThrow().records()).containsExactly(key("c2"), key("c3"));
    }

    @Test
    void saysWhyATerritoryStandsAndWhatBoundsIt() {
        Territory b = arrel(SixVisits.notebook().map(2026)).territories().get(1);

        assertThat(keys(b))
                .containsExactly(
                        "map.because.sightings",
                        "map.because.tooLong",
                        "map.because.simultaneous",
                        "map.because.otherTurnedBack",
                        "map.because.upperEnd",
                        "map.because.heldTerritory");
        assertThat(b.because().get(2).facts().subList(0, 3)).containsExactly("C", "b2", "c1");
        assertThat(b.because().get(4).facts().subList(0, 2)).containsExactly(Chainage.ofKm(14.55), "b3");
    }

    @Test
    void stillCountsThreeWhereThreeRegistrationsAreAskedFor() {
        RiverMap map = arrel(SixVisits.notebook().map(2026, USUAL.withMinimumRegistrations(3)));

        assertThat(map.count().likely()).isEqualTo(3);
        assertThat(map.territories().get(3).standing()).isEqualTo(Standing.NOT_ACCEPTED);
        assertThat(map.count().unassigned()).isEqualTo(3);
    }

    @Test
    void countsAFourthWhereTheAgeOfTheLastBirdIsUnknownAndSaysThatItHangsOnIt() {
        RiverMap map = arrel(SixVisits.notebook()
                .change("d1", bird -> bird.aged(Age.UNKNOWN))
                .map(2026));

        assertCount(map.count(), 4, 3, 4, 0, 0);
        assertThat(labels(map.territories().get(3))).containsExactly("d1", "e1", "e2");
    }

    @Test
    void mergesTwoAndSaysThatItRestsOnTheGapWhereNothingKeepsThemApart() {
        RiverMap map = arrel(SixVisits.notebook()
                .change("b2", Notebook.Bird::notSimultaneous)
                .change("c1", Notebook.Bird::notSimultaneous)
                .change("b3", Notebook.Bird::stayed)
                .change("c3", Notebook.Bird::stayed)
                .map(2026));

        assertCount(map.count(), 2, 2, 3, 1, 1);
        assertThat(keys(map.territories().get(1))).contains("map.because.gap");
    }

    @Test
    void doesNotCallATerritoryLostWhereVisitsWereMissed() {
        RiverMap map =
                arrel(SixVisits.notebook().withoutVisit("V2").withoutVisit("V4").map(2026));

        assertCount(map.count(), 2, 1, 3, 1, 2);
        Territory b = map.territories().get(1);
        assertThat(b.standing()).isEqualTo(Standing.NOT_ACCEPTED);
        assertThat(labels(b)).containsExactly("b1");
        assertThat(b.because()).contains(Message.of("map.because.tooFew", 1, 4, 2));
    }
}

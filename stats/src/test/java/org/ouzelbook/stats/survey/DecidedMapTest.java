package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ouzelbook.stats.survey.Notebook.ARREL;
import static org.ouzelbook.stats.survey.Notebook.SORN;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.survey.Territory.Standing;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

/** What the surveyor decides about {@link SixVisits}, and what becomes of its territories A (km 12.5–12.7), B, C and an edge. */
class DecidedMapTest {
    private static final Message BECAUSE =
            Message.of("map.decided.because", "Ina Brekke", LocalDate.of(2026, 8, 1), "ditch");

    private static RiverMap arrel(Notebook book) {
        return book.map(2026).rivers().get(0);
    }

    private static List<List<String>> labels(RiverMap map) {
        return map.territories().stream()
                .map(territory -> territory.registrations().stream()
                        .map(Sighting::label)
                        .sorted()
                        .toList())
                .toList();
    }

    private static List<String> warnings(Notebook book) {
        return book.map(2026).warnings().stream().map(Message::key).toList();
    }

    @Test
    void cutsATerritoryWhereABoundaryStands() {
        Notebook book = SixVisits.notebook().decide(2026, DecisionKind.BOUNDARY, 12.55, 12.55, "ditch");
        RiverMap map = arrel(book);

        assertThat(labels(map).subList(0, 2)).containsExactly(List.of("a1"), List.of("a2", "a3", "a4"));
        assertThat(map.territories().get(1).because())
                .contains(Message.of("map.because.decidedBoundary", "A", Chainage.ofKm(12.55), BECAUSE));
        assertThat(warnings(book)).contains("map.warning.decided");
    }

    @Test
    void makesOneOfWhatIsTogetherThoughTwoBirdsWereSeenAtOnceAndTurnedBack() {
        Notebook book = SixVisits.notebook().decide(2026, DecisionKind.TOGETHER, 14.0, 15.2, "ditch");
        RiverMap map = arrel(book);

        assertThat(map.count().likely()).isEqualTo(2);
        assertThat(labels(map).get(1)).containsExactly("b1", "b2", "b3", "c1", "c2", "c3");
        assertThat(map.territories().get(1).because())
                .contains(Message.of("map.because.decidedOne", Stretch.ofKm(14.0, 15.2), BECAUSE));
        assertThat(warnings(book)).contains("map.warning.decidedTwoBirds");
    }

    @Test
    void acceptsNoTerritoryWhereThereIsNoneAndSaysWhy() {
        RiverMap map = arrel(SixVisits.notebook().decide(2026, DecisionKind.NO_TERRITORY, 12.4, 12.65, "ditch"));

        assertThat(map.count().likely()).isEqualTo(2);
        assertThat(map.count().max()).isLessThanOrEqualTo(3);
        assertThat(labels(map).subList(0, 2))
                .containsExactly(List.of("a1", "a3", "a4"), List.of("a2", "b1", "b2", "b3"));
        assertThat(map.territories().get(0).standing()).isEqualTo(Standing.NOT_ACCEPTED);
        assertThat(map.territories().get(0).because())
                .contains(Message.of("map.because.decidedNone", Stretch.ofKm(12.4, 12.65), BECAUSE));
    }

    @Test
    void remembersANoteWithoutChangingAnything() {
        RiverMap noted = arrel(SixVisits.notebook().decide(2026, DecisionKind.NOTE, 12.6, 12.6, "ditch"));
        RiverMap plain = arrel(SixVisits.notebook());

        assertThat(noted.count()).isEqualTo(plain.count());
        assertThat(noted.territories().get(0).because())
                .contains(Message.of("map.because.noted", Chainage.ofKm(12.6), BECAUSE));
    }

    @Test
    void passesOverWhatWasDecidedAboutAnotherSeason() {
        assertThat(arrel(SixVisits.notebook().decide(2025, DecisionKind.NO_TERRITORY, 12, 17, "ditch")))
                .isEqualTo(arrel(SixVisits.notebook()));
    }

    @Test
    void keepsTheAnswerWithoutThem() {
        SurveyRecords records = SixVisits.notebook()
                .decide(2026, DecisionKind.NO_TERRITORY, 12, 17, "ditch")
                .records();

        assertThat(TerritoryMap.of(
                        records.withoutDecisions(),
                        Species.DIPPER,
                        2026,
                        MapSettings.usualFor(Species.DIPPER),
                        Water.ALL))
                .isEqualTo(SixVisits.notebook().map(2026));
    }

    @Test
    void followsNeitherOfTwoThatContradictEachOther() {
        Notebook book = SixVisits.notebook()
                .decide(2026, DecisionKind.TOGETHER, 12, 13, "ditch")
                .decide(2026, DecisionKind.BOUNDARY, 12.55, 12.55, "ditch");

        assertThat(labels(arrel(book))).isEqualTo(labels(arrel(SixVisits.notebook())));
        assertThat(warnings(book)).contains("map.warning.decidedContradiction");
    }

    @Test
    void joinsNothingThroughAConfluencePastABoundary() {
        Notebook joined = atTheConfluence();
        Notebook parted = atTheConfluence().decide(2026, DecisionKind.BOUNDARY, 16.35, 16.35, "ditch");

        assertThat(joined.map(2026).rivers().stream()
                        .mapToInt(map -> map.territories().size()))
                .containsExactly(1, 0);
        assertThat(parted.map(2026).rivers().stream()
                        .mapToInt(map -> map.territories().size()))
                .containsExactly(1, 1);
    }

    /** A bird just below the mouth of Sorn Beck and one just above it, in the beck. */
    private static Notebook atTheConfluence() {
        Notebook book = new Notebook().withSornBeck();
        book.visit("V1", "2026-03-16", ARREL, 12, 17).visit("W1", "2026-03-30", SORN, 0, 3);
        book.bird("a1", "V1", 16.3).noted();
        book.bird("a2", "V1", 16.31).noted();
        return book.bird("s1", "W1", 0.1).noted();
    }
}

package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.ouzelbook.stats.survey.Notebook.ARREL;
import static org.ouzelbook.stats.survey.Notebook.SORN;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;

/** The count by model where the Sorn Beck joins the Arrel Water at km 16.4. */
class TerritoryModelTest {
    private static final List<String> DAYS =
            List.of("2024-03-02", "2024-03-16", "2024-03-30", "2024-04-13", "2024-04-27", "2024-05-11");
    private static final Chainage JUST_BELOW = Chainage.ofKm(16.3);
    private static final Chainage UP_THE_BECK = Chainage.ofKm(0.15);

    /** Six walks along both waters; a pair well below the confluence, one well above it, and one far up the beck. */
    private static Notebook notebook() {
        Notebook notebook = new Notebook().withSornBeck();
        for (int i = 0; i < DAYS.size(); i++) {
            String day = DAYS.get(i);
            notebook.visit("A" + i, day, ARREL, 13, 19).visit("S" + i, day, SORN, 0, 3);
            notebook.bird("low" + i, "A" + i, 14.2 + 0.05 * i).noted();
            notebook.bird("high" + i, "A" + i, 18.3 + 0.05 * i).noted();
            notebook.bird("far" + i, "S" + i, 2.4 + 0.05 * i).noted();
        }
        return notebook;
    }

    private static TerritoryModel model(Notebook notebook) {
        return TerritoryModel.of(
                notebook.records(), Species.DIPPER, MapSettings.usualFor(Species.DIPPER), Progress.NONE);
    }

    private static double both(TerritoryModel model) {
        return model.count(2024, ARREL.id(), Water.ALL).orElseThrow().expected()
                + model.count(2024, SORN.id(), Water.ALL).orElseThrow().expected();
    }

    @Test
    void countsAPairOnceThatIsMetOnBothSidesOfAConfluence() {
        Notebook notebook = notebook();
        double without = both(model(notebook));
        for (int i = 0; i < DAYS.size(); i++) {
            (i % 2 == 0 ? notebook.bird("pair" + i, "A" + i, 16.3) : notebook.bird("pair" + i, "S" + i, 0.15)).noted();
        }
        TerritoryModel model = model(notebook);
        ModelCount main = model.count(2024, ARREL.id(), Water.ALL).orElseThrow();
        ModelCount beck = model.count(2024, SORN.id(), Water.ALL).orElseThrow();

        assertThat(main.together(JUST_BELOW, SORN.id(), UP_THE_BECK)).isGreaterThan(0.9);
        assertThat(beck.together(UP_THE_BECK, ARREL.id(), JUST_BELOW))
                .isCloseTo(main.together(JUST_BELOW, SORN.id(), UP_THE_BECK), within(1e-9));
        assertThat(both(model) - without).isBetween(0.5, 1.2);
        assertThat(main.reaching(JUST_BELOW)).singleElement().satisfies(reach -> {
            assertThat(reach.river()).isEqualTo(SORN.id());
            assertThat(reach.probability()).isGreaterThan(0.9);
        });
        assertThat(List.of(main, beck))
                .flatExtracting(ModelCount::mostProbable)
                .filteredOn(territory -> territory.arm().isPresent())
                .singleElement()
                .satisfies(territory -> assertThat(territory.stretch().length()
                                + territory.arm().orElseThrow().stretch().length())
                        .isBetween(250.0, 2000.0));
    }

    @Test
    void countsTwoWhereTwoBirdsWereSeenAtOnceOnTwoWaters() {
        Notebook notebook = notebook();
        for (int i = 0; i < DAYS.size(); i++) {
            notebook.bird("main" + i, "A" + i, 16.3).noted();
            notebook.bird("beck" + i, "S" + i, 0.15).sameTimeAs("main" + i).noted();
        }
        TerritoryModel model = model(notebook);
        ModelCount main = model.count(2024, ARREL.id(), Water.ALL).orElseThrow();

        assertThat(main.together(JUST_BELOW, SORN.id(), UP_THE_BECK)).isLessThan(0.01);
        assertThat(both(model)).isBetween(4.7, 5.6);
    }

    /** Birds farther apart may be one pair or two; the same rings on both waters settle it. */
    @Test
    void knowsARingedBirdOnBothWaters() {
        Notebook notebook = notebook();
        for (int i = 0; i < DAYS.size(); i++) {
            (i % 2 == 0 ? notebook.bird("main" + i, "A" + i, 16.9) : notebook.bird("beck" + i, "S" + i, 0.8)).noted();
        }
        double apart = together(notebook);
        double ringed = together(
                notebook.change("main2", bird -> bird.ringed("rm/gl")).change("beck3", bird -> bird.ringed("rm/gl")));

        assertThat(apart).isLessThan(0.5);
        assertThat(ringed).isGreaterThan(0.9);
    }

    private static double together(Notebook notebook) {
        return model(notebook)
                .count(2024, ARREL.id(), Water.ALL)
                .orElseThrow()
                .together(Chainage.ofKm(16.9), SORN.id(), Chainage.ofKm(0.8));
    }

    /** The same map of both waters is drawn: no draw counts a pair twice, or not at all, more often than the law says. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void drawsOneMapOfBothWaters(long seed) {
        Notebook notebook = notebook();
        for (int i = 0; i < DAYS.size(); i++) {
            (i % 2 == 0 ? notebook.bird("pair" + i, "A" + i, 16.35) : notebook.bird("pair" + i, "S" + i, 0.05)).noted();
        }
        TerritoryModel model = model(notebook);
        ModelCount main = model.count(2024, ARREL.id(), Water.ALL).orElseThrow();
        ModelCount beck = model.count(2024, SORN.id(), Water.ALL).orElseThrow();
        List<Long> onMain = main.draws(400, seed);
        List<Long> onBeck = beck.draws(400, seed);

        double mean = 0;
        double square = 0;
        double varianceOfMain = variance(onMain);
        for (int i = 0; i < 400; i++) {
            long sum = onMain.get(i) + onBeck.get(i);
            mean += sum / 400.0;
            square += sum * sum / 400.0;
        }
        double variance = square - mean * mean;
        assertThat(mean).isCloseTo(main.expected() + beck.expected(), within(4 * Math.sqrt(variance / 400)));
        // The pair at the confluence counts on one water or the other: so the sum varies less than its parts.
        assertThat(variance).isLessThan(varianceOfMain + variance(onBeck));
    }

    private static double variance(List<Long> numbers) {
        double mean = numbers.stream().mapToLong(one -> one).average().orElseThrow();
        return numbers.stream()
                .mapToDouble(one -> (one - mean) * (one - mean))
                .average()
                .orElseThrow();
    }

    /** Where nobody walked the river that it joins, a tributary ends at its mouth, and counts as it did. */
    @Test
    void leavesATributaryAloneWhereTheRiverWasNotWalked() {
        Notebook alone = new Notebook().withSornBeck();
        for (int i = 0; i < DAYS.size(); i++) {
            alone.visit("S" + i, DAYS.get(i), SORN, 0, 3);
            alone.bird("near" + i, "S" + i, 0.2 + 0.05 * i).noted();
        }
        ModelCount beck = model(alone).count(2024, SORN.id(), Water.ALL).orElseThrow();

        assertThat(beck.reaching(UP_THE_BECK)).isEmpty();
        assertThat(beck.together(UP_THE_BECK, ARREL.id(), JUST_BELOW)).isZero();
        assertThat(beck.expected()).isBetween(1.0, 3.0);
    }
}

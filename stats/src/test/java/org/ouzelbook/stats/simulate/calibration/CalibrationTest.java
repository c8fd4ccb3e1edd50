package org.ouzelbook.stats.simulate.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.simulate.calibration.CountedSeason.ModelCount;
import org.ouzelbook.stats.simulate.mechanism.BookPlan;
import org.ouzelbook.stats.simulate.mechanism.FieldPlan;
import org.ouzelbook.stats.simulate.mechanism.Mechanism.Kind;
import org.ouzelbook.stats.simulate.mechanism.SimulatedBook;

class CalibrationTest {
    private static CountedSeason season(int truth, int byRule, double estimate, double lower, double upper) {
        return new CountedSeason(truth, byRule, Optional.of(new ModelCount(estimate, lower, upper)));
    }

    /** By hand: errors of the rule −2, −4, 0 on a truth of 30; of the model 1, −1, 3. */
    @Test
    void scoresByHand() {
        Score score = new Score(List.of(
                new CountedBook(2, List.of(season(10, 8, 11, 9, 12), season(10, 6, 9, 7, 9.5))),
                new CountedBook(4, List.of(season(10, 10, 13, 10, 15)))));

        assertThat(score.meanTruth()).isEqualTo(10);
        assertThat(score.ruleBias()).isCloseTo(-0.2, within(1e-12));
        assertThat(score.ruleError()).isCloseTo(Math.sqrt(20 / 3.0), within(1e-12));
        assertThat(score.modelBias()).isCloseTo(0.1, within(1e-12));
        assertThat(score.modelError()).isCloseTo(Math.sqrt(11 / 3.0), within(1e-12));
        assertThat(score.coverage()).isCloseTo(2 / 3.0, within(1e-12));
        assertThat(score.width()).isCloseTo((3 + 2.5 + 5) / 3, within(1e-12));
        assertThat(score.seconds()).isEqualTo(3);
    }

    @Test
    void keepsABookAsALineAndReadsItBack() {
        CountedBook book =
                new CountedBook(1.5, List.of(season(10, 8, 11.25, 9, 12), new CountedSeason(3, 2, Optional.empty())));

        assertThat(CountedBook.read(book.line())).isEqualTo(book);
    }

    @Test
    void namesEveryTrialDifferently() {
        List<Trial> grid = Trial.grid(2, 7);
        Set<String> names = new HashSet<>();

        assertThat(grid).allSatisfy(trial -> assertThat(names.add(trial.name())).isTrue());
        assertThat(grid).anyMatch(trial -> trial.plan().field().piece()).anyMatch(trial -> !trial.isLarge());
    }

    /** With many visits, hardly a stray and grounds far apart, the rule finds nearly all there are. */
    @Test
    void countsASimulatedBookByRule() {
        FieldPlan field = new FieldPlan(12_000, false, 8, 0, 0.3, 0.1);
        CountedBook counted = BookCounter.of(SimulatedBook.of(new BookPlan(Kind.SPARSE, 700, 10, field), 5));
        Score score = new Score(List.of(counted));

        assertThat(counted.seasons()).hasSize(10);
        assertThat(score.meanTruth()).isBetween(1.0, 6.0);
        assertThat(score.ruleBias()).isBetween(-0.35, 0.2);
    }

    @Test
    void countsARiverAndATributaryTogether() {
        FieldPlan field = new FieldPlan(9_000, false, 6, 0, 0, 0);
        BookPlan plan = new BookPlan(Kind.NEST_CENTRED, 900, 2, field);
        Score score = new Score(List.of(new Trial(plan, 5, Trial.Waters.FORKED).counted()));

        assertThat(score.isModelled()).isTrue();
        assertThat(score.seasons()).hasSize(2);
        assertThat(score.modelBias()).isBetween(-0.4, 0.4);
    }

    @Test
    void writesOneRowAGroup() {
        Trial trial = Trial.grid(1, 7).get(0);
        String page = CalibrationPage.of(
                Map.of(trial, new CountedBook(2, List.of(season(10, 8, 11, 9, 12)))), "java Calibration", "0.1.0");

        assertThat(page)
                .contains("| modelled, 3 | 1 | 10.0 | +10.0 % | 100 % | 3.0 | 1.00 | −20.0 % | 2.00 | 0.50 | 2.00 |")
                .contains("Ouzelbook 0.1.0");
    }
}

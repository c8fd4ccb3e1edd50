package org.ouzelbook.stats.estimator.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.score.ScoreSlope.Cell;

class ScoreSlopeTest {
    private static Estimate found(List<Cell> cells) {
        return ScoreSlope.of(cells, 0.95).found().orElseThrow();
    }

    /** One site, two scores one apart: β is the log of the ratio of the rates, with variance 1/8 + 1/4, by hand. */
    @Test
    void isTheLogRateRatioOfTwoSeasons() {
        Estimate two = found(List.of(new Cell("a", 8, 2, 1), new Cell("a", 4, 4, 0)));

        assertThat(two.value()).isCloseTo(Math.log(4), within(1e-10));
        assertThat(two.standardError().orElseThrow()).isCloseTo(Math.sqrt(0.375), within(1e-10));
    }

    @Test
    void hearsNothingFromSitesWithOneScoreOrNoCount() {
        List<Cell> telling = List.of(new Cell("a", 8, 2, 1), new Cell("a", 4, 4, 0));
        List<Cell> more = new ArrayList<>(telling);
        more.add(new Cell("b", 30, 2, 5));
        more.add(new Cell("b", 10, 2, 5));
        more.add(new Cell("c", 0, 2, 1));
        more.add(new Cell("c", 0, 2, 9));

        assertThat(found(more)).isEqualTo(found(telling));
    }

    @Test
    void refusesWhatHasNoMaximumAndNoSiteThatTells() {
        assertThat(ScoreSlope.of(List.of(new Cell("a", 8, 2, 1), new Cell("a", 0, 4, 0)), 0.95))
                .isEqualTo(Answer.notEstimable(Reason.NOT_CONVERGED));
        assertThat(ScoreSlope.of(List.of(new Cell("a", 8, 2, 1)), 0.95))
                .isEqualTo(Answer.notEstimable(Reason.NO_SITE_IN_TWO_SEASONS));
        assertThatIllegalArgumentException().isThrownBy(() -> new Cell("a", 8, 0, 1));
    }

    /** 400 simulated data sets with β = 0.1: coverage of the 95 % interval within four standard errors of 0.95 (0.011). */
    @Test
    @Tag("slow")
    void coversTheSlopeThatMadeTheCounts() {
        Random random = new Random(20261125);
        Well19937c counts = new Well19937c(20261125);
        int covered = 0;
        for (int trial = 0; trial < 400; trial++) {
            List<Cell> cells = new ArrayList<>();
            for (int site = 0; site < 6; site++) {
                double rate = 0.3 + random.nextDouble();
                for (int season = 0; season < 10; season++) {
                    double score = 8 + random.nextInt(8);
                    double mean = rate * 5 * Math.exp(0.1 * (score - 12));
                    cells.add(new Cell(
                            "s" + site, new PoissonDistribution(counts, mean, 1e-12, 10000).sample(), 5, score));
                }
            }
            Estimate slope = found(cells);
            covered += slope.lower() <= 0.1 && 0.1 <= slope.upper() ? 1 : 0;
        }

        assertThat(covered / 400.0).isCloseTo(0.95, within(4 * 0.011));
    }
}

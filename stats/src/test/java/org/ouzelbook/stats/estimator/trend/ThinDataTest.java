package org.ouzelbook.stats.estimator.trend;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;

/** Whatever the counts, there is an answer: a finding without NaN, or a reason. */
class ThinDataTest {
    private static final int ROUNDS = 3_000;

    private static List<SeasonCount> thin(Random random) {
        List<SeasonCount> counts = new ArrayList<>();
        int sites = 1 + random.nextInt(4);
        int seasons = 1 + random.nextInt(5);
        int most = random.nextInt(4) == 0 ? 1_000_000_000 : 1 + random.nextInt(4);
        for (int site = 0; site < sites; site++) {
            for (int season = 0; season < seasons; season++) {
                if (random.nextInt(3) > 0) {
                    OptionalLong count = random.nextInt(5) == 0
                            ? OptionalLong.empty()
                            : OptionalLong.of(random.nextBoolean() ? 0 : random.nextInt(most));
                    OptionalDouble km = random.nextBoolean()
                            ? OptionalDouble.empty()
                            : OptionalDouble.of(Math.exp(random.nextGaussian()));
                    counts.add(new SeasonCount("site " + site, 2000 + season * season, count, km));
                }
            }
        }
        return counts;
    }

    /** An {@link org.ouzelbook.stats.estimator.Estimate} refuses NaN, so a finding that was made holds none. */
    @Test
    @Tag("slow")
    void alwaysHaveAnAnswer() {
        Random random = new Random(20);
        int lines = 0;
        int effects = 0;
        for (int round = 0; round < ROUNDS; round++) {
            List<SeasonCount> counts = thin(random);
            Answer<LineTrend> line = LineTrend.of(counts, TrendSettings.usual());
            line.found().ifPresent(found -> {
                assertThat(found.percentOverPeriod().value()).isGreaterThanOrEqualTo(-100);
                assertThat(found.probabilityFalling()).isBetween(0.0, 1.0);
                assertThat(found.smallestDetectable(0.8).fall()).isLessThanOrEqualTo(0);
            });
            Answer<SeasonEffects> seasons = SeasonEffects.of(counts, TrendSettings.usual());
            seasons.found().ifPresent(found -> assertThat(found.totals()).isNotEmpty());
            lines += line.found().isPresent() ? 1 : 0;
            effects += seasons.found().isPresent() ? 1 : 0;
            assertThat(List.of(line, seasons))
                    .as("%s", counts)
                    .doesNotContain(Answer.notEstimable(Reason.NOT_CONVERGED));
        }

        assertThat(lines).isBetween(ROUNDS / 10, ROUNDS);
        assertThat(effects).isBetween(ROUNDS / 10, ROUNDS);
    }

    /** Eight orders of magnitude in one year at one site, and another site 5,000 years on: no computer number holds that. */
    @Test
    void areRefusedBeyondAllReason() {
        List<SeasonCount> counts = List.of(
                SeasonCount.of("A", 1, 1_000_000_000),
                SeasonCount.of("A", 2, 1),
                SeasonCount.of("B", 6000, 5),
                SeasonCount.of("B", 6001, 0));

        assertThat(LineTrend.of(counts, TrendSettings.usual())).isEqualTo(Answer.notEstimable(Reason.NOT_CONVERGED));
    }
}

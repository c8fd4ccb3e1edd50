package org.ouzelbook.stats.estimator.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;

/** Published values of bent lines stand in {@link VariationTest}. */
class BentTrendTest {
    private static Answer<BentTrend> bent(int change, long... counts) {
        List<SeasonCount> series = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            series.add(SeasonCount.of("A", 2001 + i, counts[i]));
        }
        return BentTrend.of(series, List.of(change), TrendSettings.usual());
    }

    @Test
    void refusesSlopesWithoutAnEnd() {
        assertThat(bent(2002, 0, 0, 5, 9)).isEqualTo(Answer.notEstimable(Reason.NO_BIRDS_BEYOND_CHANGE, 0, 2002));
        assertThat(bent(2002, 5, 4, 0, 0)).isEqualTo(Answer.notEstimable(Reason.NO_BIRDS_BEYOND_CHANGE, 1, 2002));
    }

    /** 12 sites, rising by 0.08 a year for six years and falling by 0.05 for six: limits of slopes and change hold the truth. */
    @Test
    @Tag("slow")
    void coversTheSlopesAndTheirChange() {
        RandomGenerator random = new Well19937c(1990);
        int rounds = 500;
        int[] covered = new int[3];
        for (int round = 0; round < rounds; round++) {
            List<SeasonCount> counts = new ArrayList<>();
            for (int site = 0; site < 12; site++) {
                for (int season = 0; season < 12; season++) {
                    double log = 0.08 * Math.min(season, 6) - 0.05 * Math.max(0, season - 6);
                    double mean = (3 + site) * Math.exp(log);
                    counts.add(SeasonCount.of(
                            "site " + site,
                            2010 + season,
                            new PoissonDistribution(random, mean, 1e-12, 1000).sample()));
                }
            }
            BentTrend trend = BentTrend.of(counts, List.of(2016), TrendSettings.usual())
                    .found()
                    .orElseThrow();
            covered[0] += holds(trend.pieces().get(0).slope(), 0.08);
            covered[1] += holds(trend.pieces().get(1).slope(), -0.05);
            covered[2] += holds(trend.changes().get(0).difference(), -0.13);
        }

        for (int held : covered) {
            assertThat((double) held / rounds).isCloseTo(0.95, within(4 * Math.sqrt(0.95 * 0.05 / rounds)));
        }
    }

    private static int holds(Estimate estimate, double truth) {
        return estimate.lower() <= truth && truth <= estimate.upper() ? 1 : 0;
    }
}

package org.ouzelbook.stats.estimator.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;

class PooledTrendTest {
    private static List<SeasonCount> series(long... counts) {
        List<SeasonCount> series = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            series.add(SeasonCount.of("Otter Water", 2019 + i, counts[i]));
        }
        return series;
    }

    private static LineTrend line(List<SeasonCount> counts) {
        return LineTrend.of(counts, TrendSettings.usual()).found().orElseThrow();
    }

    /** Sets without any difference are one set. */
    @Test
    void isTheLineWhereCountsAreCertain() {
        List<SeasonCount> counts = series(9, 8, 8, 9, 7, 7);
        PooledTrend pooled = PooledTrend.of(List.of(counts, counts, counts), TrendSettings.usual())
                .found()
                .orElseThrow();

        assertThat(pooled.slope().value()).isCloseTo(line(counts).slope().value(), within(1e-12));
        assertThat(pooled.slope().upper()).isCloseTo(line(counts).slope().upper(), within(1e-12));
        assertThat(pooled.probabilityFalling()).isCloseTo(line(counts).probabilityFalling(), within(1e-12));
        assertThat(pooled.smallestDetectable(0.8).fall())
                .isCloseTo(line(counts).smallestDetectable(0.8).fall(), within(1e-9));
        assertThat(pooled.totals().get(2).expected().upper())
                .isCloseTo(line(counts).totals().get(2).expected().upper(), within(1e-9));
        assertThat(pooled.shareDrawn()).isZero();
    }

    /** Rubin's rule by hand: mean of the slopes; mean of their variances plus 3/2 of the variance between two. */
    @Test
    void addsTheUncertaintyOfTheCounts() {
        List<SeasonCount> some = series(9, 8, 8, 9, 7, 7);
        List<SeasonCount> others = series(8, 9, 8, 7, 8, 9);
        PooledTrend pooled = PooledTrend.of(List.of(some, others), TrendSettings.usual())
                .found()
                .orElseThrow();
        double a = line(some).slope().value();
        double b = line(others).slope().value();
        double within = (variance(some) + variance(others)) / 2;

        assertThat(pooled.slope().value()).isCloseTo((a + b) / 2, within(1e-12));
        assertThat(pooled.slope().standardError().orElseThrow())
                .isCloseTo(Math.sqrt(within + 1.5 * (a - b) * (a - b) / 2), within(1e-12));
        assertThat(pooled.shareDrawn()).isBetween(0.0, 1.0);
        assertThat(pooled.sets()).isEqualTo(2);
        assertThat(pooled.smallestDetectable(0.8).fall())
                .isLessThan(line(some).smallestDetectable(0.8).fall());
    }

    private static double variance(List<SeasonCount> counts) {
        double error = line(counts).slope().standardError().orElseThrow();
        return error * error;
    }

    @Test
    void saysWhyThereIsNone() {
        List<SeasonCount> counts = series(9, 8, 8);

        assertThat(PooledTrend.of(List.of(counts), TrendSettings.usual()))
                .isEqualTo(Answer.notEstimable(Reason.TOO_FEW_VALUES, 1, 2));
        assertThat(PooledTrend.of(List.of(counts, series(0, 0, 0), counts), TrendSettings.usual()))
                .isEqualTo(Answer.notEstimable(Reason.DRAWN_SETS_WITHOUT_ANSWER, 1, 3));
    }
}

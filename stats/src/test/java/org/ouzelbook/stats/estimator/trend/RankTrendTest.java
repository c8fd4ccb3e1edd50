package org.ouzelbook.stats.estimator.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.trend.RankTrend.Ranks;

class RankTrendTest {
    private static RankTrend trend(double[] times, double... values) {
        return RankTrend.of(times, values, 0.95, Ranks.INTERPOLATED).found().orElseThrow();
    }

    private static double[] years(int n) {
        return IntStream.rangeClosed(1, n).asDoubleStream().toArray();
    }

    /**
     * D. R. Helsel and R. M. Hirsch (2002), Statistical Methods in Water Resources, section 8.2, cited from memory: S 21, tau
     * 0.47, exact p 0.073, Z 1.79, p 0.074. Further digits from R 4.2.2.
     */
    @Test
    void reproducesHelselAndHirschOnCorrelation() {
        RankTrend trend = trend(
                new double[] {2, 24, 99, 197, 377, 544, 632, 3452, 6587, 53170},
                1.22,
                2.20,
                4.80,
                1.28,
                1.97,
                1.46,
                2.64,
                2.34,
                4.84,
                2.96);

        assertThat(trend.s()).isEqualTo(21);
        assertThat(trend.varS()).isCloseTo(125, within(1e-12));
        assertThat(trend.z()).isCloseTo(1.788854382, within(1e-9));
        assertThat(trend.p()).isCloseTo(0.07363827012, within(1e-10));
        assertThat(trend.exactP().found().orElseThrow()).isCloseTo(0.07255015432, within(1e-10));
        assertThat(trend.tau()).isCloseTo(0.4666666667, within(1e-10));
        assertThat(trend.tauB()).isCloseTo(trend.tau(), within(1e-12));
        assertThat(trend.slope().value()).isCloseTo(0.0003026134801, within(1e-12));
    }

    /**
     * The same, section 10.1, cited from memory: slope 1.0, intercept 0. Limits at ranks 3.974958 and 18.025042 of 21 slopes,
     * from R 4.2.2.
     */
    @Test
    void reproducesHelselAndHirschOnSlope() {
        double[] values = {1, 2, 3, 4, 5, 16, 7};
        RankTrend trend = trend(years(7), values);

        assertThat(trend.s()).isEqualTo(19);
        assertThat(trend.varS()).isCloseTo(44.33333333, within(1e-8));
        assertThat(trend.z()).isCloseTo(2.703381341, within(1e-9));
        assertThat(trend.exactP().found().orElseThrow()).isCloseTo(0.002777777778, within(1e-12));
        assertThat(trend.slope().value()).isEqualTo(1.0);
        assertThat(trend.slope().lower()).isEqualTo(1.0);
        assertThat(trend.slope().upper()).isCloseTo(3.520868046, within(1e-9));
        assertThat(trend.intercept()).isZero();
        assertThat(RankTrend.of(years(7), values, 0.95, Ranks.ROUNDED)
                        .found()
                        .orElseThrow()
                        .slope()
                        .upper())
                .isEqualTo(3.5);
    }

    /** R. O. Gilbert (1987), section 16.4.1, cited from memory: S = 4, one-sided p 0.167. */
    @Test
    void reproducesGilbertsExample() {
        RankTrend trend = trend(years(4), 10, 15, 14, 20);

        assertThat(trend.s()).isEqualTo(4);
        assertThat(trend.exactP().found().orElseThrow()).isCloseTo(2 * 0.1666666667, within(1e-9));
    }

    @Test
    void leavesLimitsOpenThatFewValuesCannotSet() {
        RankTrend trend = trend(years(4), 10, 15, 14, 20);

        assertThat(trend.slope().lower()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(trend.slope().upper()).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(trend.slope().warnings()).containsExactly(Caution.of(Reason.SLOPE_LIMIT_OPEN, 4));
    }

    /**
     * With ties in value the variance is [n(n−1)(2n+5) − Σ t(t−1)(2t+5)]/18 (Gilbert 1987, equation 16.3): for 9, 8, 8, 7, 7 it
     * is (300 − 18 − 18)/18.
     */
    @Test
    void correctsForTies() {
        RankTrend trend = trend(new double[] {2021, 2022, 2023, 2025, 2026}, 9, 8, 8, 7, 7);

        assertThat(trend.s()).isEqualTo(-8);
        assertThat(trend.varS()).isCloseTo(264.0 / 18, within(1e-12));
        assertThat(trend.tau()).isEqualTo(-0.8);
        assertThat(trend.tauB()).isCloseTo(-8 / Math.sqrt(10 * 8), within(1e-12));
        assertThat(trend.exactP().found().orElseThrow()).isCloseTo(2.0 / 30, within(1e-12));
    }

    @Test
    void doesNotMindTheOrderOfRowsNorTheUnits() {
        RankTrend trend = trend(new double[] {2020, 2021, 2023, 2024, 2026}, 4, 7, 5, 9, 8);
        RankTrend other = trend(new double[] {48, 46, 40, 52, 42}, 18, 10, 8, 16, 14);

        assertThat(other.s()).isEqualTo(trend.s());
        assertThat(other.slope().value()).isCloseTo(trend.slope().value(), within(1e-12));
    }

    @Test
    void hasNoExactProbabilityForRepeatedTimes() {
        RankTrend trend = trend(new double[] {1, 1, 2, 3}, 4, 5, 7, 8);

        assertThat(trend.s()).isEqualTo(5);
        assertThat(trend.exactP()).isEqualTo(Answer.notEstimable(Reason.REPEATED_TIMES));
    }

    @Test
    void saysWhyThereIsNoTrend() {
        assertThat(RankTrend.of(years(2), new double[] {1, 2}, 0.95, Ranks.INTERPOLATED))
                .isEqualTo(Answer.notEstimable(Reason.TOO_FEW_VALUES, 2, 3));
        assertThat(RankTrend.of(new double[] {3, 3, 3}, new double[] {1, 2, 3}, 0.95, Ranks.INTERPOLATED))
                .isEqualTo(Answer.notEstimable(Reason.ONE_POINT_IN_TIME));
        assertThat(RankTrend.of(years(3), new double[] {5, 5, 5}, 0.95, Ranks.INTERPOLATED))
                .isEqualTo(Answer.notEstimable(Reason.ALL_VALUES_EQUAL));
    }

    @Test
    void refusesWhatIsNoSeries() {
        assertThatThrownBy(() -> RankTrend.of(years(3), new double[] {1, 2}, 0.95, Ranks.INTERPOLATED))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> RankTrend.of(years(3), new double[] {1, 2, Double.NaN}, 0.95, Ranks.INTERPOLATED))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** The slope's limits cover a true slope at about their level; Sen's limits are exact but for the normal law of S. */
    @Test
    @Tag("slow")
    void coversTheTrueSlope() {
        Random random = new Random(1968);
        int rounds = 5_000;
        int covered = 0;
        for (int round = 0; round < rounds; round++) {
            double[] values = new double[12];
            for (int year = 0; year < values.length; year++) {
                values[year] = -0.3 * year + random.nextGaussian();
            }
            RankTrend trend = trend(years(12), values);
            covered += trend.slope().lower() <= -0.3 && -0.3 <= trend.slope().upper() ? 1 : 0;
        }
        double standardError = Math.sqrt(0.95 * 0.05 / rounds);

        assertThat((double) covered / rounds).isCloseTo(0.95, within(0.01 + 4 * standardError));
    }
}

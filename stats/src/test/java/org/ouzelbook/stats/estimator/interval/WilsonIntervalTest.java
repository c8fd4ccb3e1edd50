package org.ouzelbook.stats.estimator.interval;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.ReferenceLaw;

class WilsonIntervalTest {
    private static Estimate interval(long successes, long trials, double level) {
        return WilsonInterval.of(successes, trials, level).found().orElseThrow();
    }

    /**
     * R. G. Newcombe (1998), Stat. Med. 17:857–872, Table I, method 3, cited from memory. It prints four decimals, hence the
     * tolerance.
     */
    @ParameterizedTest(name = "{0} of {1}")
    @CsvSource(textBlock = """
                    81, 263, 0.2553, 0.3662
                    15, 148, 0.0624, 0.1605
                     0,  20, 0.0000, 0.1611
                     1,  29, 0.0061, 0.1718
                    """)
    void reproducesNewcombesTable(int successes, int trials, double lower, double upper) {
        Estimate interval = interval(successes, trials, 0.95);

        assertThat(interval.lower()).isCloseTo(lower, within(0.5e-4));
        assertThat(interval.upper()).isCloseTo(upper, within(0.5e-4));
    }

    /** R 4.2.2, {@code prop.test(x, n, correct = FALSE)}. */
    @Test
    void agreesWithR() {
        Estimate interval = interval(81, 263, 0.95);

        assertThat(interval.lower()).isCloseTo(0.255288519878274, within(1e-12));
        assertThat(interval.upper()).isCloseTo(0.3662095769828, within(1e-12));
    }

    /** The limits are where the score test is at its critical value: (p − π)² = z² π(1 − π)/n. */
    @ParameterizedTest(name = "{0} of {1} at {2}")
    @CsvSource({"1, 2, 0.5", "3, 7, 0.8", "999999, 1000000, 0.95", "1, 1000000, 0.99", "500000, 1000000, 0.999"})
    void solvesTheScoreEquation(long successes, long trials, double level) {
        Estimate interval = interval(successes, trials, level);
        double z = ReferenceLaw.NORMAL.halfWidth(level);

        for (double limit : new double[] {interval.lower(), interval.upper()}) {
            double score = (interval.value() - limit) / Math.sqrt(limit * (1 - limit) / trials);
            assertThat(Math.abs(score)).isCloseTo(z, within(1e-7));
        }
    }

    @Test
    void mirrorsWhenFailuresAreCounted() {
        assertThat(interval(3, 17, 0.9).lower())
                .isCloseTo(1 - interval(14, 17, 0.9).upper(), within(1e-15));
    }

    @Test
    void hasWidthButNoStandardErrorAtTheBoundary() {
        Estimate none = interval(0, 1_000_000, 0.95);

        assertThat(none.lower()).isZero();
        assertThat(none.upper()).isBetween(3e-6, 4e-6);
        assertThat(none.standardError()).isEmpty();
        assertThat(none.warnings()).containsExactly(Caution.of(Reason.AT_BOUNDARY));
        assertThat(interval(5, 5, 0.95).upper()).isEqualTo(1);
    }

    @Test
    void saysThatNothingWasTried() {
        assertThat(WilsonInterval.of(0, 0, 0.95)).isEqualTo(Answer.notEstimable(Reason.NO_TRIALS));
    }

    @ParameterizedTest
    @CsvSource({"-1, 5, 0.95", "6, 5, 0.95", "1, 5, 0", "1, 5, 1", "0, -1, 0.95"})
    void refusesWhatCannotBe(long successes, long trials, double level) {
        assertThatThrownBy(() -> WilsonInterval.of(successes, trials, level))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Nominal on average: over uniform proportions its mean coverage is close to the level, within four standard errors and 1 %. */
    @Test
    @Tag("slow")
    void coversAtItsLevelOnAverage() {
        Random random = new Random(1927);
        int rounds = 20_000;
        int covered = 0;
        for (int round = 0; round < rounds; round++) {
            double truth = random.nextDouble();
            int successes = 0;
            for (int trial = 0; trial < 25; trial++) {
                successes += random.nextDouble() < truth ? 1 : 0;
            }
            Estimate interval = interval(successes, 25, 0.95);
            covered += interval.lower() <= truth && truth <= interval.upper() ? 1 : 0;
        }
        double standardError = Math.sqrt(0.95 * 0.05 / rounds);

        assertThat((double) covered / rounds).isCloseTo(0.95, within(0.01 + 4 * standardError));
    }
}

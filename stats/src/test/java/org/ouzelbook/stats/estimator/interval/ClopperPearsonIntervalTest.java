package org.ouzelbook.stats.estimator.interval;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;

class ClopperPearsonIntervalTest {
    private static Estimate interval(long successes, long trials, double level) {
        return ClopperPearsonInterval.of(successes, trials, level).found().orElseThrow();
    }

    /**
     * R. G. Newcombe (1998), Stat. Med. 17:857–872, Table I, method 5, which prints 0.2527–0.3676 and 0.0578–0.1617 (cited from
     * memory); further digits from R 4.2.2, {@code binom.test}.
     */
    @ParameterizedTest(name = "{0} of {1}")
    @CsvSource({"81, 263, 0.252736745585271, 0.367621922601351", "15, 148, 0.0578440100834486, 0.161650490349479"})
    void reproducesNewcombesTable(int successes, int trials, double lower, double upper) {
        Estimate interval = interval(successes, trials, 0.95);

        assertThat(interval.lower()).isCloseTo(lower, within(1e-11));
        assertThat(interval.upper()).isCloseTo(upper, within(1e-11));
    }

    /** With no success in n the upper limit is 1 − (α/2)^(1/n). */
    @ParameterizedTest
    @CsvSource({"1, 0.95", "20, 0.9", "1000000, 0.99"})
    void hasAClosedFormWithoutSuccess(long trials, double level) {
        double upper = -Math.expm1(Math.log((1 - level) / 2) / trials);

        assertThat(interval(0, trials, level).lower()).isZero();
        assertThat(interval(0, trials, level).upper()).isCloseTo(upper, within(1e-9 * upper));
        assertThat(interval(trials, trials, level).lower()).isCloseTo(1 - upper, within(1e-12));
    }

    @Test
    void leavesHalfTheRestOnEitherSide() {
        Estimate interval = interval(700_000, 1_000_000, 0.95);

        assertThat(new BinomialDistribution(null, 1_000_000, interval.upper()).cumulativeProbability(700_000))
                .isCloseTo(0.025, within(1e-8));
        assertThat(new BinomialDistribution(null, 1_000_000, interval.lower()).cumulativeProbability(699_999))
                .isCloseTo(0.975, within(1e-8));
    }

    @Test
    void saysThatNothingWasTried() {
        assertThat(ClopperPearsonInterval.of(0, 0, 0.95)).isEqualTo(Answer.notEstimable(Reason.NO_TRIALS));
    }

    @ParameterizedTest
    @CsvSource({"-1, 5, 0.95", "6, 5, 0.95", "1, 5, 0", "1, 5, 1"})
    void refusesWhatCannotBe(long successes, long trials, double level) {
        assertThatThrownBy(() -> ClopperPearsonInterval.of(successes, trials, level))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    @Tag("slow")
    void coversAtLeastAtItsLevel() {
        Random random = new Random(1934);
        int rounds = 10_000;
        int covered = 0;
        for (int round = 0; round < rounds; round++) {
            int successes = 0;
            for (int trial = 0; trial < 15; trial++) {
                successes += random.nextDouble() < 0.3 ? 1 : 0;
            }
            Estimate interval = interval(successes, 15, 0.9);
            covered += interval.lower() <= 0.3 && 0.3 <= interval.upper() ? 1 : 0;
        }
        double standardError = Math.sqrt(0.9 * 0.1 / rounds);

        assertThat((double) covered / rounds).isGreaterThan(0.9 - 4 * standardError);
    }
}

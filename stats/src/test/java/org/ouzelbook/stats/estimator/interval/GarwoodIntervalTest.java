package org.ouzelbook.stats.estimator.interval;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.PoissonDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;

class GarwoodIntervalTest {
    /** F. Garwood (1936), Biometrika 28:437–442; the file says how its digits were computed. */
    @ParameterizedTest(name = "{0}")
    @CsvFileSource(resources = "garwood95.csv", numLinesToSkip = 1)
    void reproducesGarwoodsTable(long count, double lower, double upper) {
        Estimate interval = GarwoodInterval.of(count, 0.95);

        assertThat(interval.lower()).isCloseTo(lower, within(1e-9));
        assertThat(interval.upper()).isCloseTo(upper, within(1e-9));
    }

    /** 15 events over 400: the expected figures of the test suite of statsmodels, which quotes two other packages. */
    @Test
    void dividesByTheExposure() {
        Estimate rate = GarwoodInterval.of(15, 400, 0.95).found().orElseThrow();

        assertThat(rate.value()).isEqualTo(15.0 / 400);
        assertThat(rate.standardError()).hasValue(Math.sqrt(15) / 400);
        assertThat(rate.lower()).isCloseTo(0.0209884653319583, within(1e-12));
        assertThat(rate.upper()).isCloseTo(0.0618505471787146, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"0.5", "0.9", "0.999"})
    void hasAClosedFormForNone(double level) {
        Estimate none = GarwoodInterval.of(0, level);

        assertThat(none.lower()).isZero();
        assertThat(none.upper()).isCloseTo(-Math.log((1 - level) / 2), within(1e-12));
        assertThat(none.standardError()).isEmpty();
        assertThat(none.warnings()).containsExactly(Caution.of(Reason.AT_BOUNDARY));
    }

    /** For a million the law is nearly normal: limits lie at n ± 1.96 √n, give or take z²/2 + 1. */
    @Test
    void approachesTheNormalLaw() {
        Estimate many = GarwoodInterval.of(1_000_000, 0.95);

        assertThat(many.lower()).isCloseTo(1_000_000 - 1959.964, within(3.0));
        assertThat(many.upper()).isCloseTo(1_000_000 + 1959.964, within(3.0));
    }

    @Test
    void saysThatNothingWasCovered() {
        assertThat(GarwoodInterval.of(3, 0, 0.95)).isEqualTo(Answer.notEstimable(Reason.NO_EXPOSURE));
    }

    @ParameterizedTest
    @CsvSource({"-1, 1, 0.95", "1, -1, 0.95", "1, NaN, 0.95", "1, Infinity, 0.95", "1, 1, 1"})
    void refusesWhatCannotBe(long count, double exposure, double level) {
        assertThatThrownBy(() -> GarwoodInterval.of(count, exposure, level))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    @Tag("slow")
    void coversAtLeastAtItsLevel() {
        PoissonDistribution truth = new PoissonDistribution(4.5);
        truth.reseedRandomGenerator(1936);
        int rounds = 10_000;
        int covered = 0;
        for (int round = 0; round < rounds; round++) {
            Estimate interval = GarwoodInterval.of(truth.sample(), 0.9);
            covered += interval.lower() <= 4.5 && 4.5 <= interval.upper() ? 1 : 0;
        }
        double standardError = Math.sqrt(0.9 * 0.1 / rounds);

        assertThat((double) covered / rounds).isGreaterThan(0.9 - 4 * standardError);
    }
}

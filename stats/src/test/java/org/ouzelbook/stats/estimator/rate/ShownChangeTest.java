package org.ouzelbook.stats.estimator.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;

/** {@link ShownChange} and {@link RateDifference}: what two counts can show, and how far they are apart. */
class ShownChangeTest {
    /**
     * The double sum over both Poisson laws of the outcomes whose one-sided tail, by R 4.2.2 {@code pbinom(y, x + y, k/(1 + k))}, is below
     * 0.025: another way to the same number.
     */
    @ParameterizedTest(name = "from {0}, exposures 1 to {1}, ratio {2}")
    @CsvSource({
        "16, 1, 0.5, 0.295330465569",
        "16, 1, 0.21, 0.801695730117",
        "16, 1, 2.31, 0.800502780240",
        "40, 0.7, 0.5, 0.604950632937",
        "40, 0.7, 1.8, 0.763446062511"
    })
    void agreesWithTheDoubleSum(double expected, double exposures, double ratio, double power) {
        assertThat(new ShownChange(0.95, expected, exposures).power(ratio)).isCloseTo(power, within(1e-11));
    }

    /** R 4.2.2 {@code uniroot} on the same double sum. */
    @Test
    void findsTheSmallestChangesThatWouldShow() {
        ShownChange shown = new ShownChange(0.95, 16, 1);

        assertThat(shown.fall(0.8).orElseThrow()).isCloseTo(0.2110109396, within(1e-8));
        assertThat(shown.rise(0.8).orElseThrow()).isCloseTo(2.309044428, within(1e-8));
    }

    /** Five of nothing has p = 2 (1/2)⁵ = 0.0625: no fall from five can be shown surely. */
    @Test
    void saysThatNoFallFromAHandfulWouldShow() {
        assertThat(new ShownChange(0.95, 5, 1).fall(0.8)).isEmpty();
        assertThat(new ShownChange(0.95, 12, 1).fall(0.8)).isPresent();
    }

    @ParameterizedTest
    @CsvSource({"0.95, 0, 1", "0.95, 5, 0", "1, 5, 1", "0.95, NaN, 1", "0.95, 1e9, 1"})
    void refusesWhatCannotBe(double level, double expected, double exposures) {
        assertThatThrownBy(() -> new ShownChange(level, expected, exposures))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Zou and Donner’s formula on R 4.2.2 {@code qchisq} limits. */
    @ParameterizedTest(name = "{0}/{1} − {2}/{3}")
    @CsvSource({
        "8, 24.6, 16, 24.6, -0.3252032520325, -0.7711140926808, 0.0957844329024",
        "0, 5, 3, 7, -0.428571428571, -1.252467581392, 0.383858442150"
    })
    void recoversTheLimitsOfADifference(
            long first, double firstKm, long second, double secondKm, double value, double lower, double upper) {
        Estimate difference = RateDifference.of(first, firstKm, second, secondKm, 0.95)
                .found()
                .orElseThrow();

        assertThat(difference.value()).isCloseTo(value, within(1e-11));
        assertThat(difference.lower()).isCloseTo(lower, within(1e-11));
        assertThat(difference.upper()).isCloseTo(upper, within(1e-11));
    }

    @Test
    void aDifferenceNeedsBothExposures() {
        assertThat(RateDifference.of(1, 2, 1, 0, 0.95)).isEqualTo(Answer.notEstimable(Reason.NO_EXPOSURE));
        assertThat(RateDifference.of(1, 0, 1, 2, 0.95)).isEqualTo(Answer.notEstimable(Reason.NO_EXPOSURE));
    }

    /** Limits of a difference hold the truth in at least about 95 of 100 surveys of 12 and 8 territories. */
    @Test
    @Tag("slow")
    void limitsOfADifferenceHoldTheTruth() {
        Random seeds = new Random(2008);
        PoissonDistribution first = poisson(12, seeds.nextInt());
        PoissonDistribution second = poisson(8, seeds.nextInt());
        int rounds = 4000;
        int covered = 0;
        for (int round = 0; round < rounds; round++) {
            Estimate difference = RateDifference.of(first.sample(), 3, second.sample(), 4, 0.95)
                    .found()
                    .orElseThrow();
            covered += difference.lower() <= 2 && 2 <= difference.upper() ? 1 : 0;
        }

        assertThat(covered / (double) rounds).isGreaterThan(0.95 - 4 * Math.sqrt(0.95 * 0.05 / rounds));
    }

    private static PoissonDistribution poisson(double mean, int seed) {
        return new PoissonDistribution(
                new Well19937c(seed),
                mean,
                PoissonDistribution.DEFAULT_EPSILON,
                PoissonDistribution.DEFAULT_MAX_ITERATIONS);
    }
}

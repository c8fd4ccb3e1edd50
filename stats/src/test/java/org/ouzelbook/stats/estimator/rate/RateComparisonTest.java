package org.ouzelbook.stats.estimator.rate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.PoissonDistribution;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;

class RateComparisonTest {
    private static RateComparison comparison(long first, double firstKm, long second, double secondKm) {
        return RateComparison.of(first, firstKm, second, secondKm, 0.95).found().orElseThrow();
    }

    private static Estimate ratio(RateComparison comparison) {
        return comparison.ratio().found().orElseThrow();
    }

    /**
     * K. Gu, H. K. T. Ng, M. L. Tang and W. R. Schucany (2008), Biom. J. 50:283–298, one-sided p 0.000428; limits as the test
     * suite of statsmodels quotes them from another package. Two-sided p: twice 0.000428052694, by R 4.2.2.
     */
    @Test
    void reproducesThePublishedComparison() {
        RateComparison comparison = comparison(60, 51477.5, 30, 54308.7);

        assertThat(ratio(comparison).value()).isCloseTo(2.1099975718, within(1e-9));
        assertThat(ratio(comparison).lower()).isCloseTo(1.339735721772650, within(1e-10));
        assertThat(ratio(comparison).upper()).isCloseTo(3.388365573616252, within(1e-10));
        assertThat(comparison.p()).isCloseTo(0.000856105388, within(1e-12));
    }

    /** For equal exposures p is that of fair coins: 2 P(X ≥ 15 of 27) and so on, computed with R 4.2.2 {@code pbinom}. */
    @ParameterizedTest(name = "{0} against {1}")
    @CsvSource({"15, 12, 0.70", "15, 8, 0.21", "30, 18, 0.11"})
    void isNoEvidenceForASmallDifference(long first, long second, double p) {
        assertThat(comparison(first, 9.4, second, 9.4).p()).isCloseTo(p, within(0.005));
    }

    @Test
    void turnsOverWithTheOrder() {
        RateComparison there = comparison(7, 3, 19, 5);
        RateComparison back = comparison(19, 5, 7, 3);

        assertThat(there.p()).isCloseTo(back.p(), within(1e-14));
        assertThat(ratio(there).lower()).isCloseTo(1 / ratio(back).upper(), within(1e-12));
        assertThat(ratio(there).upper()).isCloseTo(1 / ratio(back).lower(), within(1e-12));
    }

    @Test
    void isWithoutDoubtAboutEqualRates() {
        RateComparison comparison = comparison(8, 4, 8, 4);

        assertThat(comparison.p()).isEqualTo(1);
        assertThat(ratio(comparison).lower() * ratio(comparison).upper()).isCloseTo(1, within(1e-12));
    }

    /** With the first zero, the upper limit solves (1/(1 + ρ))ⁿ = α/2 for equal exposures. */
    @Test
    void hasOnlyAnUpperLimitIfTheFirstIsZero() {
        Estimate ratio = ratio(comparison(0, 2, 6, 2));

        assertThat(ratio.value()).isZero();
        assertThat(ratio.lower()).isZero();
        assertThat(ratio.upper()).isCloseTo(Math.pow(0.025, -1.0 / 6) - 1, within(1e-12));
        assertThat(ratio.warnings()).containsExactly(Caution.of(Reason.FIRST_COUNT_ZERO));
    }

    @Test
    void hasOnlyALowerLimitIfTheSecondIsZero() {
        Estimate ratio = ratio(comparison(6, 2, 0, 2));

        assertThat(ratio.lower()).isCloseTo(1 / (Math.pow(0.025, -1.0 / 6) - 1), within(1e-12));
        assertThat(ratio.upper()).isInfinite();
        assertThat(ratio.warnings()).containsExactly(Caution.of(Reason.SECOND_COUNT_ZERO));
    }

    @Test
    void hasNoRatioIfBothAreZero() {
        RateComparison comparison = comparison(0, 2, 0, 3);

        assertThat(comparison.ratio()).isEqualTo(Answer.notEstimable(Reason.BOTH_COUNTS_ZERO));
        assertThat(comparison.p()).isEqualTo(1);
    }

    @Test
    void needsExposure() {
        assertThat(RateComparison.of(1, 0, 1, 5, 0.95)).isEqualTo(Answer.notEstimable(Reason.NO_EXPOSURE));
    }

    @ParameterizedTest
    @CsvSource({"-1, 1, 1, 1, 0.95", "1, -1, 1, 1, 0.95", "1, 1, 1, NaN, 0.95", "1, 1, 1, 1, 1"})
    void refusesWhatCannotBe(long first, double firstKm, long second, double secondKm, double level) {
        assertThatThrownBy(() -> RateComparison.of(first, firstKm, second, secondKm, level))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** The interval covers the true ratio at least at its level. */
    @Test
    @Tag("slow")
    void recoversTheTrueRatio() {
        PoissonDistribution first = new PoissonDistribution(12);
        PoissonDistribution second = new PoissonDistribution(8);
        first.reseedRandomGenerator(1940);
        second.reseedRandomGenerator(1941);
        int rounds = 2_000;
        int covered = 0;
        for (int round = 0; round < rounds; round++) {
            Estimate ratio = ratio(comparison(first.sample(), 3, second.sample(), 4));
            covered += ratio.lower() <= 2 && 2 <= ratio.upper() ? 1 : 0;
        }
        double standardError = Math.sqrt(0.95 * 0.05 / rounds);

        assertThat((double) covered / rounds).isGreaterThan(0.95 - 4 * standardError);
    }
}

package org.ouzelbook.stats.simulate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class DrawsTest {
    private static final int MANY = 40_000;

    @Test
    void theSameSeedDrawsTheSame() {
        assertThat(Draws.of(7).key())
                .isEqualTo(Draws.of(7).key())
                .isNotEqualTo(Draws.of(8).key());
    }

    @Test
    void aBranchDoesNotMoveWhenAnotherDrawsMore() {
        Draws draws = Draws.of(7);
        draws.branch("weather", 2020).normal(0, 1);

        assertThat(draws.branch("nests", 2020).uniform())
                .isEqualTo(Draws.of(7).branch("nests", 2020).uniform())
                .isNotEqualTo(draws.branch("nests", 2021).uniform());
    }

    /** Tolerances are four standard errors of the mean of 40,000 draws. */
    @Test
    void theLawsHaveTheirMoments() {
        Draws draws = Draws.of(20);

        assertThat(mean(DoubleStream.generate(() -> draws.normal(3, 2)))).isCloseTo(3, within(4 * 2 / 200.0));
        assertThat(mean(DoubleStream.generate(() -> Math.pow(draws.normal(0, 2), 2))))
                .isCloseTo(4, within(4 * Math.sqrt(2) * 4 / 200.0));
        assertThat(mean(DoubleStream.generate(() -> draws.exponential(5)))).isCloseTo(5, within(4 * 5 / 200.0));
        assertThat(mean(DoubleStream.generate(() -> draws.poisson(2.5))))
                .isCloseTo(2.5, within(4 * Math.sqrt(2.5) / 200.0));
        assertThat(mean(DoubleStream.generate(() -> Math.log(draws.logNormal(1000, 0.3)))))
                .isCloseTo(Math.log(1000), within(4 * 0.3 / 200.0));
    }

    /** Mean and variance of a gamma law are its shape; a beta law has variance m(1 − m)/(c + 1). */
    @Test
    void gammaAndBetaHaveTheirMoments() {
        Draws draws = Draws.of(21);

        assertThat(mean(DoubleStream.generate(() -> draws.gamma(7)))).isCloseTo(7, within(4 * Math.sqrt(7) / 200.0));
        assertThat(mean(DoubleStream.generate(() -> draws.gamma(0.4))))
                .isCloseTo(0.4, within(4 * Math.sqrt(0.4) / 200.0));
        assertThat(mean(DoubleStream.generate(() -> draws.beta(0.7, 9))))
                .isCloseTo(0.7, within(4 * Math.sqrt(0.021) / 200.0));
        assertThat(mean(DoubleStream.generate(() -> Math.pow(draws.beta(0.7, 9) - 0.7, 2))))
                .isCloseTo(0.021, within(0.001));
    }

    @Test
    void aPoissonOfMeanZeroIsZero() {
        Draws draws = Draws.of(1);

        assertThat(IntStream.range(0, 100).map(i -> draws.poisson(0))).containsOnly(0);
    }

    @Test
    void logOddsAndProbabilityUndoEachOther() {
        assertThat(Draws.probability(Draws.logOdds(0.63))).isCloseTo(0.63, within(1e-12));
    }

    private static double mean(DoubleStream draws) {
        return draws.limit(MANY).average().orElseThrow();
    }
}

package org.ouzelbook.stats.estimator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.PoissonDistribution;
import org.junit.jupiter.api.Test;

class FreeFitTest {
    @Test
    void isTheHighestPoissonLikelihood() {
        FreeFit fit = FreeFit.ofCounts(15, 0);

        assertThat(fit.parameters()).isEqualTo(2);
        assertThat(fit.logLikelihood()).isCloseTo(new PoissonDistribution(15).logProbability(15), within(1e-10));
    }

    @Test
    void isTheHighestLikelihoodOfTrials() {
        assertThat(FreeFit.ofTrials(1, 4).logLikelihood())
                .isCloseTo(Math.log(0.25) + 3 * Math.log(0.75), within(1e-12));
        assertThat(FreeFit.ofTrials(4, 4).logLikelihood()).isZero();
    }

    @Test
    void addsUpOverIndependentParts() {
        FreeFit both = FreeFit.ofTrials(1, 4).and(FreeFit.ofTrials(2, 4));

        assertThat(both.aic())
                .isCloseTo(FreeFit.ofTrials(1, 4).aic() + FreeFit.ofTrials(2, 4).aic(), within(1e-12));
    }
}

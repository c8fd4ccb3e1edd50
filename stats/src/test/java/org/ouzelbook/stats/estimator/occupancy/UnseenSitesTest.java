package org.ouzelbook.stats.estimator.occupancy;

import static org.assertj.core.api.Assertions.assertThat;

import org.apache.commons.math3.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Quantiles of how many of the sites without a find were occupied. */
class UnseenSitesTest {
    /** Against the binomial law of Apache Commons Math. */
    @ParameterizedTest
    @CsvSource({"20, 0.3", "200, 0.02", "7, 0.95"})
    void isBinomialWhereOnlyChanceIsOpen(int sites, double share) {
        UnseenSites unseen = new UnseenSites(sites, sites * share, sites * share * (1 - share));
        BinomialDistribution binomial = new BinomialDistribution(sites, share);
        for (double probability : new double[] {0.025, 0.1, 0.5, 0.9, 0.975}) {
            assertThat(unseen.quantile(probability)).isEqualTo(binomial.inverseCumulativeProbability(probability));
        }
    }

    /** With weights of one each, a beta-binomial number is as likely to be any from 0 to n: of 9 sites, mean 4.5 and variance 99 / 12. */
    @Test
    void isEvenWhereTheShareIsQuiteUnknown() {
        UnseenSites unseen = new UnseenSites(9, 4.5, 99 / 12.0);
        for (int tenth = 1; tenth <= 10; tenth++) {
            assertThat(unseen.quantile(tenth / 10.0 - 0.05)).isEqualTo(tenth - 1);
        }
    }

    @Test
    void leavesNothingOpenWhereNothingIs() {
        assertThat(new UnseenSites(0, 0, 0).quantile(0.975)).isZero();
        assertThat(new UnseenSites(12, 0, 0).quantile(0.975)).isZero();
        assertThat(new UnseenSites(12, 12, 0).quantile(0.025)).isEqualTo(12);
    }
}

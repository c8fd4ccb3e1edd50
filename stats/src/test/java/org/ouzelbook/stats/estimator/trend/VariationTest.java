package org.ouzelbook.stats.estimator.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.GammaDistribution;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.trend.BentTrend.Change;
import org.ouzelbook.stats.estimator.trend.TrendSettings.Spread;

/** Lines and season effects where counts vary otherwise than Poisson, and lines that bend. */
class VariationTest {
    private static final TrendSettings NEGATIVE_BINOMIAL = new TrendSettings(0.95, Spread.NEGATIVE_BINOMIAL);
    private static final TrendSettings SERIAL = new TrendSettings(0.95, Spread.AT_LEAST_POISSON, true, false);

    private static LineTrend line(List<SeasonCount> counts, TrendSettings settings) {
        return LineTrend.of(counts, settings).found().orElseThrow();
    }

    /** R 4.2.2 with MASS 7.3, {@code glm.nb(count ~ site + year)} without the empty sites. */
    @Test
    void agreesWithANegativeBinomialModelOfThirtySites() {
        LineTrend line = line(ThirtySites.counts(), NEGATIVE_BINOMIAL);

        assertThat(line.slope().value()).isCloseTo(-0.053585310123, within(1e-8));
        assertThat(line.slope().standardError().orElseThrow()
                        / Math.sqrt(line.fit().scale()))
                .isCloseTo(0.011304002767, within(1e-8));
        assertThat(1 / line.fit().negativeBinomial().orElseThrow()).isCloseTo(3.7965392788, within(1e-5));
        assertThat(line.fit().logLikelihood()).isCloseTo(-611.94698491, within(1e-6));
        assertThat(line.fit().pearson()).isCloseTo(323.18839803, within(1e-4));
        assertThat(line.fit().degreesOfFreedom()).isEqualTo(293);
        SeasonEffects effects = SeasonEffects.of(ThirtySites.counts(), NEGATIVE_BINOMIAL)
                .found()
                .orElseThrow();
        assertThat(effects.logRatio(2005, 2019).found().orElseThrow().value()).isCloseTo(-0.76107568956, within(1e-7));
    }

    /** R 4.2.2, {@code glm(count ~ site + year + pmax(0, year - 2010), quasipoisson)} without the empty sites. */
    @Test
    void agreesWithABentLineOfThirtySites() {
        BentTrend bent = BentTrend.of(ThirtySites.counts(), List.of(2010), TrendSettings.usual())
                .found()
                .orElseThrow();

        Estimate before = bent.pieces().get(0).slope();
        assertThat(before.value()).isCloseTo(-0.086073858862, within(1e-9));
        assertThat(before.standardError().orElseThrow()).isCloseTo(0.031319328863, within(1e-8));
        Estimate after = bent.pieces().get(1).slope();
        assertThat(after.value()).isCloseTo(-0.034932111975, within(1e-9));
        assertThat(after.standardError().orElseThrow()).isCloseTo(0.019507475083, within(1e-8));
        Change change = bent.changes().get(0);
        assertThat(change.difference().value()).isCloseTo(0.051141746887, within(1e-9));
        assertThat(change.p()).isCloseTo(0.26028267859, within(1e-7));
        assertThat(bent.fit().degreesOfFreedom()).isEqualTo(292);
    }

    @Test
    void bendsOnlyBetweenSeasonsWithCounts() {
        List<SeasonCount> counts =
                List.of(SeasonCount.of("A", 2020, 5), SeasonCount.of("A", 2021, 4), SeasonCount.of("A", 2024, 3));

        assertThat(BentTrend.of(counts, List.of(2024, 2019), TrendSettings.usual()))
                .isEqualTo(Answer.notEstimable(Reason.CHANGE_NOT_BETWEEN_SEASONS, List.of(2019, 2024)));
        assertThat(BentTrend.of(counts, List.of(2022, 2023), TrendSettings.usual()))
                .isEqualTo(Answer.notEstimable(Reason.CHANGE_NOT_BETWEEN_SEASONS, List.of(2023)));
        assertThatThrownBy(() -> BentTrend.of(counts, List.of(), TrendSettings.usual()))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Counts that vary no more than Poisson counts leave the negative binomial law nothing, and it says so. */
    @Test
    void isPoissonWithoutSpread() {
        List<SeasonCount> counts = new ArrayList<>();
        for (int season = 0; season < 8; season++) {
            counts.add(SeasonCount.of("A", 2010 + season, 20 - season));
        }
        LineTrend line = line(counts, NEGATIVE_BINOMIAL);

        assertThat(line.slope().value())
                .isEqualTo(line(counts, TrendSettings.usual()).slope().value());
        assertThat(line.slope().warnings()).contains(Caution.of(Reason.NO_NEGATIVE_BINOMIAL_SPREAD));
    }

    /** Without correlation the estimating equations are those of the likelihood. */
    @Test
    void isTheUsualLineWithoutCorrelation() {
        CountGrid grid = CountGrid.of(ThirtySites.counts());
        double[][] years = new double[grid.size()][1];
        for (int season = 0; season < grid.size(); season++) {
            years[season][0] = season;
        }
        SiteEffectsFit poisson = SiteEffectsFit.of(grid, years).orElseThrow();
        SiteEffectsFit none = poisson.with(new Variation.Serial(0, grid)).orElseThrow();

        assertThat(none.coefficients().getEntry(0))
                .isCloseTo(poisson.coefficients().getEntry(0), within(1e-12));
        assertThat(none.covariance().getEntry(0, 0))
                .isCloseTo(poisson.covariance().getEntry(0, 0), within(1e-12));
        assertThat(SerialMoments.of(none).dispersion()).isCloseTo(1.895729513, within(1e-8));
    }

    @Test
    void countsEmptySitesWhereAskedTo() {
        TrendSettings all = new TrendSettings(0.95, Spread.AT_LEAST_POISSON, false, true);
        SeasonEffects effects =
                SeasonEffects.of(ThirtySites.counts(), all).found().orElseThrow();

        assertThat(effects.fit().degreesOfFreedom()).isEqualTo(316);
        assertThat(effects.fit().scale()).isCloseTo(1.624924648, within(1e-8));
    }

    /**
     * 12 sites in 12 seasons, twice as variable as Poisson, successive deviations correlated by about 0.3: limits that allow for
     * it hold the slope in 95 % of cases, and those that do not hold it in fewer.
     */
    @Test
    @Tag("slow")
    void allowsForSuccessiveSeasonsThatAreAlike() {
        RandomGenerator random = new Well19937c(1986);
        int rounds = 500;
        int covered = 0;
        int coveredWithout = 0;
        double correlation = 0;
        for (int round = 0; round < rounds; round++) {
            List<SeasonCount> counts = new ArrayList<>();
            for (int site = 0; site < 12; site++) {
                addSeries(counts, "site " + site, random);
            }
            LineTrend serial = line(counts, SERIAL);
            correlation += serial.fit().serialCorrelation().orElseThrow();
            covered += holds(serial.slope()) ? 1 : 0;
            coveredWithout += holds(line(counts, TrendSettings.usual()).slope()) ? 1 : 0;
        }

        assertThat(correlation / rounds).isBetween(0.2, 0.4);
        assertThat((double) covered / rounds).isCloseTo(0.95, within(4 * Math.sqrt(0.95 * 0.05 / rounds)));
        assertThat(coveredWithout).isLessThan(covered);
    }

    private static boolean holds(Estimate slope) {
        return slope.lower() <= -0.03 && -0.03 <= slope.upper();
    }

    /** Gamma rates of which half is carried from season to season. */
    private static void addSeries(List<SeasonCount> counts, String site, RandomGenerator random) {
        double state = random.nextGaussian();
        for (int season = 0; season < 12; season++) {
            state = 0.6 * state + 0.8 * random.nextGaussian();
            double mean = 10 * Math.exp(-0.03 * season + 0.33 * state);
            counts.add(
                    SeasonCount.of(site, 2010 + season, new PoissonDistribution(random, mean, 1e-12, 1000).sample()));
        }
    }

    /** Negative binomial counts, 15 sites in 10 seasons: limits hold the slope as often as they say. */
    @Test
    @Tag("slow")
    void coversTheSlopeOfNegativeBinomialCounts() {
        RandomGenerator random = new Well19937c(1987);
        int rounds = 500;
        int covered = 0;
        for (int round = 0; round < rounds; round++) {
            List<SeasonCount> counts = new ArrayList<>();
            for (int site = 0; site < 15; site++) {
                for (int season = 0; season < 10; season++) {
                    double rate =
                            new GammaDistribution(random, 3, (2 + 2 * site) * Math.exp(-0.03 * season) / 3).sample();
                    counts.add(SeasonCount.of(
                            "site " + site,
                            2010 + season,
                            new PoissonDistribution(random, Math.max(rate, 1e-9), 1e-12, 1000).sample()));
                }
            }
            covered += holds(line(counts, NEGATIVE_BINOMIAL).slope()) ? 1 : 0;
        }

        assertThat((double) covered / rounds).isCloseTo(0.95, within(4 * Math.sqrt(0.95 * 0.05 / rounds)));
    }
}

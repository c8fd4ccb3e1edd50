package org.ouzelbook.stats.estimator.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.trend.CurveTrend.Point;
import org.ouzelbook.stats.estimator.trend.TrendSettings.Spread;

class CurveTrendTest {
    private static final TrendSettings POISSON = new TrendSettings(0.95, Spread.POISSON);

    private static CurveTrend curve(List<SeasonCount> counts, TrendSettings settings) {
        return CurveTrend.of(counts, settings).found().orElseThrow();
    }

    /**
     * Base R 4.2.2: a column for each site, cubic B-splines on 7 stretches, second differences; penalised weighted least
     * squares, λ by {@code optimize} over the Laplace-approximate restricted likelihood, covariance by {@code solve}.
     */
    @Test
    void agreesWithTheFullModelOfThirtySites() {
        CurveTrend curve = curve(ThirtySites.counts(), POISSON);

        assertThat(Math.log(curve.smoothing())).isCloseTo(8.1028592863, within(1e-4));
        assertThat(curve.effectiveCoefficients()).isCloseTo(28.202649839 - 27, within(1e-5));
        assertThat(curve.fit().logLikelihood()).isCloseTo(-644.00943849, within(1e-5));
        Point middle = curve.seasons().get(7);
        assertThat(middle.season()).isEqualTo(2012);
        assertThat(middle.logRatio().value()).isCloseTo(-0.38656141292, within(1e-6));
        assertThat(middle.logRatio().standardError().orElseThrow()).isCloseTo(0.068691639038, within(1e-6));
        Point last = curve.seasons().get(14);
        assertThat(last.logRatio().value()).isCloseTo(-0.74220792823, within(1e-6));
        assertThat(last.logRatio().standardError().orElseThrow()).isCloseTo(0.11713604121, within(1e-6));
    }

    /** Widened for their spread, these counts ask for no bend: the curve is the line, and the band no wider than its limits. */
    @Test
    void isTheLineWhereNothingBends() {
        CurveTrend curve = curve(ThirtySites.counts(), TrendSettings.usual());
        LineTrend line = LineTrend.of(ThirtySites.counts(), TrendSettings.usual())
                .found()
                .orElseThrow();

        assertThat(curve.effectiveCoefficients()).isCloseTo(1, within(1e-4));
        assertThat(curve.seasons().get(14).logRatio().value())
                .isCloseTo(14 * line.slope().value(), within(1e-5));
        assertThat(curve.bandHalfWidth()).isCloseTo(line.law().halfWidth(0.95), within(1e-2));
        assertThat(curve.fit().scale()).isCloseTo(line.fit().scale(), within(1e-4));
    }

    @Test
    void followsAFallAndARecovery() {
        List<SeasonCount> counts = new ArrayList<>();
        for (int season = 0; season < 20; season++) {
            for (int site = 0; site < 10; site++) {
                counts.add(SeasonCount.of("site " + site, 2000 + season, Math.round(40 * Math.exp(truth(season)))));
            }
        }
        CurveTrend curve = curve(counts, TrendSettings.usual());

        assertThat(curve.seasons()).allSatisfy(point -> {
            double truth = truth(point.season() - 2000) - truth(0);
            assertThat(point.logRatio().value()).isCloseTo(truth, within(0.05));
            assertThat(point.bandLower()).isLessThanOrEqualTo(truth);
            assertThat(point.bandUpper()).isGreaterThanOrEqualTo(truth);
        });
        assertThat(curve.effectiveCoefficients()).isGreaterThan(3);
        assertThat(curve.bandHalfWidth()).isBetween(2.2, 3.5);
    }

    private static double truth(int season) {
        return 0.6 * Math.cos(2 * Math.PI * season / 19.0);
    }

    @Test
    void saysWhyThereIsNoCurve() {
        assertThat(CurveTrend.of(List.of(), TrendSettings.usual()))
                .isEqualTo(Answer.notEstimable(Reason.NOTHING_COUNTED));
        assertThat(CurveTrend.of(List.of(SeasonCount.of("A", 2021, 3)), TrendSettings.usual()))
                .isEqualTo(Answer.notEstimable(Reason.ONE_SEASON, 2021));
        assertThatThrownBy(() -> CurveTrend.of(
                        ThirtySites.counts(), new TrendSettings(0.95, Spread.AT_LEAST_POISSON, true, false)))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Two seasons carry a line, and the curve is that. */
    @Test
    void isTheLineOfTwoSeasons() {
        CurveTrend curve = curve(List.of(SeasonCount.of("A", 2020, 12), SeasonCount.of("A", 2024, 6)), POISSON);

        assertThat(curve.seasons().get(1).logRatio().value()).isCloseTo(Math.log(0.5), within(1e-4));
    }

    /** Poisson counts about a wave, 12 sites in 16 seasons: the 95 % band holds all of it in 95 % of cases, or a little more. */
    @Test
    @Tag("slow")
    void holdsTheWholeCurveInItsBand() {
        RandomGenerator random = new Well19937c(1994);
        int rounds = 200;
        int held = 0;
        for (int round = 0; round < rounds; round++) {
            List<SeasonCount> counts = new ArrayList<>();
            for (int site = 0; site < 12; site++) {
                for (int season = 0; season < 16; season++) {
                    double mean = 8 * Math.exp(0.4 * Math.cos(2 * Math.PI * season / 15.0));
                    counts.add(SeasonCount.of(
                            "site " + site,
                            2005 + season,
                            new PoissonDistribution(random, mean, 1e-12, 1000).sample()));
                }
            }
            held += curve(counts, POISSON).seasons().stream().allMatch(CurveTrendTest::holdsTheWave) ? 1 : 0;
        }
        double share = (double) held / rounds;

        assertThat(share).isGreaterThan(0.95 - 4 * Math.sqrt(0.95 * 0.05 / rounds));
    }

    private static boolean holdsTheWave(Point point) {
        double truth = 0.4 * Math.cos(2 * Math.PI * (point.season() - 2005) / 15.0) - 0.4;
        return point.bandLower() <= truth + 1e-12 && truth - 1e-12 <= point.bandUpper();
    }

    /** Two birds in twelve counts hold no curve: its limits would be hundreds of times away. */
    @Test
    void refusesACurveThatNothingHolds() {
        List<SeasonCount> counts = new ArrayList<>();
        for (int year = 2001; year <= 2006; year++) {
            counts.add(SeasonCount.of("a", year, year == 2003 ? 1 : 0));
            counts.add(SeasonCount.of("b", year, year == 2006 ? 1 : 0));
        }

        assertThat(CurveTrend.of(counts, TrendSettings.usual()))
                .isInstanceOfSatisfying(
                        Answer.NotEstimable.class,
                        not -> assertThat(not.because().reason()).isEqualTo(Reason.CURVE_NOT_HELD));
    }
}

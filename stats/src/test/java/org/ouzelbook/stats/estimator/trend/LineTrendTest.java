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
import org.ouzelbook.stats.estimator.trend.TrendSettings.Spread;

class LineTrendTest {
    private static LineTrend trend(List<SeasonCount> counts) {
        return LineTrend.of(counts, TrendSettings.usual()).found().orElseThrow();
    }

    private static Answer<LineTrend> answer(SeasonCount... counts) {
        return LineTrend.of(List.of(counts), TrendSettings.usual());
    }

    private static List<SeasonCount> fiveYears() {
        return List.of(
                SeasonCount.of("Otter Water", 2021, 9),
                SeasonCount.of("Otter Water", 2022, 8),
                SeasonCount.of("Otter Water", 2023, 8),
                SeasonCount.of("Otter Water", 2025, 7),
                SeasonCount.of("Otter Water", 2026, 7));
    }

    /** R 4.2.2, {@code glm(count ~ site + year, quasipoisson)} without the three empty sites; limits from t with 293 df. */
    @Test
    void agreesWithTheFullModelOfThirtySites() {
        LineTrend trend = trend(ThirtySites.counts());

        assertThat(trend.slope().value()).isCloseTo(-0.05300917048, within(1e-10));
        assertThat(trend.slope().standardError().orElseThrow()).isCloseTo(0.01138781955, within(1e-10));
        assertThat(trend.fit().dispersion().orElseThrow()).isCloseTo(1.895729513, within(1e-8));
        assertThat(trend.fit().deviance()).isCloseTo(568.3555455, within(1e-7));
        assertThat(trend.fit().pearson()).isCloseTo(555.4487472, within(1e-6));
        assertThat(trend.fit().degreesOfFreedom()).isEqualTo(293);
        Estimate percent = trend.percentPerYear();
        assertThat(percent.value()).isCloseTo(-5.1628685, within(1e-7));
        assertThat(percent.lower()).isCloseTo(100 * (0.927352559 - 1), within(1e-6));
        assertThat(percent.upper()).isCloseTo(100 * (0.969866469 - 1), within(1e-6));
        assertThat(trend.probabilityFalling()).isCloseTo(1 - 4.9181594e-06 / 2, within(1e-10));
        assertThat(trend.slope().warnings()).contains(Caution.of(Reason.EMPTY_SITES, 3, List.of("S05", "S12", "S19")));
    }

    @Test
    void doesNotWidenIfCountsAreTakenAsPoisson() {
        Estimate slope = LineTrend.of(ThirtySites.counts(), new TrendSettings(0.95, Spread.POISSON))
                .found()
                .orElseThrow()
                .slope();

        assertThat(slope.standardError().orElseThrow()).isCloseTo(0.008270892784, within(1e-11));
        assertThat(slope.upper() - slope.value()).isCloseTo(1.959963985 * 0.008270892784, within(1e-10));
        assertThat(slope.warnings()).extracting(Caution::reason).contains(Reason.OVERDISPERSION_IGNORED);
    }

    /** Filled totals of R 4.2.2; expectations and their errors as in {@link SeasonEffectsTest}, with 28 coefficients. */
    @Test
    void fillsTheTotalsOfThirtySites() {
        List<SeasonTotal> totals = trend(ThirtySites.counts()).totals();

        assertThat(totals.get(0).filled()).isCloseTo(121.4407399, within(1e-7));
        assertThat(totals.get(14).filled()).isCloseTo(56.1764822, within(1e-7));
        assertThat(totals.get(0).expected().value()).isCloseTo(108.82714085, within(1e-7));
        assertThat(totals.get(0).expected().standardError().orElseThrow()).isCloseTo(8.81361445, within(1e-7));
        assertThat(totals.get(14).expected().standardError().orElseThrow()).isCloseTo(5.40049281, within(1e-7));
    }

    /**
     * Counts 9, 8, 8, none, 7, 7: a Poisson regression gives 0.952 a year (0.80–1.13) and falls with probability 0.72; computed
     * with R 4.2.2. They vary far less than Poisson counts, and the limits are not narrowed for it.
     */
    @Test
    void isNotSureOfFiveYears() {
        LineTrend trend = trend(fiveYears());

        assertThat(1 + trend.percentPerYear().value() / 100).isCloseTo(0.952, within(0.0005));
        assertThat(1 + trend.percentPerYear().lower() / 100).isCloseTo(0.80, within(0.005));
        assertThat(1 + trend.percentPerYear().upper() / 100).isCloseTo(1.13, within(0.005));
        assertThat(trend.probabilityFalling()).isCloseTo(0.72, within(0.005));
        assertThat(trend.fit().dispersion().orElseThrow()).isLessThan(0.1);
        assertThat(trend.fit().scale()).isEqualTo(1);
        assertThat(trend.slope().warnings())
                .extracting(Caution::reason)
                .containsExactly(Reason.UNDERDISPERSED, Reason.SEASONS_NOT_COUNTED);
        assertThat(trend.totals()).extracting(SeasonTotal::season).containsExactly(2021, 2022, 2023, 2025, 2026);
    }

    @Test
    void carriesTheSlopeOverAnyPeriod() {
        LineTrend trend = trend(fiveYears());
        double yearly = 1 + trend.percentPerYear().upper() / 100;

        assertThat(trend.percentOverPeriod().upper()).isCloseTo(100 * (Math.pow(yearly, 5) - 1), within(1e-9));
        assertThat(trend.percentBetween(2026, 2021).lower()).isCloseTo(100 * (Math.pow(yearly, -5) - 1), within(1e-9));
        assertThat(trend.percentBetween(2023, 2023).value()).isZero();
    }

    /** Two seasons at one site: the slope is the log ratio, its variance the sum of the reciprocals. */
    @Test
    void isTheLogRatioOfTwoCounts() {
        LineTrend trend = answer(SeasonCount.of("A", 2020, 12), SeasonCount.of("A", 2024, 6))
                .found()
                .orElseThrow();

        assertThat(trend.slope().value()).isCloseTo(Math.log(0.5) / 4, within(1e-12));
        assertThat(trend.slope().standardError().orElseThrow())
                .isCloseTo(Math.sqrt(1.0 / 12 + 1.0 / 6) / 4, within(1e-12));
        assertThat(trend.slope().warnings()).contains(Caution.of(Reason.NO_DEGREES_OF_FREEDOM));
    }

    /** A site with no birds changes nothing but the list of empty sites. */
    @Test
    void leavesEmptySitesOutOfTheDegreesOfFreedom() {
        List<SeasonCount> counts = new ArrayList<>(fiveYears());
        counts.add(SeasonCount.of("Dry Beck", 2021, 0));
        counts.add(SeasonCount.of("Dry Beck", 2022, 0));

        assertThat(trend(counts).fit().degreesOfFreedom()).isEqualTo(3);
        assertThat(trend(counts).fit().aic()).isEqualTo(trend(fiveYears()).fit().aic());
        assertThat(trend(counts).slope().value())
                .isEqualTo(trend(fiveYears()).slope().value());
    }

    /**
     * For n yearly counts of mean m without trend, T. Gerrodette (1987), Ecology 68:1364–1372, equation 4 (from memory):
     * r² n(n − 1)(n + 1) = 12 (z(α/2) + z(β))² / m.
     */
    @Test
    void findsNoLessThanGerrodettesChange() {
        List<SeasonCount> counts = new ArrayList<>();
        for (int season = 0; season < 10; season++) {
            counts.add(SeasonCount.of("A", 2011 + season, 20));
        }
        YearlyTrend.DetectableChange change = trend(counts).smallestDetectable(0.8);
        double slope = (1.959963985 + 0.841621234) * Math.sqrt(12.0 / (20 * 10 * 9 * 11));

        assertThat(change.fall()).isCloseTo(100 * Math.expm1(-slope), within(1e-7));
        assertThat(change.rise()).isCloseTo(100 * Math.expm1(slope), within(1e-7));
    }

    @Test
    void standsALongAndSteepSeries() {
        List<SeasonCount> counts = new ArrayList<>();
        for (int season = 0; season < 60; season++) {
            counts.add(SeasonCount.of("A", 1960 + season, Math.round(1e9 * Math.exp(-0.3 * season))));
        }

        assertThat(trend(counts).slope().value()).isCloseTo(-0.3, within(1e-6));
    }

    @Test
    void saysWhyThereIsNoLine() {
        assertThat(answer()).isEqualTo(Answer.notEstimable(Reason.NOTHING_COUNTED));
        assertThat(answer(SeasonCount.of("A", 2021, 3), SeasonCount.of("B", 2021, 4)))
                .isEqualTo(Answer.notEstimable(Reason.ONE_SEASON, 2021));
        assertThat(answer(SeasonCount.of("A", 2021, 0), SeasonCount.of("A", 2022, 0)))
                .isEqualTo(Answer.notEstimable(Reason.ALL_COUNTS_ZERO));
        assertThat(answer(SeasonCount.of("A", 2021, 3), SeasonCount.of("B", 2022, 4)))
                .isEqualTo(Answer.notEstimable(Reason.NO_SITE_IN_TWO_SEASONS));
        assertThat(answer(SeasonCount.of("A", 2021, 3), SeasonCount.of("A", 2022, 0), SeasonCount.of("B", 2022, 1)))
                .isEqualTo(Answer.notEstimable(Reason.ONLY_IN_FIRST_SEASONS));
        assertThat(answer(SeasonCount.of("A", 2021, 0), SeasonCount.of("A", 2022, 0), SeasonCount.of("A", 2023, 2)))
                .isEqualTo(Answer.notEstimable(Reason.ONLY_IN_LAST_SEASONS));
    }

    @Test
    void refusesTwoCountsOfOneSeason() {
        assertThatThrownBy(() -> answer(SeasonCount.of("A", 2021, 3), SeasonCount.of("A", 2021, 4)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("A has two counts in 2021");
        assertThatThrownBy(() -> SeasonCount.of("A", 2021, -1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> trend(fiveYears()).smallestDetectable(1)).isInstanceOf(IllegalArgumentException.class);
    }

    /** Counts twice as variable as Poisson, 12 sites in 10 seasons: no bias, and widened limits cover. */
    @Test
    @Tag("slow")
    void recoversTheSlopeOfOverdispersedCounts() {
        RandomGenerator random = new Well19937c(1989);
        int rounds = 600;
        double sum = 0;
        double squares = 0;
        int covered = 0;
        for (int round = 0; round < rounds; round++) {
            List<SeasonCount> counts = new ArrayList<>();
            for (int site = 0; site < 12; site++) {
                for (int season = 0; season < 10; season++) {
                    double mean = (4 + site) * Math.exp(-0.05 * season);
                    double rate = new GammaDistribution(random, mean, 1).sample();
                    long count = new PoissonDistribution(random, Math.max(rate, 1e-9), 1e-12, 1000).sample();
                    counts.add(SeasonCount.of("site " + site, 2010 + season, count));
                }
            }
            Estimate slope = trend(counts).slope();
            sum += slope.value();
            squares += slope.value() * slope.value();
            covered += slope.lower() <= -0.05 && -0.05 <= slope.upper() ? 1 : 0;
        }
        double mean = sum / rounds;
        double standardError = Math.sqrt((squares / rounds - mean * mean) / rounds);

        assertThat(mean).isCloseTo(-0.05, within(4 * standardError));
        assertThat((double) covered / rounds).isCloseTo(0.95, within(4 * Math.sqrt(0.95 * 0.05 / rounds)));
    }
}

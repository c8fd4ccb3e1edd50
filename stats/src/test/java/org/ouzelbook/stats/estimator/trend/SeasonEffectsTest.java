package org.ouzelbook.stats.estimator.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
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

class SeasonEffectsTest {
    private static SeasonEffects effects(List<SeasonCount> counts) {
        return SeasonEffects.of(counts, TrendSettings.usual()).found().orElseThrow();
    }

    private static SeasonEffects poisson(List<SeasonCount> counts) {
        return SeasonEffects.of(counts, new TrendSettings(0.95, Spread.POISSON))
                .found()
                .orElseThrow();
    }

    private static Answer<SeasonEffects> answer(SeasonCount... counts) {
        return SeasonEffects.of(List.of(counts), TrendSettings.usual());
    }

    /**
     * A. J. Dobson (1990), An Introduction to Generalized Linear Models, also the example of R's {@code glm}; cited from memory,
     * further digits from R 4.2.2. Treatments stand for sites, outcomes for seasons.
     */
    @Test
    void reproducesDobsonsTrial() {
        long[] counts = {18, 17, 15, 20, 10, 20, 25, 13, 12};
        List<SeasonCount> trial = new ArrayList<>();
        for (int i = 0; i < counts.length; i++) {
            trial.add(SeasonCount.of("treatment " + i / 3, 1 + i % 3, counts[i]));
        }
        SeasonEffects effects = poisson(trial);

        Estimate second = effects.logRatio(1, 2).found().orElseThrow();
        assertThat(second.value()).isCloseTo(-0.454255272, within(1e-9));
        assertThat(second.standardError().orElseThrow()).isCloseTo(0.202170759, within(1e-9));
        Estimate third = effects.logRatio(1, 3).found().orElseThrow();
        assertThat(third.value()).isCloseTo(-0.292987125, within(1e-9));
        assertThat(third.standardError().orElseThrow()).isCloseTo(0.192742345, within(1e-9));
        assertThat(effects.fit().deviance()).isCloseTo(5.129141077, within(1e-9));
        assertThat(effects.fit().pearson()).isCloseTo(5.173201621, within(1e-8));
        assertThat(effects.fit().degreesOfFreedom()).isEqualTo(4);
        assertThat(effects.fit().logLikelihood()).isCloseTo(-23.3806592, within(1e-7));
        assertThat(effects.fit().aic()).isCloseTo(56.7613184, within(1e-7));
    }

    /** R 4.2.2, {@code glm(count ~ site + factor(year), quasipoisson)} without the three empty sites. */
    @Test
    void agreesWithTheFullModelOfThirtySites() {
        SeasonEffects effects = effects(ThirtySites.counts());

        assertThat(effects.fit().emptySites()).containsExactly("S05", "S12", "S19");
        assertThat(effects.fit().counts()).isEqualTo(321);
        assertThat(effects.fit().degreesOfFreedom()).isEqualTo(280);
        assertThat(effects.fit().deviance()).isCloseTo(544.3561377, within(1e-7));
        assertThat(effects.fit().pearson()).isCloseTo(513.4761888, within(1e-6));
        assertThat(effects.fit().scale()).isCloseTo(1.833843531, within(1e-8));
        assertThat(effects.fit().logLikelihood()).isCloseTo(-632.2310705, within(1e-6));
        Estimate last = effects.logRatio(2005, 2019).found().orElseThrow();
        assertThat(last.value()).isCloseTo(-0.7636867898, within(1e-9));
        assertThat(last.standardError().orElseThrow()).isCloseTo(0.268845633, within(1e-8));
        Estimate poisson =
                poisson(ThirtySites.counts()).logRatio(2005, 2019).found().orElseThrow();
        assertThat(poisson.standardError().orElseThrow()).isCloseTo(0.198528036, within(1e-8));
    }

    /**
     * Totals of R 4.2.2. Their standard errors: SciPy 1.17.1, the full model with 41 coefficients fitted by iteratively weighted
     * least squares; √(φ g·V·g) with V the inverse information and g = Σ μ x over the sites.
     */
    @Test
    void fillsTheTotalsOfThirtySites() {
        List<SeasonTotal> totals = effects(ThirtySites.counts()).totals();

        assertTotal(totals.get(0), 2005, 94, 126.24241938, 17.98232781);
        assertTotal(totals.get(1), 2006, 77, 89.98621039, 14.00860060);
        assertTotal(totals.get(11), 2016, 29, 57.86849615, 14.80483135);
        assertTotal(totals.get(14), 2019, 37, 58.82207632, 13.27520274);
        assertThat(totals)
                .allSatisfy(total ->
                        assertThat(total.filled()).isCloseTo(total.expected().value(), within(1e-9)));
        assertThat(totals.stream().mapToLong(SeasonTotal::observed).sum()).isEqualTo(894);
    }

    private static void assertTotal(SeasonTotal total, int season, long observed, double expected, double error) {
        assertThat(total.season()).isEqualTo(season);
        assertThat(total.observed()).isEqualTo(observed);
        assertThat(total.expected().value()).isCloseTo(expected, within(1e-7));
        assertThat(total.expected().standardError().orElseThrow()).isCloseTo(error, within(1e-6));
    }

    /** Without missing counts a season's total is what was counted, and ratios are ratios of totals. */
    @Test
    void addsNothingToCompleteCounts() {
        List<SeasonCount> counts = List.of(
                SeasonCount.of("A", 2021, 4),
                SeasonCount.of("A", 2022, 6),
                SeasonCount.of("A", 2023, 1),
                SeasonCount.of("B", 2021, 9),
                SeasonCount.of("B", 2022, 7),
                SeasonCount.of("B", 2023, 8));
        SeasonEffects effects = effects(counts);

        assertThat(effects.totals())
                .extracting(total -> Math.rint(total.expected().value() * 1e9) / 1e9)
                .containsExactly(13.0, 13.0, 9.0);
        assertThat(effects.percentBetween(2021, 2023).found().orElseThrow().value())
                .isCloseTo(100 * (9.0 / 13 - 1), within(1e-9));
    }

    /** Twice the km in every season of a site changes its site effect and nothing else. */
    @Test
    void takesKilometresAsExposure() {
        List<SeasonCount> counts = new ArrayList<>();
        for (int season = 0; season < 4; season++) {
            counts.add(over("A", 2020 + season, 3 + season, 2));
            counts.add(over("B", 2020 + season, 12 - season, 5));
        }
        Estimate ratio = effects(counts).logRatio(2020, 2023).found().orElseThrow();
        counts.replaceAll(count -> count.site().equals("A")
                ? over("A", count.season(), count.count().orElseThrow(), 4)
                : count);
        Estimate doubled = effects(counts).logRatio(2020, 2023).found().orElseThrow();

        assertThat(doubled.value()).isCloseTo(ratio.value(), within(1e-12));
        assertThat(doubled.standardError().orElseThrow())
                .isCloseTo(ratio.standardError().orElseThrow(), within(1e-12));
    }

    private static SeasonCount over(String site, int season, long count, double km) {
        return new SeasonCount(site, season, OptionalLong.of(count), OptionalDouble.of(km));
    }

    /** One season's zero has an upper limit: here 3.689, since the only site was counted whole. */
    @Test
    void boundsASeasonOfZeros() {
        SeasonEffects effects = answer(
                        SeasonCount.of("A", 2021, 5), SeasonCount.of("A", 2022, 0), SeasonCount.of("A", 2023, 4))
                .found()
                .orElseThrow();

        assertThat(effects.emptySeasons()).containsExactly(2022);
        assertThat(effects.cautions()).contains(Caution.of(Reason.EMPTY_SEASONS, List.of(2022)));
        assertThat(effects.logRatio(2021, 2022)).isEqualTo(Answer.notEstimable(Reason.SEASON_WITHOUT_EFFECT, 2022));
        Estimate none = effects.totals().get(1).expected();
        assertThat(none.value()).isZero();
        assertThat(none.upper()).isCloseTo(3.688879454, within(1e-9));
        assertThat(none.standardError()).isEmpty();
    }

    @Test
    void cannotJudgeSpreadWithAsManyParametersAsCounts() {
        SeasonEffects effects = answer(SeasonCount.of("A", 2021, 5), SeasonCount.of("A", 2022, 3))
                .found()
                .orElseThrow();

        assertThat(effects.fit().dispersion()).isEmpty();
        assertThat(effects.cautions()).contains(Caution.of(Reason.NO_DEGREES_OF_FREEDOM));
        assertThat(effects.logRatio(2021, 2022)
                        .found()
                        .orElseThrow()
                        .standardError()
                        .orElseThrow())
                .isCloseTo(Math.sqrt(1.0 / 5 + 1.0 / 3), within(1e-12));
    }

    @Test
    void saysWhyThereAreNoEffects() {
        assertThat(answer()).isEqualTo(Answer.notEstimable(Reason.NOTHING_COUNTED));
        assertThat(answer(SeasonCount.of("A", 2021, 5))).isEqualTo(Answer.notEstimable(Reason.ONE_SEASON, 2021));
        assertThat(answer(SeasonCount.of("A", 2021, 0), SeasonCount.of("A", 2022, 0)))
                .isEqualTo(Answer.notEstimable(Reason.ALL_COUNTS_ZERO));
        assertThat(answer(SeasonCount.of("A", 2021, 5), SeasonCount.of("A", 2022, 0)))
                .isEqualTo(Answer.notEstimable(Reason.ONE_SEASON, 2021));
    }

    @Test
    void refusesSeasonsThatNoSiteLinks() {
        assertThat(answer(
                        SeasonCount.of("A", 2021, 5), SeasonCount.of("A", 2022, 3),
                        SeasonCount.of("B", 2023, 4), SeasonCount.of("B", 2024, 2)))
                .isEqualTo(Answer.notEstimable(Reason.SEASONS_NOT_LINKED, List.of(2023, 2024)));
    }

    /** Every season has birds, but the only site that links the two holds none in the second: the effect has no lower end. */
    @Test
    void refusesAnEffectWithoutEnd() {
        assertThat(answer(SeasonCount.of("A", 2021, 5), SeasonCount.of("A", 2022, 0), SeasonCount.of("B", 2022, 4)))
                .isEqualTo(Answer.notEstimable(Reason.SEASONS_NOT_LINKED, List.of(2022)));
    }

    @Test
    void leavesOutASeasonThatSaysNothing() {
        SeasonEffects effects = answer(
                        SeasonCount.of("A", 2021, 5), SeasonCount.of("A", 2022, 3), SeasonCount.of("B", 2023, 0))
                .found()
                .orElseThrow();

        assertThat(effects.seasons()).containsExactly(2021, 2022);
        assertThat(effects.totals()).hasSize(2);
        assertThat(effects.cautions()).contains(Caution.of(Reason.SEASONS_WITHOUT_INFORMATION, List.of(2023)));
    }

    /** Totals filled from 70 % of the counts are unbiased, and their limits cover. */
    @Test
    @Tag("slow")
    void recoversTheTotalsOfSimulatedSites() {
        RandomGenerator random = new Well19937c(2005);
        int rounds = 400;
        double sum = 0;
        double squares = 0;
        int covered = 0;
        double truth = 0;
        for (int site = 0; site < 20; site++) {
            truth += (1 + site % 5) * 0.7;
        }
        for (int round = 0; round < rounds; round++) {
            List<SeasonCount> counts = new ArrayList<>();
            for (int site = 0; site < 20; site++) {
                for (int season = 0; season < 8; season++) {
                    double mean = (1 + site % 5) * (season == 7 ? 0.7 : 1);
                    if (random.nextDouble() < 0.7) {
                        long count = new PoissonDistribution(random, mean, 1e-12, 1000).sample();
                        counts.add(SeasonCount.of("site " + site, 2018 + season, count));
                    }
                }
            }
            Estimate last = poisson(counts).totals().get(7).expected();
            sum += last.value();
            squares += last.value() * last.value();
            covered += last.lower() <= truth && truth <= last.upper() ? 1 : 0;
        }
        double mean = sum / rounds;
        double standardError = Math.sqrt((squares / rounds - mean * mean) / rounds);

        assertThat(mean).isCloseTo(truth, within(4 * standardError));
        assertThat((double) covered / rounds).isCloseTo(0.95, within(4 * Math.sqrt(0.95 * 0.05 / rounds)));
    }
}

package org.ouzelbook.stats.estimator.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.TestTable;
import org.ouzelbook.stats.estimator.likelihood.Covariate;

class LogisticExposureTest {
    private static final TestTable CHATS = TestTable.beside(LogisticExposureTest.class, "chats.csv");
    private static final TestTable INVENTED = TestTable.beside(LogisticExposureTest.class, "invented-nests.csv");

    private static List<WatchedNest> nests(TestTable table) {
        double[] days = table.numbers("days");
        double[] survived = table.numbers("survived");
        return IntStream.range(0, days.length)
                .mapToObj(row -> new WatchedNest(List.of(new WatchedNest.Days(row, days[row])), survived[row] == 1))
                .toList();
    }

    private static LogisticExposure fit(TestTable table, Covariate... covariates) {
        return LogisticExposure.of(nests(table), table.rows().size(), List.of(covariates), 0.95)
                .found()
                .orElseThrow();
    }

    private static Estimate coefficient(LogisticExposure fit, int place) {
        return fit.fit().coefficients(0.95).get(place).estimate().found().orElseThrow();
    }

    private static void hasValue(Estimate estimate, double value, double error) {
        assertThat(estimate.value()).isCloseTo(value, within(1e-7));
        assertThat(estimate.standardError().orElseThrow()).isCloseTo(error, within(1e-7));
    }

    /**
     * T. L. Shaffer (2004), yellow-breasted chats: intercept 2.747 (SE 0.352), parastat 1.035 (0.540), small patch −1.084 (0.526), −2lnL
     * 194.00. Here the first patch in the file, a small one, is the reference. Further digits: R 4.2.2, {@code optim}.
     */
    @Test
    void reproducesShaffersChats() {
        LogisticExposure fit = fit(
                CHATS,
                Covariate.numbers("parasites", CHATS.numbers("parasites")),
                Covariate.levels("patch", CHATS.column("patch")));

        assertThat(fit.fit().n()).isEqualTo(292);
        assertThat(-2 * fit.fit().logLikelihood()).isCloseTo(193.9987398, within(1e-6));
        assertThat(fit.fit().aic()).isCloseTo(199.9987398, within(1e-6));
        hasValue(coefficient(fit, 1), 1.0349564, 0.53979276);
        hasValue(coefficient(fit, 2), 1.0843938, 0.52574837);
        assertThat(coefficient(fit, 0).value()).isCloseTo(2.7466934 - 1.0843938, within(1e-6));
    }

    @Test
    void fitsAConstantDailySurvival() {
        LogisticExposure chats = fit(CHATS);
        assertThat(-2 * chats.fit().logLikelihood()).isCloseTo(199.8374786, within(1e-6));
        hasValue(coefficient(chats, 0), 2.8772215, 0.20469514);
        LogisticExposure nests = fit(INVENTED);
        Estimate daily = nests.dailySurvival().get(0).estimate().found().orElseThrow();
        hasValue(daily, 0.9636175679, 0.00746402832);
        assertThat(daily.lower()).isCloseTo(0.945799016, within(1e-7));
        assertThat(daily.upper()).isCloseTo(0.975728604, within(1e-7));
        Estimate success = nests.success(List.of(new WatchedNest.Days(0, 38)), 0.95)
                .found()
                .orElseThrow();
        assertThat(success.value()).isCloseTo(0.244556351, within(1e-7));
    }

    /** R 4.2.2, {@code optim}. */
    @Test
    void fitsSiteAndAge() {
        Covariate bridge = Covariate.numbers(
                "bridge",
                INVENTED.column("site").stream()
                        .mapToDouble(site -> site.equals("bridge") ? 1 : 0)
                        .toArray());
        LogisticExposure fit = fit(INVENTED, bridge, Covariate.numbers("age", INVENTED.numbers("age")));

        assertThat(-2 * fit.fit().logLikelihood()).isCloseTo(126.7067752, within(1e-6));
        hasValue(coefficient(fit, 0), 2.9531231802, 0.45936703887);
        hasValue(coefficient(fit, 1), 0.1535356740, 0.42993369329);
        hasValue(coefficient(fit, 2), 0.0159936931, 0.02368137207);
    }

    /** Each day with its own age, R as above, but its standard errors are from the observed information. */
    @Test
    void multipliesDaysOfDifferentAge() {
        List<WatchedNest> nests = new ArrayList<>();
        List<Double> bridges = new ArrayList<>();
        List<Double> ages = new ArrayList<>();
        for (int row = 0; row < INVENTED.rows().size(); row++) {
            List<WatchedNest.Days> days = new ArrayList<>();
            for (int day = 0; day < INVENTED.numbers("days")[row]; day++) {
                days.add(new WatchedNest.Days(ages.size(), 1));
                ages.add(INVENTED.numbers("age")[row] + day);
                bridges.add(INVENTED.column("site").get(row).equals("bridge") ? 1.0 : 0);
            }
            nests.add(new WatchedNest(days, INVENTED.numbers("survived")[row] == 1));
        }
        LogisticExposure fit = LogisticExposure.of(
                        nests,
                        ages.size(),
                        List.of(
                                Covariate.numbers(
                                        "bridge",
                                        bridges.stream().mapToDouble(one -> one).toArray()),
                                Covariate.numbers(
                                        "age",
                                        ages.stream().mapToDouble(one -> one).toArray())),
                        0.95)
                .found()
                .orElseThrow();

        assertThat(-2 * fit.fit().logLikelihood()).isCloseTo(126.6624074, within(1e-6));
        assertThat(coefficient(fit, 0).value()).isCloseTo(2.9054668733, within(1e-7));
        assertThat(coefficient(fit, 1).value()).isCloseTo(0.1523239318, within(1e-7));
        assertThat(coefficient(fit, 2).value()).isCloseTo(0.0169370753, within(1e-7));
        assertThat(coefficient(fit, 0).standardError().orElseThrow()).isCloseTo(0.4996383564, within(1e-3));
        assertThat(coefficient(fit, 2).standardError().orElseThrow()).isCloseTo(0.0238937153, within(1e-4));
    }

    /** With intervals of one day it is a binomial proportion. */
    @Test
    void isAProportionForIntervalsOfADay() {
        List<WatchedNest> days = new ArrayList<>();
        for (int day = 0; day < 50; day++) {
            days.add(new WatchedNest(List.of(new WatchedNest.Days(0, 1)), day >= 4));
        }
        LogisticExposure fit =
                LogisticExposure.of(days, 1, List.of(), 0.95).found().orElseThrow();

        hasValue(fit.dailySurvival().get(0).estimate().found().orElseThrow(), 0.92, Math.sqrt(0.92 * 0.08 / 50));
    }

    /** The success over two stages is the product of theirs, and its limits stay between 0 and 1. */
    @Test
    void multipliesStages() {
        LogisticExposure fit = fit(INVENTED, Covariate.levels("site", INVENTED.column("site")));
        int other = INVENTED.column("site").indexOf("bridge");
        Estimate success = fit.success(List.of(new WatchedNest.Days(0, 21), new WatchedNest.Days(other, 22)), 0.95)
                .found()
                .orElseThrow();

        assertThat(success.value())
                .isCloseTo(
                        Math.pow(daily(fit, "site=rock"), 21) * Math.pow(daily(fit, "site=bridge"), 22), within(1e-12));
        assertThat(success.lower()).isPositive();
        assertThat(success.upper()).isLessThan(1);
    }

    private static double daily(LogisticExposure fit, String label) {
        return fit.dailySurvival().stream()
                .filter(one -> one.term().equals(label))
                .findFirst()
                .flatMap(one -> one.estimate().found())
                .orElseThrow()
                .value();
    }

    @Test
    void isOneSidedForALevelWithoutALoss() {
        List<WatchedNest> nests = List.of(
                new WatchedNest(List.of(new WatchedNest.Days(0, 7)), true),
                new WatchedNest(List.of(new WatchedNest.Days(0, 7)), false),
                new WatchedNest(List.of(new WatchedNest.Days(1, 30)), true),
                new WatchedNest(List.of(new WatchedNest.Days(1, 30)), true));
        LogisticExposure fit = LogisticExposure.of(
                        nests, 2, List.of(Covariate.levels("site", List.of("rock", "bridge"))), 0.95)
                .found()
                .orElseThrow();
        Estimate bridge = fit.dailySurvival().get(1).estimate().found().orElseThrow();

        assertThat(bridge.value()).isEqualTo(1);
        assertThat(bridge.standardError()).isEmpty();
        assertThat(bridge.lower()).isCloseTo(Math.exp(-3.841458821 / 2 / 60), within(1e-6));
        assertThat(bridge.warnings()).extracting(Caution::reason).contains(Reason.AT_BOUNDARY);
        assertThat(daily(fit, "site=rock")).isCloseTo(Math.pow(0.5, 1.0 / 7), within(1e-6));
    }

    @Test
    void refusesWhatCarriesNoSurvival() {
        assertThat(reason(LogisticExposure.of(List.of(), 1, List.of(), 0.95))).isEqualTo(Reason.NO_NEST_DAYS);
        List<WatchedNest> one = List.of(new WatchedNest(List.of(new WatchedNest.Days(0, 3)), true));
        assertThat(reason(LogisticExposure.of(one, 1, List.of(Covariate.numbers("age", 4)), 0.95)))
                .isEqualTo(Reason.TERMS_REPEAT_OTHERS);
    }

    private static Reason reason(Answer<LogisticExposure> answer) {
        return ((Answer.NotEstimable<LogisticExposure>) answer).because().reason();
    }

    /** 300 studies of 60 nests looked at every ten days: a 95 % interval misses in more than 25 with a probability below 0.01. */
    @Test
    @Tag("slow")
    void coversTheTruthOfLongIntervals() {
        RandomGenerator random = new Well19937c(23);
        int missed = 0;
        double sum = 0;
        int studies = 300;
        for (int study = 0; study < studies; study++) {
            List<WatchedNest> nests = ExposureDaysTest.simulated(random, 60, 0.97, 10).stream()
                    .map(interval ->
                            new WatchedNest(List.of(new WatchedNest.Days(0, interval.days())), interval.survived()))
                    .toList();
            Estimate survival = LogisticExposure.of(nests, 1, List.of(), 0.95)
                    .found()
                    .orElseThrow()
                    .dailySurvival()
                    .get(0)
                    .estimate()
                    .found()
                    .orElseThrow();
            missed += survival.lower() <= 0.97 && 0.97 <= survival.upper() ? 0 : 1;
            sum += survival.value();
        }
        assertThat(missed).isBetween(4, 25);
        assertThat(sum / studies).isCloseTo(0.97, within(0.001));
    }

    /**
     * Lost in 5 and in 7 days: the likelihood (1 − s⁵)(1 − s⁷) is highest at s = 0 and lower by half of χ²’s 95 % quantile, 1.9207, at the
     * limit: a root of that equation, by R 4.2.2 {@code uniroot}.
     */
    @Test
    void isOneSidedWhereEveryNestWasLost() {
        List<WatchedNest> lost = List.of(
                new WatchedNest(List.of(new WatchedNest.Days(0, 5)), false),
                new WatchedNest(List.of(new WatchedNest.Days(1, 7)), false));
        Estimate daily = LogisticExposure.of(lost, 2, List.of(), 0.95)
                .found()
                .orElseThrow()
                .dailySurvival()
                .get(0)
                .estimate()
                .found()
                .orElseThrow();

        assertThat(daily.value()).isZero();
        assertThat(daily.standardError()).isEmpty();
        assertThat(daily.upper()).isCloseTo(0.92140301, within(1e-5));
    }
}

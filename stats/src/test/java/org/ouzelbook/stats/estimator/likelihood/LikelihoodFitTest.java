package org.ouzelbook.stats.estimator.likelihood;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.likelihood.Parts.Part;

class LikelihoodFitTest {
    private static final double LEVEL = 0.95;

    /** Independent trials: a logistic regression. */
    private static PredictorLikelihood trials(Design design, int[] outcomes) {
        return (predictors, slopes) -> {
            double sum = 0;
            for (int row = 0; row < outcomes.length; row++) {
                int pattern = design.pattern(row);
                double eta = predictors[0][pattern];
                sum += Logit.logProbability(outcomes[row] == 1 ? eta : -eta);
                slopes[0][pattern] += outcomes[row] - Logit.probability(eta);
            }
            return sum;
        };
    }

    private static LikelihoodFit logistic(Design design, int... outcomes) {
        return LikelihoodFit.of(
                        Parts.of(new Part("share", design)),
                        trials(design, outcomes),
                        outcomes.length,
                        Method.SEASON_OCCUPANCY)
                .found()
                .orElseThrow();
    }

    private static Design design(Column... columns) {
        return Design.of(columns[0].rows(), List.of(columns)).found().orElseThrow();
    }

    private static int[] outcomes(int successes, int trials) {
        int[] outcomes = new int[trials];
        for (int i = 0; i < successes; i++) {
            outcomes[i] = 1;
        }
        return outcomes;
    }

    private static Estimate estimate(LikelihoodFit fit, int coefficient) {
        return fit.coefficients(LEVEL).get(coefficient).estimate().found().orElseThrow();
    }

    /** A proportion in closed form: logit p has the standard error 1/√(np(1 − p)). */
    @Test
    void agreesWithAProportion() {
        LikelihoodFit fit = logistic(Design.constant(263), outcomes(81, 263));
        double p = 81 / 263.0;

        Estimate logit = estimate(fit, 0);
        Estimate natural = fit.probability(0, 0, LEVEL).found().orElseThrow();

        assertThat(natural.value()).isCloseTo(p, within(1e-12));
        assertThat(logit.standardError().getAsDouble()).isCloseTo(1 / Math.sqrt(263 * p * (1 - p)), within(1e-9));
        assertThat(natural.standardError().getAsDouble()).isCloseTo(Math.sqrt(p * (1 - p) / 263), within(1e-9));
        assertThat(fit.logLikelihood()).isCloseTo(81 * Math.log(p) + 182 * Math.log1p(-p), within(1e-10));
        assertThat(fit.isRegular()).isTrue();
        assertThat(fit.peaks()).hasSize(1);
    }

    /** Newcombe (1998), Stat. Med. 17:857–872, Table I, likelihood intervals, four decimals; cited from memory. */
    @Test
    void profileLimitsAreNewcombesLikelihoodInterval() {
        double[] most = logistic(Design.constant(263), outcomes(81, 263)).profileLimits(0, LEVEL);
        double[] few = logistic(Design.constant(148), outcomes(15, 148)).profileLimits(0, LEVEL);

        assertThat(Logit.probability(most[0])).isCloseTo(0.2542, within(0.5e-4));
        assertThat(Logit.probability(most[1])).isCloseTo(0.3655, within(0.5e-4));
        assertThat(Logit.probability(few[0])).isCloseTo(0.0596, within(0.5e-4));
        assertThat(Logit.probability(few[1])).isCloseTo(0.1567, within(0.5e-4));
    }

    /** With n of n successes the likelihood is pⁿ, and falls by χ²/2 at p = exp(−χ²/2n). */
    @Test
    void aFullScoreIsOneWithALowerLimit() {
        LikelihoodFit fit = logistic(Design.constant(20), outcomes(20, 20));

        Estimate p = fit.probability(0, 0, LEVEL).found().orElseThrow();

        assertThat(p.value()).isEqualTo(1);
        assertThat(p.standardError()).isEmpty();
        assertThat(p.upper()).isEqualTo(1);
        assertThat(p.lower()).isCloseTo(Math.exp(-3.841458820694124 / 40), within(1e-6));
        assertThat(p.warnings()).containsExactly(Caution.of(Reason.AT_BOUNDARY));
        assertThat(fit.logLikelihood()).isCloseTo(0, within(1e-6));
    }

    @Test
    void noSuccessIsZeroWithAnUpperLimit() {
        Estimate p = logistic(Design.constant(20), outcomes(0, 20))
                .probability(0, 0, LEVEL)
                .found()
                .orElseThrow();

        assertThat(p.value()).isZero();
        assertThat(p.lower()).isZero();
        assertThat(p.upper()).isCloseTo(1 - Math.exp(-3.841458820694124 / 40), within(1e-6));
    }

    /** Two groups are two proportions, and their difference on the scale of log odds is the log odds ratio. */
    @Test
    void levelsAreComparedWithTheFirst() {
        List<String> banks = new ArrayList<>();
        int[] outcomes = new int[70];
        for (int i = 0; i < 70; i++) {
            banks.add(i < 30 ? "left" : "right");
            outcomes[i] = i < 12 || i >= 60 ? 1 : 0;
        }
        Design design = Design.of(70, Column.ofLevels("bank", banks)).found().orElseThrow();
        LikelihoodFit fit = logistic(design, outcomes);

        assertThat(design.terms()).containsExactly("intercept", "bank=right");
        assertThat(estimate(fit, 0).value()).isCloseTo(Math.log(12 / 18.0), within(1e-9));
        assertThat(estimate(fit, 1).value()).isCloseTo(Math.log(10 / 30.0) - Math.log(12 / 18.0), within(1e-9));
        assertThat(estimate(fit, 1).standardError().getAsDouble())
                .isCloseTo(Math.sqrt(1 / 12.0 + 1 / 18.0 + 1 / 10.0 + 1 / 30.0), within(1e-8));
    }

    @Test
    void aCalendarYearFitsAsWellAsItsAge() {
        double[] year = new double[60];
        double[] age = new double[60];
        int[] outcomes = new int[60];
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(5);
        for (int i = 0; i < 60; i++) {
            age[i] = i % 12;
            year[i] = 2005 + age[i];
            outcomes[i] = random.nextDouble() < Logit.probability(0.5 - 0.15 * age[i]) ? 1 : 0;
        }
        LikelihoodFit byYear = logistic(design(Column.of("year", year)), outcomes);
        LikelihoodFit byAge = logistic(design(Column.of("age", age)), outcomes);

        assertThat(byYear.logLikelihood()).isCloseTo(byAge.logLikelihood(), within(1e-10));
        assertThat(estimate(byYear, 1).value()).isCloseTo(estimate(byAge, 1).value(), within(1e-10));
        assertThat(estimate(byYear, 1).standardError().getAsDouble())
                .isCloseTo(estimate(byAge, 1).standardError().getAsDouble(), within(1e-9));
        assertThat(estimate(byYear, 0).value())
                .isCloseTo(
                        estimate(byAge, 0).value() - 2005 * estimate(byAge, 1).value(), within(1e-7));
    }

    @Test
    void aCovariateThatSeparatesIsInfiniteWithOneLimit() {
        LikelihoodFit fit = logistic(design(Column.of("km", 1, 2, 3, 4, 5, 6, 7, 8)), 0, 0, 0, 0, 1, 1, 1, 1);

        Estimate slope = estimate(fit, 1);

        assertThat(slope.value()).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(slope.standardError()).isEmpty();
        assertThat(slope.lower()).isBetween(0.1, 2.0);
        assertThat(fit.logLikelihood()).isCloseTo(0, within(1e-5));
    }

    @Test
    void aTermThatRepeatsOthersIsRefused() {
        Column km = Column.of("km", 1, 2, 3, 4);
        Column miles = Column.of("miles", 1 / 1.609344, 2 / 1.609344, 3 / 1.609344, 4 / 1.609344);
        Column constant = Column.of("river", 7, 7, 7, 7);

        assertThat(Design.of(4, List.of(km, miles, constant)))
                .isEqualTo(Answer.notEstimable(Reason.TERMS_REPEAT_OTHERS, List.of("miles", "river")));
    }

    /** The product of two probabilities is all that such trials tell. */
    @Test
    void aPairThatIsOnlyKnownAsAProductIsToldSo() {
        PredictorLikelihood product = (predictors, slopes) -> {
            double a = Logit.probability(predictors[0][0]);
            double b = Logit.probability(predictors[1][0]);
            double slope = 26 / (a * b) - 23 / (1 - a * b);
            slopes[0][0] += slope * b * a * (1 - a);
            slopes[1][0] += slope * a * b * (1 - b);
            return 26 * Math.log(a * b) + 23 * Math.log1p(-a * b);
        };
        LikelihoodFit fit = LikelihoodFit.of(
                        Parts.of(new Part("survival", Design.constant(1)), new Part("resighting", Design.constant(1))),
                        product,
                        49,
                        Method.SEASON_OCCUPANCY)
                .found()
                .orElseThrow();

        assertThat(fit.coefficients(LEVEL))
                .extracting(Coefficient::estimate)
                .containsOnly(Answer.notEstimable(Reason.NOT_TOLD_APART));
        assertThat(fit.logLikelihood()).isCloseTo(26 * Math.log(26 / 49.0) + 23 * Math.log(23 / 49.0), within(1e-8));
    }

    /** A mixture of two bumps on the scale of one predictor. */
    @Test
    void twoPeaksAreFoundOut() {
        PredictorLikelihood bumps = (predictors, slopes) -> {
            double x = predictors[0][0];
            double one = Math.exp(-2 * (x + 2) * (x + 2));
            double other = 0.5 * Math.exp(-2 * (x - 2) * (x - 2));
            slopes[0][0] += (-4 * (x + 2) * one - 4 * (x - 2) * other) / (one + other);
            return Math.log(one + other);
        };
        LikelihoodFit fit = LikelihoodFit.of(
                        Parts.of(new Part("place", Design.constant(1))), bumps, 1, Method.SEASON_OCCUPANCY)
                .found()
                .orElseThrow();

        assertThat(estimate(fit, 0).value()).isCloseTo(-2, within(1e-4));
        assertThat(fit.peaks()).hasSize(2);
        assertThat(fit.cautions()).extracting(Caution::reason).containsExactly(Reason.SEVERAL_PEAKS);
        assertThat(fit.peaks().get(0) - fit.peaks().get(1)).isCloseTo(Math.log(2), within(1e-4));
    }

    /** The same two bumps, equally high: climbs that end at one height have not ended at one place. */
    @Test
    void twoPeaksOfOneHeightAreFoundOut() {
        PredictorLikelihood bumps = (predictors, slopes) -> {
            double x = predictors[0][0];
            double one = Math.exp(-2 * (x + 2) * (x + 2));
            double other = Math.exp(-2 * (x - 2) * (x - 2));
            slopes[0][0] += (-4 * (x + 2) * one - 4 * (x - 2) * other) / (one + other);
            return Math.log(one + other);
        };
        LikelihoodFit fit = LikelihoodFit.of(
                        Parts.of(new Part("place", Design.constant(1))), bumps, 1, Method.SEASON_OCCUPANCY)
                .found()
                .orElseThrow();

        assertThat(Math.abs(estimate(fit, 0).value())).isCloseTo(2, within(1e-4));
        assertThat(fit.cautions()).containsExactly(Caution.of(Reason.EQUAL_PEAKS, 2));
    }

    /** A ridge is one peak, however far apart the climbs end on it. */
    @Test
    void aRidgeIsNoSecondPeak() {
        PredictorLikelihood ridge = (predictors, slopes) -> {
            double rest = predictors[0][0] + predictors[1][0] - 1;
            slopes[0][0] -= 2 * rest;
            slopes[1][0] -= 2 * rest;
            return -rest * rest;
        };
        LikelihoodFit fit = LikelihoodFit.of(
                        Parts.of(new Part("one", Design.constant(1)), new Part("other", Design.constant(1))),
                        ridge,
                        1,
                        Method.SEASON_OCCUPANCY)
                .found()
                .orElseThrow();

        assertThat(fit.cautions()).isEmpty();
        assertThat(fit.coefficients(LEVEL))
                .extracting(Coefficient::estimate)
                .containsOnly(Answer.notEstimable(Reason.NOT_TOLD_APART));
    }
}

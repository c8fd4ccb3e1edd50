package org.ouzelbook.stats.estimator.markresight;

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
import org.ouzelbook.stats.estimator.likelihood.Coefficient;
import org.ouzelbook.stats.estimator.likelihood.Covariate;

/**
 * The dippers of J.-D. Lebreton et al. (1992), Ecol. Monogr. 62:67–118. Where more digits stand than the paper prints, they are
 * from R 4.2.2, {@code optim} on the m-array, whose deviances agree with the paper's Table 12 to all its digits.
 */
class CormackJollySeberTest {
    private static final List<Covariate> CONSTANT = List.of();

    private static CormackJollySeber fit(MarkedAnimals animals, List<Covariate> survival, List<Covariate> resighting) {
        return CormackJollySeber.of(animals, survival, resighting, 0.95).found().orElseThrow();
    }

    private static List<Covariate> time(MarkedAnimals animals, int from) {
        return List.of(animals.byInterval(
                "occasion",
                IntStream.range(0, animals.occasions() - 1)
                        .mapToObj(interval -> String.valueOf(interval + from))
                        .toList()));
    }

    private static Covariate flood(MarkedAnimals animals) {
        return animals.byInterval(Covariate.numbers("flood", 0, 1, 1, 0, 0, 0));
    }

    private static Estimate probability(CormackJollySeber fit, String part, String label) {
        return fit.probabilities().stream()
                .filter(one -> one.part().equals(part) && one.term().equals(label))
                .findFirst()
                .flatMap(one -> one.estimate().found())
                .orElseThrow();
    }

    private static Estimate coefficient(CormackJollySeber fit, String part, String term) {
        return fit.fit().coefficients(0.95).stream()
                .filter(one -> one.part().equals(part) && one.term().equals(term))
                .findFirst()
                .flatMap(one -> one.estimate().found())
                .orElseThrow();
    }

    private static void hasValue(Estimate estimate, double value, double error) {
        assertThat(estimate.value()).isCloseTo(value, within(1e-7));
        assertThat(estimate.standardError().orElseThrow()).isCloseTo(error, within(1e-7));
    }

    /** Table 12: DEV 666.84, AIC 670.84; page 88: survival 0.56 (SE 0.025), resighting 0.90 (0.029). */
    @Test
    void reproducesTheDippersWithConstantParameters() {
        CormackJollySeber fit = fit(Dippers.pooled(), CONSTANT, CONSTANT);

        assertThat(fit.animals()).isEqualTo(294);
        assertThat(-2 * fit.fit().logLikelihood()).isCloseTo(666.8376626, within(1e-6));
        assertThat(fit.fit().aicc().orElseThrow()).isCloseTo(670.8660314, within(1e-6));
        assertThat(fit.deviance()).isCloseTo(23.69913701, within(1e-6));
        Estimate survival = probability(fit, "survival", "intercept");
        hasValue(survival, 0.560243017, 0.0251329537);
        assertThat(survival.lower()).isCloseTo(0.51055021, within(1e-7));
        assertThat(survival.upper()).isCloseTo(0.60875684, within(1e-7));
        Estimate resighting = probability(fit, "resighting", "intercept");
        hasValue(resighting, 0.902583535, 0.0285857277);
        assertThat(resighting.lower()).isCloseTo(0.83048430, within(1e-7));
        assertThat(resighting.upper()).isCloseTo(0.94601074, within(1e-7));
        assertThat(fit.fit().covariance().getEntry(0, 1)).isCloseTo(-0.0085071729, within(1e-8));
    }

    /** Table 12: DEV 659.73, AIC 673.73. */
    @Test
    void reproducesTheDippersWithSurvivalByOccasion() {
        MarkedAnimals animals = Dippers.pooled();
        CormackJollySeber fit = fit(animals, time(animals, 1), CONSTANT);

        assertThat(-2 * fit.fit().logLikelihood()).isCloseTo(659.7300853, within(1e-6));
        assertThat(fit.fit().aicc().orElseThrow()).isCloseTo(673.9980279, within(1e-6));
        hasValue(probability(fit, "survival", "occasion=1"), 0.625835281, 0.1116454962);
        hasValue(probability(fit, "survival", "occasion=2"), 0.454191321, 0.0666223562);
        hasValue(probability(fit, "survival", "occasion=6"), 0.583298201, 0.0572112691);
        hasValue(probability(fit, "resighting", "intercept"), 0.902066147, 0.0290546266);
    }

    /** Table 12: DEV 660.10, AIC 666.10; page 89: 0.607 (SE 0.031) without and 0.469 (0.043) with a flood, p 0.900 (0.029). */
    @Test
    void reproducesTheDippersWithFloods() {
        MarkedAnimals animals = Dippers.pooled();
        CormackJollySeber fit = fit(animals, List.of(flood(animals)), CONSTANT);

        assertThat(-2 * fit.fit().logLikelihood()).isCloseTo(660.1027746, within(1e-6));
        assertThat(fit.fit().aicc().orElseThrow()).isCloseTo(666.1596466, within(1e-6));
        hasValue(probability(fit, "survival", "flood=0.0"), 0.607095779, 0.0309489111);
        hasValue(probability(fit, "survival", "flood=1.0"), 0.468827164, 0.0432354996);
        assertThat(coefficient(fit, "survival", "intercept").value()).isCloseTo(0.435120699, within(1e-8));
        assertThat(coefficient(fit, "resighting", "intercept").value()).isCloseTo(2.194881141, within(1e-7));
    }

    /** Table 11, in closed form: only the product of the last two can be estimated. AIC 678.95 counts 11 parameters. */
    @Test
    void flagsTheLastPairOfTheFullModel() {
        MarkedAnimals animals = Dippers.pooled();
        CormackJollySeber fit = fit(animals, time(animals, 1), time(animals, 2));

        assertThat(-2 * fit.fit().logLikelihood()).isCloseTo(656.9502119, within(1e-6));
        assertThat(fit.fit().parameters()).isEqualTo(11);
        assertThat(fit.fit().aicc().orElseThrow()).isCloseTo(679.5878931, within(1e-6));
        hasValue(probability(fit, "survival", "occasion=1"), 0.718181818, 0.15554707);
        hasValue(probability(fit, "survival", "occasion=5"), 0.598533411, 0.05605166);
        assertThat(probability(fit, "resighting", "occasion=2").value()).isCloseTo(0.696202532, within(1e-7));
        assertThat(probability(fit, "resighting", "occasion=2").standardError().orElseThrow())
                .isCloseTo(0.166, within(0.5e-3));
        assertThat(probability(fit, "resighting", "occasion=6").value()).isCloseTo(0.932413793, within(1e-7));
        assertThat(probability(fit, "resighting", "occasion=6").standardError().orElseThrow())
                .isCloseTo(0.046, within(0.5e-3));
        assertThat(fit.probabilities().stream()
                        .filter(one -> one.estimate().found().isEmpty())
                        .map(one -> one.part() + " " + one.term()))
                .containsExactly("survival occasion=6", "resighting occasion=7");
        assertThat(fit.products()).hasSize(1);
        hasValue(fit.products().get(0).estimate().found().orElseThrow(), 0.530612245, 0.0504128760);
    }

    /** Models of both sexes, R as above. */
    @Test
    void fitsGroups() {
        MarkedAnimals animals = Dippers.bySex();
        Covariate sex = animals.byGroup("sex", List.of("male", "female"));
        CormackJollySeber survival = fit(animals, List.of(sex), CONSTANT);

        assertThat(-2 * survival.fit().logLikelihood()).isCloseTo(666.6762043, within(1e-6));
        hasValue(probability(survival, "survival", "sex=male"), 0.570263687, 0.0353294020);
        hasValue(probability(survival, "survival", "sex=female"), 0.550735197, 0.0345707176);
        hasValue(probability(survival, "resighting", "intercept"), 0.902690722, 0.0285639716);
        CormackJollySeber both = fit(animals, List.of(sex), List.of(sex));
        assertThat(-2 * both.fit().logLikelihood()).isCloseTo(666.1518130, within(1e-6));
        hasValue(probability(both, "resighting", "sex=female"), 0.881961165, 0.0438407868);
    }

    /** The same by sex and flood, additive. */
    @Test
    void addsCovariates() {
        MarkedAnimals animals = Dippers.bySex();
        Covariate sex = animals.byGroup("sex", List.of("male", "female"));
        CormackJollySeber fit = fit(animals, List.of(sex, flood(animals)), CONSTANT);

        assertThat(-2 * fit.fit().logLikelihood()).isCloseTo(660.0207641, within(1e-6));
        hasValue(coefficient(fit, "survival", "intercept"), 0.4636031779, 0.163768878);
        hasValue(coefficient(fit, "survival", "flood"), -0.5571989589, 0.216571412);
        hasValue(coefficient(fit, "survival", "sex=female"), -0.0573733817, 0.200337002);
        hasValue(coefficient(fit, "resighting", "intercept"), 2.1961349689, 0.324698034);
    }

    /** Invented birds with a flow for each interval and an effort for each occasion, R as above. */
    @Test
    void fitsSeasonCovariatesOfBothParts() {
        TestTable seasons = TestTable.beside(getClass(), "invented-seasons.csv");
        MarkedAnimals animals = MarkedAnimals.of(
                7, List.of(Dippers.of("invented-birds.csv", "F"), Dippers.of("invented-birds.csv", "M")));
        Covariate sex = animals.byGroup("sex", List.of("F", "M"));
        Covariate flow = animals.byInterval(Covariate.numbers("flow", seasons.numbers("flow")));
        Covariate effort = animals.byInterval(Covariate.numbers("effort", seasons.numbers("effort")));
        CormackJollySeber fit = fit(animals, List.of(sex, flow), List.of(effort));

        assertThat(fit.fit().n()).isEqualTo(224);
        assertThat(fit.fit().logLikelihood()).isCloseTo(-191.0377777, within(1e-6));
        hasValue(coefficient(fit, "survival", "intercept"), 0.388014394, 0.257241014);
        hasValue(coefficient(fit, "survival", "sex=M"), -0.220585088, 0.273815937);
        hasValue(coefficient(fit, "survival", "flow"), -0.233053700, 0.285397594);
        hasValue(coefficient(fit, "resighting", "intercept"), -0.883577775, 0.964582518);
        hasValue(coefficient(fit, "resighting", "effort"), 1.431656524, 0.769057603);
    }

    /** Without resighting on an occasion when nobody looked, two years of survival stand between its neighbours. */
    @Test
    void passesOverAnOccasionWithoutLooking() {
        List<EncounterHistory> histories = List.of(
                EncounterHistory.of("1011", 20),
                EncounterHistory.of("1010", 14),
                EncounterHistory.of("1001", 3),
                EncounterHistory.of("1000", 33),
                EncounterHistory.of("0011", 9),
                EncounterHistory.of("0010", 6));
        CormackJollySeber fit =
                fit(new MarkedAnimals(List.of(histories), List.of(true, false, true, true)), CONSTANT, CONSTANT);
        double phi = probability(fit, "survival", "intercept").value();
        double p = probability(fit, "resighting", "intercept").value();

        double never = 1 - phi * phi * (p + (1 - p) * phi * p);
        double last = 1 - phi * p;
        assertThat(fit.fit().logLikelihood())
                .isCloseTo(
                        34 * Math.log(phi * phi * p)
                                + 3 * Math.log(phi * phi * (1 - p) * phi * p)
                                + 33 * Math.log(never)
                                + 29 * Math.log(phi * p)
                                + 20 * Math.log(last),
                        within(1e-9));
    }

    @Test
    void hasOneSidedLimitsWhereEveryAnimalAliveWasSeen() {
        CormackJollySeber fit = fit(
                MarkedAnimals.of(
                        4,
                        List.of(List.of(
                                EncounterHistory.of("1111", 6),
                                EncounterHistory.of("1110", 5),
                                EncounterHistory.of("1100", 4),
                                EncounterHistory.of("1000", 7)))),
                CONSTANT,
                CONSTANT);
        Estimate resighting = probability(fit, "resighting", "intercept");

        assertThat(resighting.value()).isEqualTo(1);
        assertThat(resighting.standardError()).isEmpty();
        assertThat(resighting.upper()).isEqualTo(1);
        assertThat(resighting.lower()).isBetween(0.5, 0.99);
        assertThat(resighting.warnings()).extracting(Caution::reason).contains(Reason.AT_BOUNDARY);
        assertThat(probability(fit, "survival", "intercept").value()).isCloseTo(32.0 / 48, within(1e-6));
    }

    @Test
    void refusesWhatCarriesNoSurvival() {
        assertThat(refusal("1", "1")).isEqualTo(Reason.TOO_FEW_OCCASIONS);
        assertThat(refusal("001", "000")).isEqualTo(Reason.NONE_RELEASED);
        assertThat(refusal("100", "010")).isEqualTo(Reason.NONE_SEEN_AGAIN);
    }

    private static Reason refusal(String one, String other) {
        MarkedAnimals animals = MarkedAnimals.of(
                one.length(), List.of(List.of(EncounterHistory.of(one, 1), EncounterHistory.of(other, 1))));
        Answer<CormackJollySeber> answer = CormackJollySeber.of(animals, CONSTANT, CONSTANT, 0.95);
        return ((Answer.NotEstimable<CormackJollySeber>) answer).because().reason();
    }

    /** With two occasions only the product of survival and resighting can be told. */
    @Test
    void flagsAPairOnTwoOccasions() {
        CormackJollySeber fit = fit(
                MarkedAnimals.of(2, List.of(List.of(EncounterHistory.of("11", 12), EncounterHistory.of("10", 8)))),
                CONSTANT,
                CONSTANT);

        assertThat(fit.probabilities())
                .extracting(Coefficient::estimate)
                .allMatch(one -> one.found().isEmpty());
        assertThat(fit.fit().parameters()).isEqualTo(1);
        Estimate product = fit.products().get(0).estimate().found().orElseThrow();
        assertThat(product.value()).isCloseTo(0.6, within(1e-7));
        assertThat(product.standardError().orElseThrow()).isCloseTo(Math.sqrt(0.6 * 0.4 / 20), within(1e-6));
    }

    /** 300 simulated studies: a 95 % interval misses in more than 25 of them with a probability below 0.01. */
    @Test
    @Tag("slow")
    void coversTheTruthItWasSimulatedFrom() {
        RandomGenerator random = new Well19937c(19);
        int missedSurvival = 0;
        int missedResighting = 0;
        double sum = 0;
        int studies = 300;
        for (int study = 0; study < studies; study++) {
            List<EncounterHistory> histories = new ArrayList<>();
            for (int bird = 0; bird < 150; bird++) {
                histories.add(history(random, bird % 6, 7, 0.55, 0.8));
            }
            CormackJollySeber fit = fit(MarkedAnimals.of(7, List.of(histories)), CONSTANT, CONSTANT);
            Estimate survival = probability(fit, "survival", "intercept");
            Estimate resighting = probability(fit, "resighting", "intercept");
            missedSurvival += survival.lower() <= 0.55 && 0.55 <= survival.upper() ? 0 : 1;
            missedResighting += resighting.lower() <= 0.8 && 0.8 <= resighting.upper() ? 0 : 1;
            sum += survival.value();
        }
        assertThat(missedSurvival).isBetween(4, 25);
        assertThat(missedResighting).isBetween(4, 25);
        assertThat(sum / studies).isCloseTo(0.55, within(0.006));
    }

    private static EncounterHistory history(
            RandomGenerator random, int first, int occasions, double survival, double resighting) {
        StringBuilder digits = new StringBuilder("0".repeat(first)).append('1');
        boolean alive = true;
        for (int occasion = first + 1; occasion < occasions; occasion++) {
            alive = alive && random.nextDouble() < survival;
            digits.append(alive && random.nextDouble() < resighting ? '1' : '0');
        }
        return EncounterHistory.of(digits.toString(), 1);
    }
}

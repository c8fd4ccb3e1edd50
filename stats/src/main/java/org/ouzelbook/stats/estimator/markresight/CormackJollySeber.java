package org.ouzelbook.stats.estimator.markresight;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.likelihood.Coefficient;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.stats.estimator.likelihood.Design;
import org.ouzelbook.stats.estimator.likelihood.LikelihoodFit;
import org.ouzelbook.stats.estimator.likelihood.Logit;
import org.ouzelbook.stats.estimator.likelihood.Parts;

/**
 * Apparent survival and resighting of marked animals, each linear in covariates on the scale of log odds.
 *
 * <p>Apparent survival is the probability to be alive <em>and still in the study area</em> on the next occasion; an animal that left
 * for good counts as dead. Assumes that marks are neither lost nor misread, that all animals of a row have the same
 * probabilities whatever their past, that occasions are short beside the time between them, and that animals are independent.
 * Where survival and resighting both change from occasion to occasion, only the product of the last survival and the last
 * resighting can be estimated: such pairs are found from the rank of the information, and flagged.
 *
 * <p>Source: R. M. Cormack (1964), Biometrika 51:429–438; G. M. Jolly (1965), Biometrika 52:225–247; G. A. F. Seber (1965),
 * Biometrika 52:249–259; J.-D. Lebreton and others (1992), Ecol. Monogr. 62:67–118.
 *
 * @param fit the fitted model
 * @param animals how many animals
 * @param occasions how many occasions
 * @param probabilities survival and resighting of each different row
 * @param products products of a survival and the resighting after it that can be estimated where the two cannot
 * @param deviance twice the log-likelihood below that of a perfect fit of the m-arrays
 * @param goodnessOfFit whether the past of an animal matters, against the assumption
 */
public record CormackJollySeber(
        LikelihoodFit fit,
        long animals,
        int occasions,
        List<Coefficient> probabilities,
        List<Coefficient> products,
        double deviance,
        GoodnessOfFit goodnessOfFit) {
    /** Name of the part that holds survival. */
    public static final String SURVIVAL = "survival";

    /** Name of the part that holds resighting. */
    public static final String RESIGHTING = "resighting";

    /** Name of a survival times the resighting that follows it. */
    public static final String PRODUCT = "survival × resighting";

    /** Copies the lists. */
    public CormackJollySeber {
        probabilities = List.copyOf(probabilities);
        products = List.copyOf(products);
    }

    /**
     * {@return the fit, or why there is none}
     *
     * @param animals the histories
     * @param survival what survival depends on; rows as {@link MarkedAnimals} says
     * @param resighting what resighting depends on
     * @param level level of the limits, between 0 and 1
     */
    public static Answer<CormackJollySeber> of(
            MarkedAnimals animals, List<Covariate> survival, List<Covariate> resighting, double level) {
        if (animals.occasions() < 2) {
            return Answer.notEstimable(Reason.TOO_FEW_OCCASIONS, animals.occasions());
        }
        List<MArray> arrays = animals.arrays();
        long releases = arrays.stream().mapToLong(MArray::releases).sum();
        if (releases == 0) {
            return Answer.notEstimable(Reason.NONE_RELEASED);
        }
        if (arrays.stream().mapToLong(MArray::seenAgain).sum() == 0) {
            return Answer.notEstimable(Reason.NONE_SEEN_AGAIN, releases);
        }
        Answer<Design> alive = Design.of(animals.rows(), Covariate.columns(survival));
        Answer<Design> met = Design.of(animals.rows(), Covariate.columns(resighting));
        for (Answer<Design> design : List.of(alive, met)) {
            if (design instanceof Answer.NotEstimable<Design> not) {
                return new Answer.NotEstimable<>(not.because());
            }
        }
        Parts parts = Parts.of(
                new Parts.Part(SURVIVAL, alive.found().orElseThrow()),
                new Parts.Part(RESIGHTING, met.found().orElseThrow()));
        Answer<LikelihoodFit> fit = LikelihoodFit.of(
                parts,
                new ResightingLikelihood(
                        arrays, alive.found().orElseThrow(), met.found().orElseThrow(), animals.looked()),
                releases,
                Method.CORMACK_JOLLY_SEBER);
        if (fit instanceof Answer.NotEstimable<LikelihoodFit> not) {
            return new Answer.NotEstimable<>(not.because());
        }
        return Answer.of(new Rows(fit.found().orElseThrow(), animals, survival, resighting, level).told(arrays));
    }

    /** The rows of a fitted model, each told once. */
    private record Rows(
            LikelihoodFit fit,
            MarkedAnimals animals,
            List<Covariate> survival,
            List<Covariate> resighting,
            double level) {

        CormackJollySeber told(List<MArray> arrays) {
            double saturated =
                    arrays.stream().mapToDouble(MArray::saturatedLogLikelihood).sum();
            List<Coefficient> probabilities = new ArrayList<>(probabilities(0, SURVIVAL, survival));
            probabilities.addAll(probabilities(1, RESIGHTING, resighting));
            return new CormackJollySeber(
                    fit,
                    animals.animals(),
                    animals.occasions(),
                    probabilities,
                    products(),
                    2 * (saturated - fit.logLikelihood()),
                    GoodnessOfFit.together(animals.groups().stream()
                            .map(group -> GoodnessOfFit.of(animals.occasions(), group))
                            .toList()));
        }

        private Design design(int part) {
            return fit.parts().list().get(part).design();
        }

        private List<Coefficient> probabilities(int part, String name, List<Covariate> covariates) {
            Map<Integer, Coefficient> byPattern = new LinkedHashMap<>();
            for (int row = 0; row < animals.rows(); row++) {
                int at = row;
                byPattern.computeIfAbsent(
                        design(part).pattern(row),
                        pattern -> new Coefficient(
                                name, Covariate.label(covariates, at), fit.probability(part, pattern, level)));
            }
            return List.copyOf(byPattern.values());
        }

        private List<Coefficient> products() {
            List<Coefficient> products = new ArrayList<>();
            for (int row = 0; row < animals.rows(); row++) {
                int alive = design(0).pattern(row);
                int met = design(1).pattern(row);
                if (fit.probability(0, alive, level).found().isEmpty()
                        && fit.probability(1, met, level).found().isEmpty()) {
                    product(row, alive, met).ifPresent(products::add);
                }
            }
            return products.stream().distinct().toList();
        }

        private Optional<Coefficient> product(int row, int alive, int met) {
            double phi = Logit.probability(fit.predictors()[0][alive]);
            double p = Logit.probability(fit.predictors()[1][met]);
            double[][] slopes = {
                new double[design(0).patterns()], new double[design(1).patterns()]
            };
            slopes[0][alive] = phi * p * (1 - phi);
            slopes[1][met] = phi * p * (1 - p);
            return fit.quantity(phi * p, slopes, level)
                    .found()
                    .map(estimate -> new Coefficient(
                            PRODUCT,
                            Covariate.label(survival, row) + " × " + Covariate.label(resighting, row),
                            Answer.of(estimate)));
        }
    }
}

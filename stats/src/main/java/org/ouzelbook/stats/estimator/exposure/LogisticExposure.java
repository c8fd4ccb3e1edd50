package org.ouzelbook.stats.estimator.exposure;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.ReferenceLaw;
import org.ouzelbook.stats.estimator.likelihood.Coefficient;
import org.ouzelbook.stats.estimator.likelihood.Covariate;
import org.ouzelbook.stats.estimator.likelihood.Design;
import org.ouzelbook.stats.estimator.likelihood.LikelihoodFit;
import org.ouzelbook.stats.estimator.likelihood.Logit;
import org.ouzelbook.stats.estimator.likelihood.Parts;

/**
 * Daily survival of nests that depends on stage, date, site or anything else: {@code logit s = Xβ}, and a nest survives an interval
 * with the product of the daily survivals of its days.
 *
 * <p>Standard errors come from the expected information, as Shaffer's do; those from the observed information differ a little. No
 * day of loss need be guessed, so intervals may be long. Assumes that nests of one row are alike, that nests and
 * intervals are independent, and that looks do no harm.
 *
 * <p>Source: T. L. Shaffer (2004), Auk 121:526–540.
 *
 * @param fit the fitted model
 * @param dailySurvival daily survival of each different row
 */
public record LogisticExposure(LikelihoodFit fit, List<Coefficient> dailySurvival) {
    /** Name of the only part. */
    public static final String SURVIVAL = "survival";

    /** Copies the list. */
    public LogisticExposure {
        dailySurvival = List.copyOf(dailySurvival);
    }

    /**
     * {@return the fit, or why there is none}
     *
     * @param nests nests between looks
     * @param rows how many rows the covariates have
     * @param covariates what daily survival depends on
     * @param level level of the limits, between 0 and 1
     */
    public static Answer<LogisticExposure> of(
            List<WatchedNest> nests, int rows, List<Covariate> covariates, double level) {
        if (nests.isEmpty()) {
            return Answer.notEstimable(Reason.NO_NEST_DAYS);
        }
        Answer<Design> design = Design.of(rows, Covariate.columns(covariates));
        if (design instanceof Answer.NotEstimable<Design> not) {
            return new Answer.NotEstimable<>(not.because());
        }
        Design made = design.found().orElseThrow();
        ExposureLikelihood likelihood = new ExposureLikelihood(nests, made);
        Answer<LikelihoodFit> fit = LikelihoodFit.of(
                Parts.of(new Parts.Part(SURVIVAL, made)),
                likelihood,
                likelihood,
                nests.size(),
                Method.LOGISTIC_EXPOSURE);
        if (fit instanceof Answer.NotEstimable<LikelihoodFit> not) {
            return new Answer.NotEstimable<>(not.because());
        }
        LikelihoodFit found = fit.found().orElseThrow();
        Map<Integer, Coefficient> byPattern = new LinkedHashMap<>();
        for (int row = 0; row < rows; row++) {
            int at = row;
            byPattern.computeIfAbsent(
                    made.pattern(row),
                    pattern -> new Coefficient(
                            SURVIVAL, Covariate.label(covariates, at), found.probability(0, pattern, level)));
        }
        return Answer.of(new LogisticExposure(found, List.copyOf(byPattern.values())));
    }

    /**
     * {@return the probability to survive days of several rows: the product of their daily survivals; the standard error is by the
     * delta method, the limits by the delta method on log(−log), so that they stay between 0 and 1}
     *
     * @param days the days of one nest, at least one entry
     * @param level level of the limits, between 0 and 1
     */
    public Answer<Estimate> success(List<WatchedNest.Days> days, double level) {
        Design design = fit.parts().list().get(0).design();
        double logSuccess = 0;
        double[][] slopes = {new double[design.patterns()]};
        for (WatchedNest.Days part : days) {
            int pattern = design.pattern(part.row());
            Answer<Estimate> daily = fit.probability(0, pattern, level);
            if (daily instanceof Answer.NotEstimable<Estimate>) {
                return daily;
            }
            if (daily.found().orElseThrow().standardError().isEmpty()) {
                return Answer.notEstimable(Reason.AT_BOUNDARY);
            }
            double predictor = fit.predictors()[0][pattern];
            logSuccess += part.number() * Logit.logProbability(predictor);
            slopes[0][pattern] += part.number() * Logit.probability(-predictor);
        }
        double errorOfLog = fit.standardError(slopes);
        double half = ReferenceLaw.NORMAL.halfWidth(level) * errorOfLog / -logSuccess;
        return Answer.of(new Estimate(
                Math.exp(logSuccess),
                OptionalDouble.of(Math.exp(logSuccess) * errorOfLog),
                Math.exp(logSuccess * Math.exp(half)),
                Math.exp(logSuccess * Math.exp(-half)),
                level,
                fit.n(),
                Method.LOGISTIC_EXPOSURE,
                List.<Caution>of()));
    }
}

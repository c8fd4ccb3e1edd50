package org.ouzelbook.stats.estimator.exposure;

import java.util.List;
import org.ouzelbook.stats.estimator.likelihood.Design;
import org.ouzelbook.stats.estimator.likelihood.ExpectedInformation;
import org.ouzelbook.stats.estimator.likelihood.Logit;
import org.ouzelbook.stats.estimator.likelihood.PredictorLikelihood;

/**
 * The log-likelihood of nests that survived intervals or were lost in them: the probability to survive an interval is the
 * product of the daily survivals of its days.
 */
final class ExposureLikelihood implements PredictorLikelihood, ExpectedInformation {
    private final List<WatchedNest> nests;
    private final Design design;

    ExposureLikelihood(List<WatchedNest> nests, Design design) {
        this.nests = nests;
        this.design = design;
    }

    @Override
    public double at(double[][] predictors, double[][] slopes) {
        double sum = 0;
        for (WatchedNest nest : nests) {
            double logSurvived = logSurvived(nest, predictors[0]);
            double slope;
            if (nest.survived()) {
                sum += logSurvived;
                slope = 1;
            } else {
                double lost = -Math.expm1(logSurvived);
                sum += Math.log(lost);
                slope = lost == 0 ? 0 : -Math.exp(logSurvived) / lost;
            }
            for (WatchedNest.Days days : nest.days()) {
                int pattern = design.pattern(days.row());
                slopes[0][pattern] += slope * days.number() * Logit.probability(-predictors[0][pattern]);
            }
        }
        return sum;
    }

    /** Lost intervals of several days bend no more long before daily survival comes near 0: at its power of as many days. */
    @Override
    public double farOut() {
        double shortest = nests.stream()
                .filter(nest -> !nest.survived())
                .mapToDouble(nest -> nest.interval().days())
                .min()
                .orElse(1);
        return PredictorLikelihood.super.farOut() / Math.max(1, Math.min(shortest, 8));
    }

    /** With P the probability to survive the interval, (∂P/∂η)(∂P/∂η)ᵀ / P(1 − P) of each nest. */
    @Override
    public void at(double[][] predictors, Weights weights) {
        for (WatchedNest nest : nests) {
            double logSurvived = logSurvived(nest, predictors[0]);
            double lost = -Math.expm1(logSurvived);
            double odds = lost == 0 ? 0 : Math.exp(logSurvived) / lost;
            for (WatchedNest.Days one : nest.days()) {
                for (WatchedNest.Days other : nest.days()) {
                    int pattern = design.pattern(one.row());
                    int otherPattern = design.pattern(other.row());
                    double slopes = one.number()
                            * Logit.probability(-predictors[0][pattern])
                            * other.number()
                            * Logit.probability(-predictors[0][otherPattern]);
                    weights.add(0, pattern, 0, otherPattern, odds * slopes);
                }
            }
        }
    }

    private double logSurvived(WatchedNest nest, double[] predictors) {
        double sum = 0;
        for (WatchedNest.Days days : nest.days()) {
            sum += days.number() * Logit.logProbability(predictors[design.pattern(days.row())]);
        }
        return sum;
    }
}

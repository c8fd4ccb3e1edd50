package org.ouzelbook.stats.estimator.likelihood;

/** A log-likelihood as a function of the linear predictors of a model's parts. */
@FunctionalInterface
public interface PredictorLikelihood {
    /**
     * {@return the log-likelihood}
     *
     * @param predictors the linear predictor by part and pattern; not to be changed
     * @param slopes where the derivative by each predictor is added; all 0 before
     */
    double at(double[][] predictors, double[][] slopes);

    /**
     * {@return how far from 0 a predictor must lie to stand for a probability of 0 or 1, where the likelihood no longer bends}
     */
    default double farOut() {
        return 8;
    }
}

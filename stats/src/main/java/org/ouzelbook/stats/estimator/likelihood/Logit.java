package org.ouzelbook.stats.estimator.likelihood;

/** The logistic link between a linear predictor and a probability. */
public final class Logit {
    private Logit() {}

    /**
     * {@return the probability; 0 or 1 at an infinite predictor}
     *
     * @param predictor log odds
     */
    public static double probability(double predictor) {
        return predictor >= 0 ? 1 / (1 + Math.exp(-predictor)) : Math.exp(predictor) / (1 + Math.exp(predictor));
    }

    /**
     * {@return the log odds; infinite at 0 and 1}
     *
     * @param probability between 0 and 1
     */
    public static double of(double probability) {
        return Math.log(probability) - Math.log1p(-probability);
    }

    /**
     * {@return the logarithm of the probability, exact where that is close to 1}
     *
     * @param predictor log odds
     */
    public static double logProbability(double predictor) {
        return predictor >= 0 ? -Math.log1p(Math.exp(-predictor)) : predictor - Math.log1p(Math.exp(predictor));
    }
}

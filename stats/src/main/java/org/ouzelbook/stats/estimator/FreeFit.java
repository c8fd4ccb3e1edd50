package org.ouzelbook.stats.estimator;

import org.apache.commons.math3.special.Gamma;

/**
 * The fit of a model that gives every count a parameter of its own.
 *
 * @param parameters how many
 * @param logLikelihood the highest that any model can reach
 */
public record FreeFit(int parameters, double logLikelihood) {
    /**
     * {@return the fit of Poisson counts, with the log y! terms}
     *
     * @param counts 0 or more each
     */
    public static FreeFit ofCounts(long... counts) {
        double sum = 0;
        for (double count : counts) {
            sum += (count == 0 ? 0 : count * Math.log(count)) - count - Gamma.logGamma(count + 1);
        }
        return new FreeFit(counts.length, sum);
    }

    /**
     * {@return the fit of a proportion, each trial for itself, so without the binomial coefficient}
     *
     * @param successes 0 or more
     * @param trials no fewer
     */
    public static FreeFit ofTrials(long successes, long trials) {
        return new FreeFit(1, share(successes, trials) + share(trials - successes, trials));
    }

    private static double share(long some, long all) {
        double number = some;
        return some == 0 ? 0 : number * Math.log(number / all);
    }

    /** {@return this and another, independent fit together} */
    public FreeFit and(FreeFit other) {
        return new FreeFit(parameters + other.parameters, logLikelihood + other.logLikelihood);
    }

    /** {@return Akaike's criterion} */
    public double aic() {
        return 2.0 * parameters - 2 * logLikelihood;
    }
}

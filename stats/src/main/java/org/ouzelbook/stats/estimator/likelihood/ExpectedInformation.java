package org.ouzelbook.stats.estimator.likelihood;

/**
 * The expected information of a model by its linear predictors: what the negative second derivatives are on average over data
 * from the fitted model. For models whose published standard errors rest on it.
 */
@FunctionalInterface
public interface ExpectedInformation {
    /**
     * Adds up the information.
     *
     * @param predictors the linear predictor by part and pattern; not to be changed
     * @param weights where each term of it goes
     */
    void at(double[][] predictors, Weights weights);

    /** Takes the terms of the information. */
    @FunctionalInterface
    interface Weights {
        /**
         * Adds a term: the information that two predictors share.
         *
         * @param part part of the one
         * @param pattern its pattern
         * @param otherPart part of the other
         * @param otherPattern its pattern
         * @param weight the term
         */
        void add(int part, int pattern, int otherPart, int otherPattern, double weight);
    }
}

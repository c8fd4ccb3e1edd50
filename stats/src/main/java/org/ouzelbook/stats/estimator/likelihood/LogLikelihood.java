package org.ouzelbook.stats.estimator.likelihood;

/** A log-likelihood as a function of coefficients. */
@FunctionalInterface
interface LogLikelihood {
    /** {@return its value; the gradient is overwritten with its derivatives} */
    double at(double[] point, double[] gradient);
}

package org.ouzelbook.stats.estimator.trend;

import org.apache.commons.math3.linear.RealVector;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.ReferenceLaw;

/**
 * Sums of coefficients with their limits.
 *
 * @param fit whose coefficients
 * @param quality how well it fits
 * @param level of the limits
 */
record Contrasts(SiteEffectsFit fit, TrendFit quality, double level) {
    Estimate of(RealVector contrast) {
        double value = contrast.dotProduct(fit.coefficients());
        double error = Math.sqrt(Math.max(
                0, quality.scale() * contrast.dotProduct(fit.covariance().operate(contrast))));
        return Estimate.symmetric(value, error, law(), level, quality.counts(), quality.method(), quality.cautions());
    }

    ReferenceLaw law() {
        return quality.law();
    }
}

package org.ouzelbook.stats.estimator.trend;

import java.util.Optional;
import org.apache.commons.math3.special.Gamma;
import org.ouzelbook.stats.estimator.trend.CountGrid.Row;
import org.ouzelbook.stats.estimator.trend.TrendSettings.Spread;

/** Fits a basis of seasons as the settings ask: Poisson first, then with what that leaves over. */
final class Fitting {
    private static final int MOST_ROUNDS = 100;
    private static final double SETTLED = 1e-9;
    private static final double SMALLEST_THETA = 1e-4;
    private static final double LARGEST_THETA = 1e6;
    /** With fewer sites a sandwich over them is too thin. Common practice, no source. */
    private static final int SITES_TO_BE_ROBUST = 20;

    private Fitting() {}

    /** {@return the fit, or nothing if it does not converge} */
    static Optional<SiteEffectsFit> of(CountGrid grid, double[][] basis, TrendSettings settings) {
        Optional<SiteEffectsFit> poisson = SiteEffectsFit.of(grid, basis);
        if (settings.spread() == Spread.NEGATIVE_BINOMIAL) {
            return poisson.flatMap(Fitting::negativeBinomial);
        }
        return settings.serial() ? poisson.flatMap(Fitting::serial) : poisson;
    }

    /** By turns the means given θ and θ given the means, both by maximum likelihood. Counts without spread stay Poisson. */
    private static Optional<SiteEffectsFit> negativeBinomial(SiteEffectsFit poisson) {
        Optional<SiteEffectsFit> fit = Optional.of(poisson);
        double before = Double.POSITIVE_INFINITY;
        for (int round = 0; round < MOST_ROUNDS && fit.isPresent(); round++) {
            double theta = theta(fit.get());
            if (theta >= LARGEST_THETA) {
                return Optional.of(poisson);
            }
            fit = fit.get().with(new Variation.NegativeBinomial(theta));
            if (Math.abs(Math.log(theta / before)) < SETTLED) {
                return fit;
            }
            before = theta;
        }
        return Optional.empty();
    }

    /** The root of the likelihood's derivative, which falls through it, by bisection on the log scale. */
    private static double theta(SiteEffectsFit fit) {
        double low = Math.log(SMALLEST_THETA);
        double high = Math.log(LARGEST_THETA);
        while (high - low > SETTLED / 10) {
            double middle = (low + high) / 2;
            if (thetaScore(fit, Math.exp(middle)) > 0) {
                low = middle;
            } else {
                high = middle;
            }
            if (low > Math.log(LARGEST_THETA) - 1e-3) {
                return LARGEST_THETA;
            }
        }
        return Math.exp((low + high) / 2);
    }

    private static double thetaScore(SiteEffectsFit fit, double theta) {
        double score = 0;
        double base = Gamma.digamma(theta);
        for (Row row : fit.grid().rows()) {
            double[] means = fit.means(row);
            for (int j : row.countedSeasons()) {
                double count = row.count(j);
                double shared = theta + means[j];
                score += Gamma.digamma(count + theta)
                        - base
                        - Math.log1p(means[j] / theta)
                        + (means[j] - count) / shared;
            }
        }
        return score;
    }

    /** By turns the means given the correlation and the correlation given the means. */
    private static Optional<SiteEffectsFit> serial(SiteEffectsFit poisson) {
        Optional<SiteEffectsFit> fit = poisson.with(new Variation.Serial(0, poisson.grid()));
        double before = 0;
        for (int round = 0; round < MOST_ROUNDS && fit.isPresent(); round++) {
            double correlation = SerialMoments.of(fit.get()).correlation();
            if (Math.abs(correlation - before) < SETTLED) {
                break;
            }
            before = correlation;
            fit = fit.get().with(new Variation.Serial(correlation, poisson.grid()));
        }
        return fit.map(found -> found.grid().rows().size() < SITES_TO_BE_ROBUST
                ? found
                : found.robust(Math.max(1, SerialMoments.of(found).dispersion())));
    }
}

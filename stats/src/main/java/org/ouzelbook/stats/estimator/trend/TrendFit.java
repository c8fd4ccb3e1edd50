package org.ouzelbook.stats.estimator.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.special.Gamma;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.ReferenceLaw;
import org.ouzelbook.stats.estimator.trend.CountGrid.Row;
import org.ouzelbook.stats.estimator.trend.TrendSettings.Spread;

/**
 * How well a log-linear model fits, and how much its limits were widened.
 *
 * <p>Sites where every count is zero fit perfectly whatever the trend; they count neither as sites nor in {@code counts} nor in
 * the degrees of freedom. Variances are multiplied by {@code scale}: Pearson's X²/df where that is above 1, else 1. Limits then
 * come from Student's t with those degrees of freedom, because the scale was estimated; with scale 1 they come from the normal
 * law.
 *
 * @param sites sites with birds
 * @param emptySites names of sites that were counted and never had any
 * @param counts counts at the sites with birds
 * @param parameters site effects and coefficients
 * @param logLikelihood of Poisson counts, with the log y! terms
 * @param deviance twice the log-likelihood below that of a perfect fit
 * @param pearson Pearson's X²
 * @param dispersion X²/df; empty without degrees of freedom
 * @param scale what variances were multiplied by
 * @param cautions what this says of the answer
 */
public record TrendFit(
        int sites,
        List<String> emptySites,
        long counts,
        int parameters,
        double logLikelihood,
        double deviance,
        double pearson,
        OptionalDouble dispersion,
        double scale,
        List<Caution> cautions) {
    private static final double SURPRISING = 0.05;
    private static final int NAMES_SHOWN = 10;

    /** Copies the lists. */
    public TrendFit {
        emptySites = List.copyOf(emptySites);
        cautions = List.copyOf(cautions);
    }

    static TrendFit of(SiteEffectsFit fit, Spread spread) {
        CountGrid grid = fit.grid();
        double logLikelihood = 0;
        double deviance = 0;
        double pearson = 0;
        for (Row row : grid.rows()) {
            double[] means = fit.means(row);
            for (int j = 0; j < means.length; j++) {
                if (row.counted(j)) {
                    double count = row.count(j);
                    double logRatio = count == 0 ? 0 : Math.log(count / means[j]);
                    logLikelihood +=
                            (count == 0 ? 0 : count * Math.log(means[j])) - means[j] - Gamma.logGamma(count + 1);
                    deviance += 2 * (count * logRatio - (count - means[j]));
                    pearson += (count - means[j]) * (count - means[j]) / means[j];
                }
            }
        }
        int parameters = grid.rows().size() + fit.coefficients().getDimension();
        long counts = grid.informativeCounts();
        long freedom = counts - parameters;
        OptionalDouble dispersion = freedom > 0 ? OptionalDouble.of(pearson / freedom) : OptionalDouble.empty();
        double scale = spread == Spread.POISSON ? 1 : Math.max(1, dispersion.orElse(1));
        List<Caution> cautions = cautions(grid, pearson, freedom, scale);
        return new TrendFit(
                grid.rows().size(),
                grid.emptySites(),
                counts,
                parameters,
                logLikelihood,
                deviance,
                pearson,
                dispersion,
                scale,
                cautions);
    }

    private static List<Caution> cautions(CountGrid grid, double pearson, long freedom, double scale) {
        List<Caution> cautions = new ArrayList<>();
        List<String> empty = grid.emptySites();
        if (!empty.isEmpty()) {
            cautions.add(Caution.of(
                    Reason.EMPTY_SITES, empty.size(), empty.subList(0, Math.min(NAMES_SHOWN, empty.size()))));
        }
        if (freedom == 0) {
            cautions.add(Caution.of(Reason.NO_DEGREES_OF_FREEDOM));
            return cautions;
        }
        double below = new ChiSquaredDistribution(null, freedom).cumulativeProbability(pearson);
        if (scale > 1) {
            cautions.add(Caution.of(Reason.OVERDISPERSED, pearson / freedom));
        } else if (below > 1 - SURPRISING) {
            cautions.add(Caution.of(Reason.OVERDISPERSION_IGNORED, pearson / freedom));
        } else if (below < SURPRISING) {
            cautions.add(Caution.of(Reason.UNDERDISPERSED, pearson / freedom));
        }
        return cautions;
    }

    /** {@return counts less parameters} */
    public long degreesOfFreedom() {
        return counts - parameters;
    }

    /** {@return Akaike's criterion; of Poisson counts, so not to be used where the scale is above 1} */
    public double aic() {
        return 2.0 * parameters - 2 * logLikelihood;
    }

    /** {@return Akaike's criterion for small samples; empty with too few counts for it} */
    public OptionalDouble aicc() {
        double spare = counts - parameters - 1.0;
        return spare > 0
                ? OptionalDouble.of(aic() + 2.0 * parameters * (parameters + 1) / spare)
                : OptionalDouble.empty();
    }

    /** {@return the law that limits come from} */
    ReferenceLaw law() {
        return scale > 1 ? ReferenceLaw.student((double) degreesOfFreedom()) : ReferenceLaw.NORMAL;
    }

    /** {@return the name of the method that this fit used} */
    public Method method() {
        return scale > 1 ? Method.LOG_LINEAR_QUASI_POISSON : Method.LOG_LINEAR_POISSON;
    }
}

package org.ouzelbook.stats.estimator.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.ReferenceLaw;
import org.ouzelbook.stats.estimator.trend.CountGrid.Row;
import org.ouzelbook.stats.estimator.trend.TrendSettings.Spread;

/**
 * How well a log-linear model fits, and how much its limits were widened.
 *
 * <p>Sites where every count is zero fit perfectly whatever the trend; they count neither as sites nor in {@code counts} nor,
 * unless asked for, in the degrees of freedom. Variances are multiplied by {@code scale}: Pearson's X²/df where that is above 1, else 1. Limits then
 * come from Student's t with those degrees of freedom, because the scale was estimated; with scale 1 they come from the normal
 * law. With serial correlation X² is set over what it is expected to be, and limits come from Student's t in any case.
 *
 * @param sites sites with birds
 * @param emptySites names of sites that were counted and never had any
 * @param counts counts at the sites with birds
 * @param parameters site effects and coefficients, and θ where it was estimated; a smooth curve's are no whole number
 * @param degreesOfFreedom counts less parameters
 * @param logLikelihood of Poisson or negative binomial counts, with the log y! terms
 * @param deviance twice the log-likelihood below that of a perfect fit to Poisson counts
 * @param pearson Pearson's X²
 * @param dispersion X²/df; empty without degrees of freedom
 * @param scale what variances were multiplied by
 * @param negativeBinomial 1/θ, the share of the squared mean that the variance has beyond the mean; empty unless it was estimated
 * @param serialCorrelation correlation of counts a season apart; empty unless it was estimated
 * @param robust whether limits hold whatever ties counts of one site together
 * @param law the law that limits come from
 * @param cautions what this says of the answer
 */
public record TrendFit(
        int sites,
        List<String> emptySites,
        long counts,
        double parameters,
        double degreesOfFreedom,
        double logLikelihood,
        double deviance,
        double pearson,
        OptionalDouble dispersion,
        double scale,
        OptionalDouble negativeBinomial,
        OptionalDouble serialCorrelation,
        boolean robust,
        ReferenceLaw law,
        List<Caution> cautions) {
    private static final double SURPRISING = 0.05;
    private static final int NAMES_SHOWN = 10;
    private static final double NO_FREEDOM = 1e-6;

    /** Copies the lists. */
    public TrendFit {
        emptySites = List.copyOf(emptySites);
        cautions = List.copyOf(cautions);
    }

    static TrendFit of(SiteEffectsFit fit, TrendSettings settings) {
        CountGrid grid = fit.grid();
        Variation variation = fit.variation();
        double deviance = 0;
        double pearson = 0;
        for (Row row : grid.rows()) {
            double[] means = fit.means(row);
            for (int j : row.countedSeasons()) {
                double count = row.count(j);
                double logRatio = count == 0 ? 0 : Math.log(count / means[j]);
                deviance += 2 * (count * logRatio - (count - means[j]));
                pearson += (count - means[j]) * (count - means[j]) / variation.variance(means[j]);
            }
        }
        OptionalDouble theta = variation instanceof Variation.NegativeBinomial law
                ? OptionalDouble.of(1 / law.theta())
                : settings.spread() == Spread.NEGATIVE_BINOMIAL ? OptionalDouble.of(0) : OptionalDouble.empty();
        double coefficients = grid.rows().size() + fit.effectiveCoefficients();
        long counts = grid.informativeCounts();
        long spare = settings.emptySitesCount()
                ? grid.emptyCounts() - grid.emptySites().size()
                : 0;
        double freedom = counts - coefficients + spare;
        boolean some = freedom > NO_FREEDOM;
        OptionalDouble dispersion = some ? OptionalDouble.of(pearson / freedom) : OptionalDouble.empty();
        OptionalDouble correlation = OptionalDouble.empty();
        if (variation instanceof Variation.Serial serial) {
            correlation = OptionalDouble.of(serial.correlation());
            dispersion = some ? OptionalDouble.of(SerialMoments.of(fit).dispersion()) : dispersion;
        }
        double scale = settings.spread() == Spread.POISSON ? 1 : Math.max(1, dispersion.orElse(1));
        double lawFreedom = fit.isRobust()
                ? grid.rows().size() - fit.coefficients().getDimension()
                : some && (scale > 1 || correlation.isPresent()) ? freedom : Double.POSITIVE_INFINITY;
        return new TrendFit(
                grid.rows().size(),
                grid.emptySites(),
                counts,
                coefficients + (theta.isPresent() ? 1 : 0),
                freedom,
                fit.logLikelihood(),
                Math.max(0, deviance),
                pearson,
                dispersion,
                scale,
                theta,
                correlation,
                fit.isRobust(),
                ReferenceLaw.student(lawFreedom),
                cautions(grid, dispersion, freedom, scale, theta));
    }

    private static List<Caution> cautions(
            CountGrid grid, OptionalDouble dispersion, double freedom, double scale, OptionalDouble theta) {
        List<Caution> cautions = new ArrayList<>();
        List<String> empty = grid.emptySites();
        if (!empty.isEmpty()) {
            cautions.add(Caution.of(
                    Reason.EMPTY_SITES, empty.size(), empty.subList(0, Math.min(NAMES_SHOWN, empty.size()))));
        }
        if (dispersion.isEmpty()) {
            cautions.add(Caution.of(Reason.NO_DEGREES_OF_FREEDOM));
            return cautions;
        }
        if (theta.isPresent() && theta.getAsDouble() == 0) {
            cautions.add(Caution.of(Reason.NO_NEGATIVE_BINOMIAL_SPREAD));
        }
        double spread = dispersion.getAsDouble();
        double below = new ChiSquaredDistribution(null, freedom).cumulativeProbability(spread * freedom);
        if (scale > 1) {
            cautions.add(Caution.of(Reason.OVERDISPERSED, spread));
        } else if (below > 1 - SURPRISING) {
            cautions.add(Caution.of(Reason.OVERDISPERSION_IGNORED, spread));
        } else if (below < SURPRISING) {
            cautions.add(Caution.of(Reason.UNDERDISPERSED, spread));
        }
        return cautions;
    }

    /** {@return whether counts vary more about the model than the law that they are taken to follow, by a test at 5 %} */
    public boolean isOverdispersed() {
        return dispersion.isPresent()
                && new ChiSquaredDistribution(null, degreesOfFreedom)
                                .cumulativeProbability(dispersion.getAsDouble() * degreesOfFreedom)
                        > 1 - SURPRISING;
    }

    /** {@return Akaike's criterion; of Poisson counts, so not to be used where the scale is above 1} */
    public double aic() {
        return 2 * parameters - 2 * logLikelihood;
    }

    /** {@return Akaike's criterion for small samples; empty with too few counts for it} */
    public OptionalDouble aicc() {
        double spare = counts - parameters - 1.0;
        return spare > 0
                ? OptionalDouble.of(aic() + 2 * parameters * (parameters + 1) / spare)
                : OptionalDouble.empty();
    }

    /** {@return the name of the method that this fit used} */
    public Method method() {
        if (serialCorrelation.isPresent()) {
            return Method.LOG_LINEAR_SERIAL;
        }
        if (negativeBinomial.isPresent()) {
            return Method.LOG_LINEAR_NEGATIVE_BINOMIAL;
        }
        return scale > 1 ? Method.LOG_LINEAR_QUASI_POISSON : Method.LOG_LINEAR_POISSON;
    }
}

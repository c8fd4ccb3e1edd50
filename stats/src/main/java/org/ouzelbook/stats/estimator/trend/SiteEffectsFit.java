package org.ouzelbook.stats.estimator.trend;

import java.util.Optional;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.ouzelbook.stats.estimator.trend.CountGrid.Row;

/**
 * The log-linear model {@code log μᵢⱼ = αᵢ + log kmᵢⱼ + xⱼ·β} with an effect {@code αᵢ} for each site, fitted by Newton's method
 * (Fisher scoring) with step halving.
 *
 * <p>Given β, the site effects are found one by one (see {@link Variation}), for Poisson counts in closed form. With {@code Pᵢ}
 * the working precision of a site's log means and {@code pᵢ = Pᵢ1}, what is left for the seasons is {@code Σᵢ (Pᵢ − pᵢpᵢ′/1′pᵢ)}:
 * for Poisson counts the multinomial information of how each site's birds fall on its seasons. The work grows with sites times
 * seasons squared. For a smooth curve the coefficients pay {@code ½ β·Sβ}.
 *
 * <p>Source: P. McCullagh and J. A. Nelder (1989), Generalized Linear Models, 2nd edition, sections 6.4 and 7.2; with serial
 * correlation the estimating equations of K.-Y. Liang and S. L. Zeger (1986), Biometrika 73:13–22.
 */
final class SiteEffectsFit {
    private static final int MOST_STEPS = 200;
    /** Largest change of a season's log mean in a Newton step that needs no check. */
    private static final double SHORT = 0.1;
    /** Newton's error is squared by each step: from here it leaves the last digits. */
    private static final double NEARLY_THERE = 1e-7;
    /** Relative error of a log-likelihood. */
    private static final double ROUNDING = 1e-13;
    /** Log means of two seasons do not lie this far apart where birds were counted. */
    private static final double WIDEST = 300;

    private final CountGrid grid;
    private final Variation variation;
    private final RealMatrix basis;
    private final RealVector penalty;
    private final RealVector coefficients;
    private final RealMatrix information;
    private final double[] factors;
    private final RealMatrix assumedCovariance;
    private final Optional<RealMatrix> robustCovariance;

    private SiteEffectsFit(
            CountGrid grid,
            Variation variation,
            RealMatrix basis,
            RealVector penalty,
            RealVector coefficients,
            RealMatrix information,
            Optional<RealMatrix> robustCovariance) {
        this.grid = grid;
        this.variation = variation;
        this.basis = basis;
        this.penalty = penalty;
        this.coefficients = coefficients;
        this.information = information;
        this.factors = factors(basis.operate(coefficients));
        this.assumedCovariance = decomposed(penalised(information)).getSolver().getInverse();
        this.robustCovariance = robustCovariance;
    }

    /**
     * {@return the fit to Poisson counts, or nothing if it does not converge}
     *
     * @param grid counts whose likelihood has a maximum
     * @param basis a row for each season, a column for each coefficient
     */
    static Optional<SiteEffectsFit> of(CountGrid grid, double[][] basis) {
        RealMatrix design = MatrixUtils.createRealMatrix(basis);
        RealVector zero = new ArrayRealVector(design.getColumnDimension());
        return new Climb(grid, new Variation.Poisson(), design, zero).from(zero);
    }

    /** {@return the fit with a penalty, a diagonal, and another variation, or nothing if it does not converge} */
    static Optional<SiteEffectsFit> of(CountGrid grid, double[][] basis, RealVector penalty, Variation variation) {
        RealMatrix design = MatrixUtils.createRealMatrix(basis);
        return new Climb(grid, variation, design, penalty).from(new ArrayRealVector(design.getColumnDimension()));
    }

    /** {@return the fit of the same basis if counts vary otherwise, or nothing if it does not converge} */
    Optional<SiteEffectsFit> with(Variation other) {
        return new Climb(grid, other, basis, penalty).from(coefficients);
    }

    /** {@return the fit of the same basis with another penalty, a diagonal, or nothing if it does not converge} */
    Optional<SiteEffectsFit> withPenalty(RealVector other) {
        return new Climb(grid, variation, basis, other).from(coefficients);
    }

    /** {@return the covariance that coefficients would have if all were 0} */
    Optional<RealMatrix> covarianceWithoutEffect() {
        RealVector none = new ArrayRealVector(basis.getRowDimension());
        try {
            RealMatrix flat = Slope.at(grid, variation, none).information(basis);
            return Optional.of(decomposed(penalised(flat)).getSolver().getInverse());
        } catch (NonPositiveDefiniteMatrixException e) {
            return Optional.empty();
        }
    }

    private RealMatrix penalised(RealMatrix unpenalised) {
        return unpenalised.add(MatrixUtils.createRealDiagonalMatrix(penalty.toArray()));
    }

    private static CholeskyDecomposition decomposed(RealMatrix information) {
        return new CholeskyDecomposition(information, 1e-9, Double.MIN_NORMAL);
    }

    /** exp(effect) of each season, up to a factor that leaves nothing to overflow. */
    private static double[] factors(RealVector effects) {
        double highest = effects.getMaxValue();
        return effects.map(effect -> Math.exp(effect - highest)).toArray();
    }

    private static double[] means(Row row, Variation variation, double[] factors) {
        double[] means = new double[factors.length];
        for (int j = 0; j < means.length; j++) {
            means[j] = row.km(j) * factors[j];
        }
        double level = variation.level(row, means);
        for (int j = 0; j < means.length; j++) {
            means[j] *= level;
        }
        return means;
    }

    /** {@return the expected count of every season at one site, counted or not} */
    double[] means(Row row) {
        return means(row, variation, factors);
    }

    CountGrid grid() {
        return grid;
    }

    Variation variation() {
        return variation;
    }

    RealMatrix basis() {
        return basis;
    }

    /** {@return the coefficients} */
    RealVector coefficients() {
        return coefficients;
    }

    /** {@return their covariance: robust if this fit is, else that of counts which vary as assumed} */
    RealMatrix covariance() {
        return robustCovariance.orElse(assumedCovariance);
    }

    /** {@return their covariance if counts vary as assumed} */
    RealMatrix assumedCovariance() {
        return assumedCovariance;
    }

    boolean isRobust() {
        return robustCovariance.isPresent();
    }

    /**
     * {@return this fit with a covariance that holds whatever ties counts of one site together: the sandwich over sites of Liang
     * and Zeger, times G/(G − p) for G sites and p coefficients}
     *
     * @param scale what variances will be multiplied by, which the sandwich holds already
     */
    SiteEffectsFit robust(double scale) {
        int count = coefficients.getDimension();
        RealMatrix middle = MatrixUtils.createRealMatrix(count, count);
        for (Row row : grid.rows()) {
            RealVector score =
                    basis.transpose().operate(new ArrayRealVector(weightedResiduals(row, means(row)), false));
            middle = middle.add(score.outerProduct(score));
        }
        double sites = grid.rows().size();
        RealMatrix sandwich = assumedCovariance
                .multiply(middle)
                .multiply(assumedCovariance)
                .scalarMultiply(sites / (sites - count) / scale);
        return new SiteEffectsFit(grid, variation, basis, penalty, coefficients, information, Optional.of(sandwich));
    }

    private double[] weightedResiduals(Row row, double[] means) {
        double[] working = new double[means.length];
        for (int j : row.countedSeasons()) {
            working[j] = (row.count(j) - means[j]) / means[j];
        }
        return variation.precision(row, means).times(working);
    }

    /** {@return how many coefficients the fit is worth: fewer than it has where they pay a penalty} */
    double effectiveCoefficients() {
        return penalty.getLInfNorm() == 0
                ? coefficients.getDimension()
                : assumedCovariance.multiply(information).getTrace();
    }

    /** {@return the log-likelihood} */
    double logLikelihood() {
        return logLikelihood(grid, variation, basis.operate(coefficients));
    }

    /** {@return ½ β·Sβ} */
    double paid() {
        return paid(penalty, coefficients);
    }

    /** {@return the largest penalty} */
    double smoothing() {
        return penalty.getMaxValue();
    }

    /** {@return the log determinant of the information with the penalty} */
    double logDeterminant() {
        RealMatrix root = decomposed(penalised(information)).getL();
        double sum = 0;
        for (int i = 0; i < root.getRowDimension(); i++) {
            sum += 2 * Math.log(root.getEntry(i, i));
        }
        return sum;
    }

    private static double paid(RealVector penalty, RealVector coefficients) {
        return penalty.ebeMultiply(coefficients).dotProduct(coefficients) / 2;
    }

    private static double logLikelihood(CountGrid grid, Variation variation, RealVector effects) {
        double[] factors = factors(effects);
        double sum = 0;
        for (Row row : grid.rows()) {
            sum += variation.logLikelihood(row, means(row, variation, factors));
        }
        return sum;
    }

    /**
     * {@return the variance of each season's expected total if counts vary as assumed}
     *
     * <p>A site effect has an error of its own, of variance 1/(1′pᵢ) and independent of β, less {@code pᵢ′X δβ/(1′pᵢ)}. So the
     * total {@code Tₜ = Σᵢ μᵢₜ} has variance {@code Σᵢ μᵢₜ²/(1′pᵢ) + c·V·c} with {@code c = Σᵢ μᵢₜ (xₜ − pᵢ′X/(1′pᵢ))}.
     */
    double[] totalVariances() {
        int seasons = basis.getRowDimension();
        double[] own = new double[seasons];
        double[][] shift = new double[seasons][seasons];
        for (Row row : grid.rows()) {
            double[] means = means(row);
            double[] sums = variation.precision(row, means).rowSums();
            double total = sum(sums);
            for (int t = 0; t < seasons; t++) {
                own[t] += means[t] * means[t] / total;
                shift[t][t] += means[t];
                for (int j : row.countedSeasons()) {
                    shift[t][j] -= means[t] * sums[j] / total;
                }
            }
        }
        RealMatrix gradients = MatrixUtils.createRealMatrix(shift).multiply(basis);
        for (int t = 0; t < seasons; t++) {
            RealVector c = gradients.getRowVector(t);
            own[t] += c.dotProduct(covariance().operate(c));
        }
        return own;
    }

    static double sum(double[] numbers) {
        double sum = 0;
        for (double number : numbers) {
            sum += number;
        }
        return sum;
    }

    /** The way up. */
    private record Climb(CountGrid grid, Variation variation, RealMatrix basis, RealVector penalty) {
        Optional<SiteEffectsFit> from(RealVector start) {
            RealVector beta = start;
            try {
                for (int step = 0; step < MOST_STEPS; step++) {
                    Slope slope = Slope.at(grid, variation, basis.operate(beta));
                    RealMatrix information = slope.information(basis);
                    RealVector score =
                            basis.transpose().operate(slope.residuals()).subtract(penalty.ebeMultiply(beta));
                    RealVector move = decomposed(
                                    information.add(MatrixUtils.createRealDiagonalMatrix(penalty.toArray())))
                            .getSolver()
                            .solve(score);
                    double stride = basis.operate(move).getLInfNorm();
                    if (stride > SHORT && !(variation instanceof Variation.Serial)) {
                        move = climbing(beta, move);
                    }
                    beta = beta.add(move);
                    RealVector effects = basis.operate(beta);
                    if (effects.getMaxValue() - effects.getMinValue() > WIDEST || effects.isNaN()) {
                        return Optional.empty();
                    }
                    if (stride < NEARLY_THERE) {
                        RealMatrix there = Slope.at(grid, variation, effects).information(basis);
                        return Optional.of(
                                new SiteEffectsFit(grid, variation, basis, penalty, beta, there, Optional.empty()));
                    }
                }
            } catch (NonPositiveDefiniteMatrixException e) {
                return Optional.empty();
            }
            return Optional.empty();
        }

        /** The move, halved until the likelihood rises, or falls by no more than is lost in rounding. */
        private RealVector climbing(RealVector from, RealVector move) {
            double before = height(from);
            double enough = before - ROUNDING * Math.abs(before);
            RealVector shorter = move;
            for (int halved = 0; halved < MOST_STEPS && !(height(from.add(shorter)) >= enough); halved++) {
                shorter = shorter.mapMultiply(0.5);
            }
            return shorter;
        }

        private double height(RealVector beta) {
            return logLikelihood(grid, variation, basis.operate(beta)) - paid(penalty, beta);
        }
    }

    /**
     * First and second derivatives of the log-likelihood by season effect, site effects profiled out.
     *
     * @param residuals counts less expected counts, weighted, by season
     * @param curvature Σᵢ (Pᵢ − pᵢpᵢ′/1′pᵢ)
     */
    private record Slope(RealVector residuals, RealMatrix curvature) {
        static Slope at(CountGrid grid, Variation variation, RealVector effects) {
            int seasons = effects.getDimension();
            double[] residuals = new double[seasons];
            double[][] curvature = new double[seasons][seasons];
            double[] factors = factors(effects);
            for (Row row : grid.rows()) {
                double[] means = means(row, variation, factors);
                Precision precision = variation.precision(row, means);
                double[] working = new double[seasons];
                for (int j : row.countedSeasons()) {
                    working[j] = (row.count(j) - means[j]) / means[j];
                }
                double[] weighted = precision.times(working);
                double[] sums = precision.rowSums();
                double total = sum(sums);
                double level = sum(weighted) / total;
                precision.addTo(curvature);
                int[] counted = row.countedSeasons();
                for (int i = 0; i < counted.length; i++) {
                    int j = counted[i];
                    residuals[j] += weighted[j] - sums[j] * level;
                    double share = sums[j] / total;
                    double[] line = curvature[j];
                    for (int k = 0; k <= i; k++) {
                        line[counted[k]] -= share * sums[counted[k]];
                    }
                }
            }
            for (int j = 0; j < seasons; j++) {
                for (int k = 0; k < j; k++) {
                    curvature[k][j] = curvature[j][k];
                }
            }
            return new Slope(new ArrayRealVector(residuals, false), MatrixUtils.createRealMatrix(curvature));
        }

        RealMatrix information(RealMatrix design) {
            RealMatrix full = design.transpose().multiply(curvature).multiply(design);
            return full.add(full.transpose()).scalarMultiply(0.5);
        }
    }
}

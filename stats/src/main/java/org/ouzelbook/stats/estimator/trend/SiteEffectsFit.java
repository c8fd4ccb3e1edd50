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
 * Maximum likelihood of the log-linear Poisson model {@code log μᵢⱼ = αᵢ + log kmᵢⱼ + xⱼ·β} with an effect {@code αᵢ} for each
 * site.
 *
 * <p>Given β, the site effects have the closed form {@code exp αᵢ = Yᵢ / Sᵢ}, with {@code Yᵢ} the site's total and {@code Sᵢ =
 * Σⱼ kmᵢⱼ exp(xⱼ·β)} over its counted seasons. What is left is the multinomial likelihood of how each site's birds fall on its
 * seasons, with probabilities {@code pᵢⱼ = kmᵢⱼ exp(xⱼ·β) / Sᵢ}; it is concave, and Newton's method with step halving climbs
 * it. The work grows with sites times seasons squared.
 *
 * <p>Source: P. McCullagh and J. A. Nelder (1989), Generalized Linear Models, 2nd edition, sections 6.4 and 7.2.
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
    private final RealMatrix basis;
    private final RealVector coefficients;
    private final RealMatrix covariance;

    private SiteEffectsFit(CountGrid grid, RealMatrix basis, RealVector coefficients, RealMatrix covariance) {
        this.grid = grid;
        this.basis = basis;
        this.coefficients = coefficients;
        this.covariance = covariance;
    }

    /**
     * {@return the fit, or nothing if it does not converge}
     *
     * @param grid counts whose likelihood has a maximum
     * @param basis a row for each season, a column for each coefficient
     */
    static Optional<SiteEffectsFit> of(CountGrid grid, double[][] basis) {
        RealMatrix design = MatrixUtils.createRealMatrix(basis);
        RealVector beta = new ArrayRealVector(design.getColumnDimension());
        try {
            for (int step = 0; step < MOST_STEPS; step++) {
                Slope slope = Slope.at(grid, design.operate(beta));
                CholeskyDecomposition information = decomposed(slope.information(design));
                RealVector move =
                        information.getSolver().solve(design.transpose().operate(slope.residuals()));
                double stride = design.operate(move).getLInfNorm();
                if (stride > SHORT) {
                    move = climbing(grid, design, beta, move);
                }
                beta = beta.add(move);
                if (stride < NEARLY_THERE) {
                    RealVector effects = design.operate(beta);
                    if (effects.getMaxValue() - effects.getMinValue() > WIDEST) {
                        return Optional.empty();
                    }
                    RealMatrix there = Slope.at(grid, effects).information(design);
                    return Optional.of(new SiteEffectsFit(
                            grid, design, beta, decomposed(there).getSolver().getInverse()));
                }
            }
        } catch (NonPositiveDefiniteMatrixException e) {
            return Optional.empty();
        }
        return Optional.empty();
    }

    /** {@return the move, halved until the likelihood rises, or falls by no more than is lost in rounding} */
    private static RealVector climbing(CountGrid grid, RealMatrix design, RealVector from, RealVector move) {
        double before = logLikelihood(grid, design.operate(from));
        double enough = before - ROUNDING * Math.abs(before);
        RealVector shorter = move;
        while (!(logLikelihood(grid, design.operate(from.add(shorter))) >= enough)) {
            shorter = shorter.mapMultiply(0.5);
        }
        return shorter;
    }

    /** {@return the covariance that coefficients would have if all were 0} */
    static Optional<RealMatrix> covarianceWithoutEffect(CountGrid grid, double[][] basis) {
        RealMatrix design = MatrixUtils.createRealMatrix(basis);
        RealMatrix information =
                Slope.at(grid, new ArrayRealVector(design.getRowDimension())).information(design);
        try {
            return Optional.of(decomposed(information).getSolver().getInverse());
        } catch (NonPositiveDefiniteMatrixException e) {
            return Optional.empty();
        }
    }

    private static CholeskyDecomposition decomposed(RealMatrix information) {
        return new CholeskyDecomposition(information, 1e-9, Double.MIN_NORMAL);
    }

    /** The multinomial part, which is all that depends on β. */
    private static double logLikelihood(CountGrid grid, RealVector effects) {
        double sum = 0;
        for (Row row : grid.rows()) {
            double[] weights = weights(row, effects);
            double logTotal = Math.log(countedSum(row, weights));
            for (int j = 0; j < weights.length; j++) {
                if (row.count(j) > 0) {
                    sum += row.count(j) * (Math.log(weights[j]) - logTotal);
                }
            }
        }
        return sum;
    }

    /** km times exp(effect), up to a factor that leaves nothing to overflow. */
    private static double[] weights(Row row, RealVector effects) {
        double highest = effects.getMaxValue();
        double[] weights = new double[effects.getDimension()];
        for (int j = 0; j < weights.length; j++) {
            weights[j] = row.km(j) * Math.exp(effects.getEntry(j) - highest);
        }
        return weights;
    }

    private static double countedSum(Row row, double[] weights) {
        double sum = 0;
        for (int j = 0; j < weights.length; j++) {
            sum += row.counted(j) ? weights[j] : 0;
        }
        return sum;
    }

    /** {@return the expected count of every season at one site, counted or not} */
    double[] means(Row row) {
        double[] means = weights(row, basis.operate(coefficients));
        double factor = row.total() / countedSum(row, means);
        for (int j = 0; j < means.length; j++) {
            means[j] *= factor;
        }
        return means;
    }

    CountGrid grid() {
        return grid;
    }

    /** {@return the coefficients} */
    RealVector coefficients() {
        return coefficients;
    }

    /** {@return their covariance if counts are Poisson} */
    RealMatrix covariance() {
        return covariance;
    }

    /**
     * {@return the variance of each season's expected total if counts are Poisson}
     *
     * <p>A site effect is {@code log Yᵢ − log Sᵢ(β)}: its own Poisson error of variance 1/Yᵢ, independent of β, less {@code
     * Σⱼ pᵢⱼ xⱼ·δβ}. So the total {@code Tₜ = Σᵢ μᵢₜ} has variance {@code Σᵢ μᵢₜ²/Yᵢ + c·V·c} with {@code c = Σᵢ μᵢₜ (xₜ − Σⱼ
     * pᵢⱼ xⱼ)}.
     */
    double[] totalVariances() {
        int seasons = basis.getRowDimension();
        double[] own = new double[seasons];
        double[][] shift = new double[seasons][seasons];
        for (Row row : grid.rows()) {
            double[] means = means(row);
            double total = row.total();
            for (int t = 0; t < seasons; t++) {
                own[t] += means[t] * means[t] / total;
                shift[t][t] += means[t];
                for (int j = 0; j < seasons; j++) {
                    shift[t][j] -= row.counted(j) ? means[t] * means[j] / total : 0;
                }
            }
        }
        RealMatrix gradients = MatrixUtils.createRealMatrix(shift).multiply(basis);
        for (int t = 0; t < seasons; t++) {
            RealVector c = gradients.getRowVector(t);
            own[t] += c.dotProduct(covariance.operate(c));
        }
        return own;
    }

    /**
     * First and second derivatives of the log-likelihood by season effect.
     *
     * @param residuals counts less expected counts, by season
     * @param curvature Σᵢ Yᵢ (diag pᵢ − pᵢ pᵢ′)
     */
    private record Slope(RealVector residuals, RealMatrix curvature) {
        static Slope at(CountGrid grid, RealVector effects) {
            int seasons = effects.getDimension();
            double[] residuals = new double[seasons];
            double[][] curvature = new double[seasons][seasons];
            for (Row row : grid.rows()) {
                double[] shares = weights(row, effects);
                double sum = countedSum(row, shares);
                double total = row.total();
                for (int j = 0; j < seasons; j++) {
                    shares[j] = row.counted(j) ? shares[j] / sum : 0;
                    residuals[j] += row.counted(j) ? row.count(j) - total * shares[j] : 0;
                    curvature[j][j] += total * shares[j];
                    for (int k = 0; k <= j; k++) {
                        curvature[j][k] -= total * shares[j] * shares[k];
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

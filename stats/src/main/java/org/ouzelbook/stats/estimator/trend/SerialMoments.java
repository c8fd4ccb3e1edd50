package org.ouzelbook.stats.estimator.trend;

import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.RealVector;
import org.ouzelbook.stats.estimator.trend.CountGrid.Row;

/**
 * Spread and serial correlation of what a fit leaves over, by moments.
 *
 * <p>With {@code e} the Pearson residuals and {@code h} the part of their covariance that the fit takes away, {@code E(eₛeₜ) = φ
 * (ρᵏ − hₛₜ)} for successive counts k seasons apart, and {@code E(eₜ²) = φ (1 − hₜₜ)}. Setting the sums equal to what they are
 * expected to be gives φ and ρ. Without h, short series would seem to alternate. A ρ below 0 is taken as 0: limits are never
 * narrowed.
 */
final class SerialMoments {
    private static final double STRONGEST = 0.95;
    private static final double PRECISE = 1e-12;

    private final int[] pairsByGap;
    private double squares;
    private double squaresLeft;
    private double products;
    private double productsTaken;

    private SerialMoments(int seasons) {
        this.pairsByGap = new int[seasons];
    }

    static SerialMoments of(SiteEffectsFit fit) {
        CountGrid grid = fit.grid();
        SerialMoments moments = new SerialMoments(grid.year(grid.size() - 1) - grid.year(0) + 1);
        for (Row row : grid.rows()) {
            moments.add(fit, row);
        }
        return moments;
    }

    private void add(SiteEffectsFit fit, Row row) {
        double[] means = fit.means(row);
        double[] sums = fit.variation().precision(row, means).rowSums();
        double total = SiteEffectsFit.sum(sums);
        RealVector centre = fit.basis()
                .transpose()
                .operate(new ArrayRealVector(sums, false))
                .mapDivide(total);
        int[] counted = row.countedSeasons();
        RealVector before = centre;
        for (int i = 0; i < counted.length; i++) {
            int j = counted[i];
            RealVector own = fit.basis().getRowVector(j).subtract(centre);
            RealVector spread = fit.assumedCovariance().operate(own);
            double residual = (row.count(j) - means[j]) / Math.sqrt(means[j]);
            squares += residual * residual;
            squaresLeft += 1 - means[j] * (1 / total + own.dotProduct(spread));
            if (i > 0) {
                int k = counted[i - 1];
                products += residual * (row.count(k) - means[k]) / Math.sqrt(means[k]);
                productsTaken += Math.sqrt(means[j] * means[k]) * (1 / total + before.dotProduct(spread));
                pairsByGap[fit.grid().year(j) - fit.grid().year(k)]++;
            }
            before = own;
        }
    }

    /** {@return φ; 1 where nothing is left over to judge it by} */
    double dispersion() {
        return squaresLeft > PRECISE ? squares / squaresLeft : 1;
    }

    /** {@return ρ, from 0} */
    double correlation() {
        if (squares <= PRECISE || squaresLeft <= PRECISE) {
            return 0;
        }
        double wanted = products / dispersion() + productsTaken;
        double low = 0;
        double high = STRONGEST;
        while (high - low > PRECISE) {
            double middle = (low + high) / 2;
            if (expected(middle) < wanted) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low < 2 * PRECISE ? 0 : (low + high) / 2;
    }

    private double expected(double correlation) {
        double sum = 0;
        for (int gap = 1; gap < pairsByGap.length; gap++) {
            sum += pairsByGap[gap] * Math.pow(correlation, gap);
        }
        return sum;
    }
}

package org.ouzelbook.stats.estimator.segmentation;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;

/**
 * Values and weights that stand for a beta law in sums: exact for polynomials up to degree nine.
 *
 * <p>Gauss–Jacobi quadrature from the eigenvalues of the Jacobi matrix. Source: G. H. Golub and J. H. Welsch (1969), Math.
 * Comp. 23:221–230.
 */
final class BetaNodes {
    private static final int SIZE = 5;

    /** Values between 0 and 1. */
    final double[] value;

    /** Their weights, which add up to 1. */
    final double[] weight;

    private BetaNodes(double[] value, double[] weight) {
        this.value = value;
        this.weight = weight;
    }

    /**
     * The nodes of a law.
     *
     * @param mean its mean, α / (α + β)
     * @param concentration α + β
     */
    static BetaNodes of(double mean, double concentration) {
        double a = (1 - mean) * concentration - 1;
        double b = mean * concentration - 1;
        double[][] jacobi = new double[SIZE][SIZE];
        for (int i = 0; i < SIZE; i++) {
            double sum = 2 * i + a + b;
            double middle = i == 0 ? (b - a) / (a + b + 2) : (b * b - a * a) / (sum * (sum + 2));
            jacobi[i][i] = (1 + middle) / 2;
            if (i > 0) {
                double square = i == 1
                        ? 4 * (1 + a) * (1 + b) / (Math.pow(2 + a + b, 2) * (3 + a + b))
                        : 4.0 * i * (i + a) * (i + b) * (i + a + b) / (sum * sum * (sum + 1) * (sum - 1));
                jacobi[i][i - 1] = Math.sqrt(square) / 2;
                jacobi[i - 1][i] = jacobi[i][i - 1];
            }
        }
        EigenDecomposition eigen = new EigenDecomposition(new Array2DRowRealMatrix(jacobi));
        double[] value = new double[SIZE];
        double[] weight = new double[SIZE];
        for (int i = 0; i < SIZE; i++) {
            value[i] = Math.max(1e-12, Math.min(1 - 1e-12, eigen.getRealEigenvalue(i)));
            double first = eigen.getEigenvector(i).getEntry(0);
            weight[i] = first * first;
        }
        return new BetaNodes(value, weight);
    }
}

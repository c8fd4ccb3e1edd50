package org.ouzelbook.stats.estimator.trend;

/**
 * A symmetric matrix over seasons in which only the diagonal, and what ties each counted season to the counted one before it,
 * is not 0.
 */
final class Precision {
    private final double[] diagonal;
    private final double[] before;
    private final int[] counted;

    /**
     * Takes the matrix as it is.
     *
     * @param diagonal by season
     * @param before by season
     * @param counted the counted seasons, in order
     */
    Precision(double[] diagonal, double[] before, int[] counted) {
        this.diagonal = diagonal;
        this.before = before;
        this.counted = counted;
    }

    /** The matrix where counts of different seasons have nothing to do with each other. */
    static Precision ofUnrelated(double[] diagonal, int[] counted) {
        return new Precision(diagonal, new double[diagonal.length], counted);
    }

    double diagonal(int season) {
        return diagonal[season];
    }

    double before(int season) {
        return before[season];
    }

    double[] times(double[] vector) {
        double[] product = new double[vector.length];
        for (int i = 0; i < counted.length; i++) {
            int j = counted[i];
            product[j] += diagonal[j] * vector[j];
            if (i > 0) {
                int k = counted[i - 1];
                product[j] += before[j] * vector[k];
                product[k] += before[j] * vector[j];
            }
        }
        return product;
    }

    /** {@return its product with a vector of ones} */
    double[] rowSums() {
        double[] sums = diagonal.clone();
        for (int i = 1; i < counted.length; i++) {
            sums[counted[i]] += before[counted[i]];
            sums[counted[i - 1]] += before[counted[i]];
        }
        return sums;
    }

    /** Adds its diagonal, and what is below that, to another matrix. */
    void addTo(double[][] sum) {
        for (int i = 0; i < counted.length; i++) {
            int j = counted[i];
            sum[j][j] += diagonal[j];
            if (i > 0) {
                sum[j][counted[i - 1]] += before[j];
            }
        }
    }
}

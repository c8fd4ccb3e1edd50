package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/** How a posterior bends near its top: its information, by differences of the gradient, with the ways in which it bends most and least. */
final class Bend {
    /** Length of a difference, in deviations of the prior. */
    private static final double STEP = 0.02;

    /** In no direction is the posterior taken to be wider than a little more than the prior. */
    private static final double FLATTEST = 0.7;

    private final EigenDecomposition information;
    private final double[] deviations;

    private Bend(EigenDecomposition information, double[] deviations) {
        this.information = information;
        this.deviations = deviations;
    }

    /**
     * The bend of a posterior.
     *
     * @param posterior the posterior
     * @param top a point near its top
     * @param deviations standard deviations of the prior, as units
     */
    static Bend of(NaturePosterior.Posterior posterior, double[] top, double[] deviations) {
        int size = top.length;
        RealMatrix bend = new Array2DRowRealMatrix(size, size);
        List<double[]> points = new ArrayList<>(List.of(top));
        for (int j = 0; j < size; j++) {
            double[] beside = top.clone();
            beside[j] += STEP * deviations[j];
            points.add(beside);
        }
        List<Likelihood.Slope> slopes = posterior.slopes(points);
        double[] level = slopes.get(0).gradient();
        for (int j = 0; j < size; j++) {
            double by = STEP * deviations[j];
            double[] gradient = slopes.get(j + 1).gradient();
            for (int i = 0; i < size; i++) {
                double half = -(gradient[i] - level[i]) / by * deviations[i] * deviations[j] / 2;
                bend.addToEntry(i, j, half);
                bend.addToEntry(j, i, half);
            }
        }
        return new Bend(new EigenDecomposition(bend), deviations);
    }

    private double reach(int way) {
        return 1 / Math.sqrt(Math.max(FLATTEST, information.getRealEigenvalue(way)));
    }

    /**
     * A step from the top.
     *
     * @param normal its lengths along the ways of the bend, in standard deviations
     * @param sign 1 or −1
     */
    double[] away(double[] normal, int sign) {
        double[] away = new double[normal.length];
        for (int j = 0; j < normal.length; j++) {
            for (int i = 0; i < normal.length; i++) {
                away[i] += sign
                        * normal[j]
                        * reach(j)
                        * information.getEigenvector(j).getEntry(i)
                        * deviations[i];
            }
        }
        return away;
    }

    /** The inverse of the information. */
    double[][] inverse() {
        int size = deviations.length;
        double[][] inverse = new double[size][size];
        for (int way = 0; way < size; way++) {
            double square = reach(way) * reach(way);
            for (int i = 0; i < size; i++) {
                for (int j = 0; j < size; j++) {
                    inverse[i][j] += square
                            * information.getEigenvector(way).getEntry(i)
                            * information.getEigenvector(way).getEntry(j)
                            * deviations[i]
                            * deviations[j];
                }
            }
        }
        return inverse;
    }
}

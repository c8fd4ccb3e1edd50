package org.ouzelbook.stats.estimator.likelihood;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.EigenDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/** How a log-likelihood bends at a point: its observed information, by directions in which that is diagonal. */
final class Curvature {
    /**
     * A direction that bends less is open: the data say nothing of how far to go. In it a standard error would be above 300,
     * on the scale of log odds.
     */
    static final double OPEN = 1e-5;

    private static final double STEP = 1e-3;

    private final double[] bends;
    private final RealMatrix directions;
    private final double[] gradient;

    private Curvature(double[] bends, RealMatrix directions, double[] gradient) {
        this.bends = bends;
        this.directions = directions;
        this.gradient = gradient;
    }

    /** From central differences of the gradient, with an error of order step⁴. */
    static Curvature at(LogLikelihood likelihood, double[] point) {
        int n = point.length;
        double[][] second = new double[n][];
        for (int i = 0; i < n; i++) {
            double[] near = change(likelihood, point, i, STEP);
            double[] far = change(likelihood, point, i, 2 * STEP);
            for (int j = 0; j < n; j++) {
                near[j] = -(8 * near[j] - far[j]) / (12 * STEP);
            }
            second[i] = near;
        }
        Array2DRowRealMatrix raw = new Array2DRowRealMatrix(second, false);
        RealMatrix information = raw.add(raw.transpose()).scalarMultiply(0.5);
        double[] gradient = new double[n];
        likelihood.at(point, gradient);
        return of(information, gradient);
    }

    /** From the information and the gradient themselves. */
    static Curvature of(RealMatrix information, double[] gradient) {
        EigenDecomposition eigen = new EigenDecomposition(information);
        return new Curvature(eigen.getRealEigenvalues(), eigen.getV(), gradient);
    }

    private static double[] change(LogLikelihood likelihood, double[] point, int i, double step) {
        double[] there = point.clone();
        double[] forward = new double[point.length];
        double[] backward = new double[point.length];
        there[i] = point[i] + step;
        likelihood.at(there, forward);
        there[i] = point[i] - step;
        likelihood.at(there, backward);
        for (int j = 0; j < forward.length; j++) {
            forward[j] -= backward[j];
        }
        return forward;
    }

    /** How many directions there are. */
    int size() {
        return bends.length;
    }

    /** The information in a direction: the eigenvalue. */
    double bend(int direction) {
        return bends[direction];
    }

    /** How much the log-likelihood still rises in a direction. */
    double slope(int direction) {
        return Climb.dot(direction(direction), gradient);
    }

    boolean isOpen(int direction) {
        return bends[direction] < OPEN;
    }

    double[] direction(int direction) {
        return directions.getColumn(direction);
    }

    /** How much of a linear combination of the coefficients lies in open directions, from 0 to 1. */
    double openShare(double[] combination) {
        double open = 0;
        for (int i = 0; i < bends.length; i++) {
            if (isOpen(i)) {
                double share = Climb.dot(direction(i), combination);
                open += share * share;
            }
        }
        double all = Climb.dot(combination, combination);
        return all == 0 ? 0 : Math.sqrt(open / all);
    }

    /** The inverse of the information, with each bend at least {@code least}; open directions are left out if that is 0. */
    RealMatrix inverse(double least) {
        int n = bends.length;
        double[][] inverse = new double[n][n];
        for (int k = 0; k < n; k++) {
            if (least == 0 && isOpen(k)) {
                continue;
            }
            double[] direction = direction(k);
            double bend = Math.max(bends[k], least);
            for (int i = 0; i < n; i++) {
                for (int j = 0; j < n; j++) {
                    inverse[i][j] += direction[i] * direction[j] / bend;
                }
            }
        }
        return new Array2DRowRealMatrix(inverse, false);
    }
}

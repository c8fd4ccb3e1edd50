package org.ouzelbook.stats.estimator.likelihood;

import org.apache.commons.math3.analysis.solvers.BracketingNthOrderBrentSolver;
import org.apache.commons.math3.exception.NoBracketingException;
import org.apache.commons.math3.linear.RealMatrix;
import org.ouzelbook.stats.estimator.ReferenceLaw;

/**
 * Limits of a linear combination of coefficients from its profile likelihood: the values at which the highest log-likelihood
 * with the combination held there is lower than the peak by half of χ²'s quantile on 1 degree of freedom.
 *
 * <p>Source: D. J. Venzon and S. H. Moolgavkar (1988), Applied Statistics 37:87–94 (cited from memory). Where the peak lies at
 * infinity the drop is counted from the height that the likelihood comes near to, and the same quantile is used.
 */
final class ProfileLimits {
    private static final double ACCURACY = 1e-9;
    private static final double HALVED_TO = 1e-6;
    private static final double FARTHEST = 60;
    private static final int MOST_EVALUATIONS = 100;

    private final LogLikelihood likelihood;
    private final Summit summit;
    private final double[] combination;
    private final double drop;
    private final int pivot;
    private final double[][] inverse;
    private double[] last;

    ProfileLimits(LogLikelihood likelihood, Summit summit, double[] combination, double level) {
        this.likelihood = likelihood;
        this.summit = summit;
        this.combination = combination.clone();
        this.drop = ReferenceLaw.NORMAL.halfWidth(level);
        this.pivot = pivot(combination);
        this.inverse = inverseWithoutPivot();
        this.last = summit.place().point();
    }

    /** {@return the limit below the estimate; minus infinity if the likelihood never drops far enough} */
    double lower() {
        return limit(-1);
    }

    /** {@return the limit above the estimate; infinity if the likelihood never drops far enough} */
    double upper() {
        return limit(1);
    }

    private double limit(int side) {
        last = summit.place().point();
        double inside = Climb.dot(combination, last);
        double unit = Math.sqrt(Climb.dot(combination, combination));
        double variance =
                Climb.dot(combination, summit.curvature().inverse(0.01).operate(combination));
        double stride = side * drop * Math.min(Math.sqrt(variance), 5 * unit);
        double estimate = inside;
        double farthest = 2 * Math.abs(estimate) + FARTHEST * unit;
        double outside = inside + stride;
        while (height(outside) < 0) {
            inside = outside;
            outside += stride;
            if (Math.abs(outside - estimate) > farthest) {
                return side * Double.POSITIVE_INFINITY;
            }
            stride *= 1.5;
        }
        double low = Math.min(inside, outside);
        double high = Math.max(inside, outside);
        try {
            return new BracketingNthOrderBrentSolver(ACCURACY, ACCURACY * unit, 5)
                    .solve(MOST_EVALUATIONS, this::height, low, high);
        } catch (NoBracketingException e) {
            return halved(inside, outside, unit);
        }
    }

    /** On a nearly level likelihood climbs may end in different places when repeated; halving comes to an end all the same. */
    private double halved(double from, double to, double unit) {
        double inside = from;
        double outside = to;
        while (Math.abs(outside - inside) > HALVED_TO * unit) {
            double middle = (inside + outside) / 2;
            last = summit.place().point();
            if (height(middle) < 0) {
                inside = middle;
            } else {
                outside = middle;
            }
        }
        return inside;
    }

    /** How far the profile has dropped at a value, as a root that is nearly linear in it; 0 at the limit. */
    private double height(double held) {
        double top = profile(held);
        return Math.sqrt(2 * Math.max(0, summit.value() - top)) - drop;
    }

    private double profile(double held) {
        int n = combination.length;
        double[] full = new double[n];
        double[] gradient = new double[n];
        LogLikelihood others = (point, slope) -> {
            complete(point, held, full);
            double value = likelihood.at(full, gradient);
            for (int i = 0, at = 0; i < n; i++) {
                if (i != pivot) {
                    slope[at++] = gradient[i] - gradient[pivot] * combination[i] / combination[pivot];
                }
            }
            return value;
        };
        double[] fromLast = withoutPivot(last);
        double[] fromSummit = withoutPivot(summit.place().point());
        double[] unused = new double[n - 1];
        boolean nearer = others.at(fromLast, unused) >= others.at(fromSummit, unused);
        Climb.Place top = Climb.from(others, nearer ? fromLast : fromSummit, inverse);
        complete(top.point(), held, full);
        last = full.clone();
        return top.value();
    }

    private double[] withoutPivot(double[] full) {
        double[] others = new double[full.length - 1];
        for (int i = 0, at = 0; i < full.length; i++) {
            if (i != pivot) {
                others[at++] = full[i];
            }
        }
        return others;
    }

    private void complete(double[] others, double held, double[] full) {
        double rest = held;
        for (int i = 0, at = 0; i < full.length; i++) {
            if (i != pivot) {
                full[i] = others[at++];
                rest -= combination[i] * full[i];
            }
        }
        full[pivot] = rest / combination[pivot];
    }

    private static int pivot(double[] combination) {
        int pivot = 0;
        for (int i = 1; i < combination.length; i++) {
            if (Math.abs(combination[i]) > Math.abs(combination[pivot])) {
                pivot = i;
            }
        }
        return pivot;
    }

    /** The covariance of the other coefficients while the combination is held. */
    private double[][] inverseWithoutPivot() {
        RealMatrix covariance = summit.curvature().inverse(0.01);
        double[] with = covariance.operate(combination);
        double variance = Climb.dot(combination, with);
        int n = combination.length;
        double[][] others = new double[n - 1][n - 1];
        for (int i = 0, row = 0; i < n; i++) {
            if (i == pivot) {
                continue;
            }
            for (int j = 0, column = 0; j < n; j++) {
                if (j != pivot) {
                    others[row][column++] = covariance.getEntry(i, j) - with[i] * with[j] / variance;
                }
            }
            row++;
        }
        return others;
    }
}

package org.ouzelbook.stats.estimator.trend;

import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * Cubic B-splines on equal stretches of time, written as a straight line and what bends it: {@code Z = B D′(DD′)⁻¹} with D the
 * second differences of neighbouring coefficients. So the penalty on second differences is one on the squares of Z's
 * coefficients.
 *
 * <p>Source: P. H. C. Eilers and B. D. Marx (1996), Stat. Sci. 11:89–121; this form: I. D. Currie and M. Durbán (2002), Stat.
 * Model. 2:333–349 (cited from memory).
 */
final class SplineBasis {
    private static final int MOST_STRETCHES = 20;
    private static final int DEGREE = 3;

    private final double first;
    private final double width;
    private final int stretches;
    private final RealMatrix bends;

    private SplineBasis(double first, double width, int stretches, RealMatrix bends) {
        this.first = first;
        this.width = width;
        this.stretches = stretches;
        this.bends = bends;
    }

    /**
     * {@return the basis}
     *
     * @param first the first year
     * @param last the last year, later
     * @param seasons how many seasons were counted: half as many stretches, 20 at most
     */
    static SplineBasis of(double first, double last, int seasons) {
        int stretches = Math.max(1, Math.min(MOST_STRETCHES, seasons / 2));
        int splines = stretches + DEGREE;
        RealMatrix differences = MatrixUtils.createRealMatrix(splines - 2, splines);
        for (int i = 0; i < splines - 2; i++) {
            differences.setEntry(i, i, 1);
            differences.setEntry(i, i + 1, -2);
            differences.setEntry(i, i + 2, 1);
        }
        RealMatrix square = differences.multiply(differences.transpose());
        RealMatrix bends = differences
                .transpose()
                .multiply(new LUDecomposition(square).getSolver().getInverse());
        return new SplineBasis(first, (last - first) / stretches, stretches, bends);
    }

    /** {@return how many coefficients: the slope first, then the bends} */
    int size() {
        return bends.getColumnDimension() + 1;
    }

    /** {@return the row of a point in time, between the first and the last year} */
    double[] at(double year) {
        double[] bent = bends.preMultiply(splines(year));
        double[] row = new double[bent.length + 1];
        row[0] = year - first;
        System.arraycopy(bent, 0, row, 1, bent.length);
        return row;
    }

    /** The recursion of C. de Boor on equal knots. */
    private double[] splines(double year) {
        double place = (year - first) / width;
        int stretch = Math.min(stretches - 1, Math.max(0, (int) Math.floor(place)));
        double[] values = new double[stretches + DEGREE];
        double[] local = new double[DEGREE + 1];
        local[0] = 1;
        double within = place - stretch;
        for (int degree = 1; degree <= DEGREE; degree++) {
            double carried = 0;
            for (int i = 0; i < degree; i++) {
                double right = i + 1 - within;
                double left = within + degree - 1 - i;
                double part = local[i] / (right + left);
                local[i] = carried + right * part;
                carried = left * part;
            }
            local[degree] = carried;
        }
        System.arraycopy(local, 0, values, stretch, DEGREE + 1);
        return values;
    }
}

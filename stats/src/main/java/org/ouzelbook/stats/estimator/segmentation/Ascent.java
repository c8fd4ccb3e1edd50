package org.ouzelbook.stats.estimator.segmentation;

/**
 * The way up a posterior by quasi-Newton steps (Broyden, Fletcher, Goldfarb and Shanno: J. Nocedal and S. J. Wright (2006), Numerical
 * Optimization, 2nd ed., algorithm 6.1; from memory). It stops where a further step would gain next to nothing: each look at
 * the posterior costs a pass over all lines.
 */
final class Ascent {
    private static final int MOST_STEPS = 60;
    private static final int MOST_TRIALS = 12;

    private final double[] point;

    /** What it learnt of the inverse of the information. */
    private final double[][] inverse;

    /** A length that counts as long, for each number. */
    private final double[] unit;

    private Ascent(double[] point, double[][] inverse, double[] unit) {
        this.point = point;
        this.inverse = inverse;
        this.unit = unit;
    }

    /**
     * The way from a place of which nothing is known.
     *
     * @param start the place
     * @param unit a length that counts as long, for each number
     */
    static Ascent from(double[] start, double[] unit) {
        double[][] inverse = new double[start.length][start.length];
        for (int j = 0; j < start.length; j++) {
            inverse[j][j] = unit[j] * unit[j] / 10;
        }
        return new Ascent(start, inverse, unit);
    }

    /** The same place, with the inverse of the information there. */
    Ascent knowing(double[][] information) {
        return new Ascent(point, information, unit);
    }

    /** Where it stopped. */
    double[] point() {
        return point;
    }

    /**
     * Goes on from here.
     *
     * @param posterior what to climb
     * @param enough a step that promises less than this, in units of the log posterior, is not taken
     */
    Ascent goingOn(NaturePosterior.Posterior posterior, double enough) {
        double[] here = point.clone();
        double[][] bend = new double[here.length][];
        for (int i = 0; i < here.length; i++) {
            bend[i] = inverse[i].clone();
        }
        Likelihood.Slope at = posterior.slope(here);
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] way = times(bend, at.gradient());
            double rise = dot(way, at.gradient());
            if (!(rise > enough)) {
                break;
            }
            double pace = Math.min(1, 1 / longest(way));
            double[] next = here;
            Likelihood.Slope there = at;
            for (int trial = 0; trial < MOST_TRIALS; trial++, pace /= 2.5) {
                next = moved(here, way, pace);
                there = posterior.slope(next);
                if (there.log() > at.log() + 1e-4 * pace * rise) {
                    break;
                }
            }
            if (!(there.log() > at.log())) {
                break;
            }
            learn(bend, here, next, at.gradient(), there.gradient());
            here = next;
            at = there;
        }
        return new Ascent(here, bend, unit);
    }

    private double longest(double[] way) {
        double longest = 1e-12;
        for (int j = 0; j < way.length; j++) {
            longest = Math.max(longest, Math.abs(way[j]) / unit[j]);
        }
        return longest;
    }

    private static void learn(double[][] inverse, double[] here, double[] next, double[] slope, double[] nextSlope) {
        int size = here.length;
        double[] step = new double[size];
        double[] bent = new double[size];
        for (int j = 0; j < size; j++) {
            step[j] = next[j] - here[j];
            bent[j] = slope[j] - nextSlope[j];
        }
        double curvature = dot(step, bent);
        if (!(curvature > 1e-10)) {
            return;
        }
        double[] image = times(inverse, bent);
        double stretch = (1 + dot(bent, image) / curvature) / curvature;
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                inverse[i][j] += stretch * step[i] * step[j] - (image[i] * step[j] + step[i] * image[j]) / curvature;
            }
        }
    }

    private static double[] times(double[][] matrix, double[] vector) {
        double[] product = new double[vector.length];
        for (int i = 0; i < vector.length; i++) {
            product[i] = dot(matrix[i], vector);
        }
        return product;
    }

    private static double dot(double[] one, double[] other) {
        double sum = 0;
        for (int j = 0; j < one.length; j++) {
            sum += one[j] * other[j];
        }
        return sum;
    }

    private static double[] moved(double[] from, double[] way, double pace) {
        double[] to = from.clone();
        for (int j = 0; j < to.length; j++) {
            to[j] += pace * way[j];
        }
        return to;
    }
}

package org.ouzelbook.stats.estimator.likelihood;

/**
 * The way up a log-likelihood from a start to the nearest peak, by the quasi-Newton method of Broyden, Fletcher, Goldfarb and
 * Shanno: J. Nocedal and S. J. Wright (2006), Numerical Optimization, 2nd ed., algorithm 6.1, with the bracketing line search of
 * A. S. Lewis and M. L. Overton (2013), Math. Program. 141:135–163 (both cited from memory).
 */
final class Climb {
    private static final int MOST_STEPS = 500;
    private static final int MOST_TRIALS = 60;
    private static final double LEVEL_GRADIENT = 1e-8;
    /** A climb whose last steps gained no more leaves the rest to Newton's method. */
    private static final double LEAST_GAIN = 1e-8;

    private static final int SMALL_GAINS = 3;
    /** A rise by this share of the log-likelihood is lost in its rounding. */
    private static final double ROUNDING = 1e-14;

    private static final double LONGEST_STEP = 6;
    private static final double ENOUGH_GAIN = 1e-4;
    private static final double ENOUGH_BEND = 0.9;

    private final LogLikelihood likelihood;
    private double[] point;
    private double[] gradient;
    private double value;
    /** Approximates the inverse of the information. */
    private double[][] inverse;

    private boolean fresh;

    private Climb(LogLikelihood likelihood, double[] start, double[][] inverse) {
        this.likelihood = likelihood;
        this.point = start.clone();
        this.gradient = new double[start.length];
        this.value = likelihood.at(point, gradient);
        this.inverse = inverse;
    }

    /** A point and the log-likelihood there. */
    static final class Place {
        private final double[] point;
        private final double value;

        Place(double[] point, double value) {
            this.point = point;
            this.value = value;
        }

        double[] point() {
            return point;
        }

        double value() {
            return value;
        }
    }

    /** {@return where a climb ends that begins without knowing how the slope bends} */
    static Place from(LogLikelihood likelihood, double[] start) {
        Climb climb = new Climb(likelihood, start, identity(start.length));
        climb.fresh = true;
        return climb.up(LEAST_GAIN);
    }

    /** {@return where a climb ends that begins with an approximate inverse of the information} */
    static Place from(LogLikelihood likelihood, double[] start, double[][] inverse) {
        double[][] copy = new double[inverse.length][];
        for (int i = 0; i < copy.length; i++) {
            copy[i] = inverse[i].clone();
        }
        return new Climb(likelihood, start, copy).up(0);
    }

    private Place up(double leastGain) {
        int small = 0;
        for (int step = 0; step < MOST_STEPS && largest(gradient) > LEVEL_GRADIENT; step++) {
            double before = value;
            if (!stride() && !startAfresh()) {
                break;
            }
            small = value - before < leastGain ? small + 1 : 0;
            if (small == SMALL_GAINS) {
                break;
            }
        }
        return new Place(point, value);
    }

    /** Forgets the bend of the slope; false if nothing was known of it. */
    private boolean startAfresh() {
        boolean knew = !fresh;
        inverse = identity(point.length);
        fresh = true;
        return knew;
    }

    /** One step up; false if there is none. */
    private boolean stride() {
        double[] direction = times(inverse, gradient);
        double rise = dot(direction, gradient);
        if (!(rise > 0)) {
            return false;
        }
        double length = largest(direction);
        double longest = fresh ? 1 : LONGEST_STEP;
        double shrink = fresh || length > longest ? longest / length : 1;
        double low = 0;
        double high = Double.POSITIVE_INFINITY;
        double pace = shrink;
        double lost = ROUNDING * (1 + Math.abs(value));
        double[] next = new double[point.length];
        double[] nextGradient = new double[point.length];
        for (int trial = 0; trial < MOST_TRIALS && pace * rise > lost; trial++) {
            for (int i = 0; i < next.length; i++) {
                next[i] = point[i] + pace * direction[i];
            }
            double nextValue = likelihood.at(next, nextGradient);
            if (!(nextValue >= value + ENOUGH_GAIN * pace * rise)) {
                high = pace;
            } else if (dot(nextGradient, direction) > ENOUGH_BEND * rise && pace < 4 * shrink) {
                low = pace;
            } else {
                learn(next, nextGradient);
                point = next;
                gradient = nextGradient;
                value = nextValue;
                return true;
            }
            pace = high < Double.POSITIVE_INFINITY ? (low + high) / 2 : 2 * pace;
        }
        return false;
    }

    private void learn(double[] next, double[] nextGradient) {
        int n = point.length;
        double[] moved = new double[n];
        double[] bent = new double[n];
        for (int i = 0; i < n; i++) {
            moved[i] = next[i] - point[i];
            bent[i] = gradient[i] - nextGradient[i];
        }
        double curvature = dot(moved, bent);
        if (!(curvature > 1e-14 * Math.sqrt(dot(moved, moved) * dot(bent, bent)))) {
            return;
        }
        if (fresh) {
            double scale = curvature / dot(bent, bent);
            for (int i = 0; i < n; i++) {
                inverse[i][i] = scale;
            }
            fresh = false;
        }
        double[] image = times(inverse, bent);
        double factor = (1 + dot(bent, image) / curvature) / curvature;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                inverse[i][j] += factor * moved[i] * moved[j] - (image[i] * moved[j] + moved[i] * image[j]) / curvature;
            }
        }
    }

    static double largest(double[] numbers) {
        double largest = 0;
        for (double number : numbers) {
            largest = Math.max(largest, Math.abs(number));
        }
        return largest;
    }

    static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    private static double[] times(double[][] matrix, double[] vector) {
        double[] image = new double[vector.length];
        for (int i = 0; i < image.length; i++) {
            image[i] = dot(matrix[i], vector);
        }
        return image;
    }

    private static double[][] identity(int size) {
        double[][] identity = new double[size][size];
        for (int i = 0; i < size; i++) {
            identity[i][i] = 1;
        }
        return identity;
    }
}

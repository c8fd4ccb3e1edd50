package org.ouzelbook.stats.estimator.segmentation;

import java.util.Arrays;

/** Probabilities of 0, 1, 2 … that are gathered bit by bit; those beyond what can matter are left out. */
final class NumberLaw {
    /** Numbers less probable than this, on the way, are left out. */
    private static final double NEGLIGIBLE = 1e-14;

    /** Nothing there: certainly 0. */
    static final NumberLaw ZERO = new NumberLaw(new double[] {1}, 1);

    private double[] probabilities;
    private int size;

    NumberLaw() {
        this(new double[8], 0);
    }

    private NumberLaw(double[] probabilities, int size) {
        this.probabilities = probabilities;
        this.size = size;
    }

    /** Adds another law with a weight, its numbers raised. */
    void add(double weight, NumberLaw other, int more) {
        if (!(weight > 0)) {
            return;
        }
        int needed = other.size + more;
        if (needed > probabilities.length) {
            probabilities = Arrays.copyOf(probabilities, Math.max(needed, 2 * probabilities.length));
        }
        for (int k = 0; k < other.size; k++) {
            probabilities[k + more] += weight * other.probabilities[k];
        }
        size = Math.max(size, needed);
        while (size > 1 && probabilities[size - 1] < NEGLIGIBLE) {
            probabilities[--size] = 0;
        }
    }

    /** The law of the sum of two independent numbers. */
    NumberLaw plus(NumberLaw other) {
        if (this == ZERO || other == ZERO) {
            return this == ZERO ? other : this;
        }
        NumberLaw sum = new NumberLaw();
        for (int k = 0; k < other.size; k++) {
            if (other.probabilities[k] > NEGLIGIBLE) {
                sum.add(other.probabilities[k], this, k);
            }
        }
        return sum;
    }

    /** The probabilities of 0, 1, 2 … up to a number. */
    double[] upTo(int most) {
        return Arrays.copyOf(Arrays.copyOf(probabilities, size), most + 1);
    }
}

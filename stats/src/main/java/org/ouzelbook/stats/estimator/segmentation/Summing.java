package org.ouzelbook.stats.estimator.segmentation;

import java.util.function.IntToDoubleFunction;

/** How weights known by their logarithms are put together: added up, or by taking the largest, as for the most probable map. */
enum Summing {
    ALL,
    BEST;

    private static final double NONE = Double.NEGATIVE_INFINITY;

    double of(double one, double other) {
        return this == ALL ? LogSum.of(one, other) : Math.max(one, other);
    }

    double of(int size, IntToDoubleFunction terms) {
        double[] all = new double[size];
        for (int i = 0; i < size; i++) {
            all[i] = terms.applyAsDouble(i);
        }
        return of(all, size);
    }

    double of(double[] terms, int size) {
        double highest = NONE;
        for (int i = 0; i < size; i++) {
            highest = Math.max(highest, terms[i]);
        }
        if (highest == NONE || this == BEST) {
            return highest;
        }
        double sum = 0;
        for (int i = 0; i < size; i++) {
            double below = terms[i] - highest;
            if (below > -40) {
                sum += Math.exp(below);
            }
        }
        return highest + Math.log(sum);
    }
}

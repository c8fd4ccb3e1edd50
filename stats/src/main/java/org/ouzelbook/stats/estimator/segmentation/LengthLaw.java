package org.ouzelbook.stats.estimator.segmentation;

import org.apache.commons.math3.special.Erf;

/** Log-normal lengths of territories in whole cells, between the shortest and the longest that a grain allows. */
final class LengthLaw {
    private LengthLaw() {}

    /** The logarithms of the probabilities of 0, 1, 2 … cells. */
    static double[] of(Nature nature, Cells cells) {
        double[] law = new double[cells.longest + 1];
        double sum = 0;
        double aboveLower = above(nature, (cells.shortest - 0.5) * cells.width);
        for (int n = cells.shortest; n <= cells.longest; n++) {
            double aboveUpper = above(nature, (n + 0.5) * cells.width);
            law[n] = aboveLower - aboveUpper;
            aboveLower = aboveUpper;
            // Far out in a tail differences vanish; the density does not.
            if (!(law[n] > 1e-12)) {
                law[n] = density(nature, n * cells.width) * cells.width;
            }
            sum += law[n];
        }
        for (int n = 0; n <= cells.longest; n++) {
            law[n] = Math.log(law[n] / sum);
        }
        return law;
    }

    private static double z(Nature nature, double metres) {
        return Math.log(metres / nature.medianLength()) / nature.lengthLogSd();
    }

    private static double above(Nature nature, double metres) {
        return 0.5 * Erf.erfc(z(nature, metres) / Math.sqrt(2));
    }

    private static double density(Nature nature, double metres) {
        double z = z(nature, metres);
        return Math.max(1e-300, Math.exp(-z * z / 2) / (Math.sqrt(2 * Math.PI) * nature.lengthLogSd() * metres));
    }
}

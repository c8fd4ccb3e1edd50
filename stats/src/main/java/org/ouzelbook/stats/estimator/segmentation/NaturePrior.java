package org.ouzelbook.stats.estimator.segmentation;

/**
 * What is believed of a nature before any record is read: independent normal laws, at the point of each number.
 *
 * @param centre the middle of each law
 * @param logSd the standard deviation of each, on the scale of {@link Nature#point}
 */
public record NaturePrior(Nature centre, Nature logSd) {
    double log(double[] point) {
        double[] middle = centre.point();
        double[] sd = deviations();
        double sum = 0;
        for (int j = 0; j < Nature.SIZE; j++) {
            double z = (point[j] - middle[j]) / sd[j];
            sum -= z * z / 2;
        }
        return sum;
    }

    double[] gradient(double[] point) {
        double[] middle = centre.point();
        double[] sd = deviations();
        double[] gradient = new double[Nature.SIZE];
        for (int j = 0; j < Nature.SIZE; j++) {
            gradient[j] = -(point[j] - middle[j]) / (sd[j] * sd[j]);
        }
        return gradient;
    }

    double[] deviations() {
        return new double[] {
            logSd.medianLength(), logSd.lengthLogSd(), logSd.abutting(), logSd.vacantLength(), logSd.detection(),
            logSd.concentration(), logSd.repeats(), logSd.evenUse(), logSd.focalSpread(), logSd.strays(),
            logSd.noting()
        };
    }
}

package org.ouzelbook.stats.estimator.segmentation;

/**
 * What the model needs to know of a species and its surveyors.
 *
 * @param medianLength median length of a territory, in metres
 * @param lengthLogSd standard deviation of the logarithm of that length
 * @param abutting probability that the next territory begins where one ends
 * @param vacantLength mean length of a vacant stretch between two, in metres
 * @param detection mean probability that a visit finds a pair
 * @param concentration how alike pairs are in that: α + β of the beta law of their probabilities
 * @param repeats parameter of the zero-truncated Poisson law of the registrations that a found pair gives on one visit
 * @param evenUse share of registrations that lie anywhere in the territory
 * @param focalSpread standard deviation of the others about one place of the territory, in metres
 * @param strays registrations per km and visit of birds without a territory
 * @param noting probability that two birds that are no pair, met near each other on one visit, are noted as seen at once
 */
public record Nature(
        double medianLength,
        double lengthLogSd,
        double abutting,
        double vacantLength,
        double detection,
        double concentration,
        double repeats,
        double evenUse,
        double focalSpread,
        double strays,
        double noting) {
    /** How many numbers there are. */
    public static final int SIZE = 11;

    /** Where the strays stand in a point. */
    static final int STRAYS = 9;

    /** Where the noting stands. */
    static final int NOTING = 10;

    /**
     * {@return the nature that stands at a point of the space in which each number can be any: logarithms, and log odds of the
     * four probabilities}
     *
     * @param point its {@link #SIZE} coordinates
     */
    public static Nature at(double... point) {
        return new Nature(
                Math.exp(point[0]),
                Math.exp(point[1]),
                probability(point[2]),
                Math.exp(point[3]),
                probability(point[4]),
                Math.exp(point[5]),
                Math.exp(point[6]),
                probability(point[7]),
                Math.exp(point[8]),
                Math.exp(point[STRAYS]),
                probability(point[NOTING]));
    }

    /** {@return the point at which this nature stands} */
    public double[] point() {
        return new double[] {
            Math.log(medianLength),
            Math.log(lengthLogSd),
            logOdds(abutting),
            Math.log(vacantLength),
            logOdds(detection),
            Math.log(concentration),
            Math.log(repeats),
            logOdds(evenUse),
            Math.log(focalSpread),
            Math.log(strays),
            logOdds(noting)
        };
    }

    private static double probability(double logOdds) {
        return 1 / (1 + Math.exp(-logOdds));
    }

    private static double logOdds(double probability) {
        return Math.log(probability / (1 - probability));
    }
}

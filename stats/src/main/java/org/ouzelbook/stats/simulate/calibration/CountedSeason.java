package org.ouzelbook.stats.simulate.calibration;

import java.util.Optional;

/**
 * What was counted in one season, and the truth.
 *
 * @param truth territories that there were
 * @param byRule territories by the mapping rules
 * @param byModel the model's count; empty if it gave none
 */
record CountedSeason(int truth, int byRule, Optional<ModelCount> byModel) {

    /**
     * A count with limits.
     *
     * @param estimate the expected number
     * @param lower lower limit
     * @param upper upper limit
     */
    record ModelCount(double estimate, double lower, double upper) {
        boolean holds(int truth) {
            return lower <= truth && truth <= upper;
        }
    }
}

package org.ouzelbook.stats.estimator.exposure;

import java.util.List;

/**
 * A nest between two looks, with its days sorted by what daily survival may depend on.
 *
 * @param days its days; at least one entry
 * @param survived whether it was alive at the second look
 */
public record WatchedNest(List<Days> days, boolean survived) {
    /**
     * Copies the list.
     *
     * @throws IllegalArgumentException if there are no days
     */
    public WatchedNest {
        days = List.copyOf(days);
        if (days.isEmpty()) {
            throw new IllegalArgumentException("A nest is watched for some days");
        }
    }

    /**
     * Days under the same conditions.
     *
     * @param row the row of the design that holds the conditions, from 0
     * @param number how many days; above 0
     */
    public record Days(int row, double number) {
        /**
         * Checks the number.
         *
         * @throws IllegalArgumentException if it is not finite and above 0
         */
        public Days {
            if (!(number > 0 && number < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("Days are more than 0, but were " + number);
            }
        }
    }

    /** {@return the interval as a whole} */
    public WatchedInterval interval() {
        return new WatchedInterval(days.stream().mapToDouble(Days::number).sum(), survived);
    }
}

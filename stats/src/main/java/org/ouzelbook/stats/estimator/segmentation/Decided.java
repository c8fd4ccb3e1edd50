package org.ouzelbook.stats.estimator.segmentation;

import java.util.List;

/**
 * What somebody who knows better has settled of a line: it goes before the length, before walls and before pairs apart.
 *
 * @param limits positions, in metres, that no cluster reaches across; a point on one may lie on either side
 * @param together spans whose points are all in one cluster
 * @param vacant spans that no accepted cluster lies in or reaches into
 */
public record Decided(List<Double> limits, List<Span> together, List<Span> vacant) {
    /** Nothing is settled. */
    public static final Decided NOTHING = new Decided(List.of(), List.of(), List.of());

    /**
     * Copies the lists and checks that all can be followed.
     *
     * @throws IllegalArgumentException if a limit lies inside a span that is together, or such a span overlaps a vacant one
     */
    public Decided {
        limits = List.copyOf(limits);
        together = List.copyOf(together);
        vacant = List.copyOf(vacant);
        for (Span one : together) {
            for (double limit : limits) {
                if (one.lower < limit && limit < one.upper) {
                    throw new IllegalArgumentException("A limit at " + limit + " m lies inside " + one);
                }
            }
            for (Span empty : vacant) {
                if (Math.max(one.lower, empty.lower) < Math.min(one.upper, empty.upper)) {
                    throw new IllegalArgumentException(
                            one + " is together, but overlaps " + empty + ", which is vacant");
                }
            }
        }
    }

    /**
     * A part of the line, both ends included.
     *
     * @param lower its lower end, in metres
     * @param upper its upper end, in metres; above {@code lower}
     */
    public record Span(double lower, double upper) {
        /**
         * Checks the order.
         *
         * @throws IllegalArgumentException if the ends are not in order
         */
        public Span {
            if (!(lower < upper)) {
                throw new IllegalArgumentException("A span goes up the line, but was " + lower + " to " + upper + " m");
            }
        }

        boolean holds(double position) {
            return lower <= position && position <= upper;
        }

        double middle() {
            return (lower + upper) / 2;
        }
    }
}

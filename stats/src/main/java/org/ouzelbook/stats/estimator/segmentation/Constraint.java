package org.ouzelbook.stats.estimator.segmentation;

/**
 * Something known of a line that is not a registration's position: a factor on every map that it speaks against. A factor of
 * 0 forbids such maps. All positions are metres along the line.
 */
public sealed interface Constraint {
    /**
     * Two places that hardly lie in one territory, as two nests in use on the same days.
     *
     * @param lower the lower place
     * @param upper the upper one
     * @param factor weight of a map with a territory that holds both; 0 to 1
     */
    record Apart(double lower, double upper, double factor) implements Constraint {
        /**
         * Checks order and factor.
         *
         * @throws IllegalArgumentException if the places are out of order or the factor is not between 0 and 1
         */
        public Apart {
            check(lower, upper, factor);
        }
    }

    /**
     * Two registrations of one visit that were two birds at one time, and no pair: one territory can explain only one of them, the
     * other is then a stray.
     *
     * @param one a registration of the line
     * @param other another
     */
    record Simultaneous(Registration one, Registration other) implements Constraint {}

    /**
     * Two places that hardly lie in two territories, as those of one ringed bird: each limit of a territory between them
     * weighs the factor.
     *
     * @param lower the lower place
     * @param upper the upper one
     * @param factor weight of a limit between them; 0 to 1
     */
    record Bond(double lower, double upper, double factor) implements Constraint {
        /**
         * Checks order and factor.
         *
         * @throws IllegalArgumentException if the places are out of order or the factor is not between 0 and 1
         */
        public Bond {
            check(lower, upper, factor);
        }
    }

    /**
     * A bird that turned back at the end of its ground.
     *
     * @param from where it was met
     * @param end where it turned back
     * @param within a territory that ends no farther from there fits
     * @param fits weight of a territory that holds the meeting place and fits: how much likelier that end is for a bird of that
     *     territory than for one without; positive
     * @param otherwise weight of any other territory that holds the meeting place; positive
     */
    record Turn(double from, double end, double within, double fits, double otherwise) implements Constraint {}

    /**
     * A territory certainly holds a place, as that of a nest in use.
     *
     * @param position the place
     */
    record Held(double position) implements Constraint {}

    /**
     * No territory reaches across a place.
     *
     * @param position the place
     */
    record Limit(double position) implements Constraint {}

    /**
     * No territory holds any of a stretch.
     *
     * @param lower its lower end
     * @param upper its upper end
     */
    record Vacant(double lower, double upper) implements Constraint {
        /**
         * Checks the order.
         *
         * @throws IllegalArgumentException if the ends are out of order
         */
        public Vacant {
            check(lower, upper, 0);
        }
    }

    private static void check(double lower, double upper, double factor) {
        if (!(lower <= upper) || !(factor >= 0 && factor <= 1)) {
            throw new IllegalArgumentException("Not a constraint: " + lower + " to " + upper + " m, factor " + factor);
        }
    }
}

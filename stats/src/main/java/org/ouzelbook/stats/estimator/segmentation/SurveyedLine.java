package org.ouzelbook.stats.estimator.segmentation;

import java.util.Comparator;
import java.util.List;

/**
 * A line of water in one season: where visits went and what they met. Beyond its ends there is no water for a territory; where
 * the water goes on beyond what was walked, the line does too, with nobody on it.
 *
 * @param lower the lower end, in metres
 * @param upper the upper end, in metres; above {@code lower}
 * @param visits what each effective visit covered
 * @param registrations birds met, going up the line, none beyond its ends; a bird met beyond what its visit covered counts as
 *     met by chance
 * @param constraints what else is known
 * @param inSight two birds met by one visit no farther apart than this would have been noted, if they were seen at once, at the
 *     book's usual rate; in metres, 0 where nobody notes such things
 */
public record SurveyedLine(
        double lower,
        double upper,
        List<VisitedWater> visits,
        List<Registration> registrations,
        List<Constraint> constraints,
        double inSight) {
    /**
     * Copies the lists, sorts the registrations, and checks them.
     *
     * @throws IllegalArgumentException if the ends are out of order, if a registration lies beyond them or names a visit that is
     *     not there, or if a constraint names a registration that is not there
     */
    public SurveyedLine {
        visits = List.copyOf(visits);
        registrations = registrations.stream()
                .sorted(Comparator.comparingDouble(Registration::position))
                .toList();
        constraints = List.copyOf(constraints);
        if (!(lower < upper)) {
            throw new IllegalArgumentException("A line needs a length, but goes from " + lower + " to " + upper);
        }
        for (Registration one : registrations) {
            if (one.position() < lower || one.position() > upper || one.visit() >= visits.size()) {
                throw new IllegalArgumentException("No part of the line: " + one);
            }
        }
        for (Constraint one : constraints) {
            if (one instanceof Constraint.Simultaneous pair
                    && !(registrations.contains(pair.one()) && registrations.contains(pair.other()))) {
                throw new IllegalArgumentException("Not of birds on the line: " + one);
            }
        }
    }
}

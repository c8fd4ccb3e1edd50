package org.ouzelbook.stats.estimator.segmentation;

import java.util.List;

/**
 * What a cluster needs to be accepted: enough different days, far enough apart, or one decisive point. How many days are
 * enough depends on how many visits covered it.
 *
 * @param visits the visits, each with the stretches that it covered
 * @param fewDays days asked for where fewer than {@code manyVisits} covered the cluster; 1 or more
 * @param manyDays days asked for where that many or more did; not below {@code fewDays}
 * @param manyVisits how many visits are many
 * @param spreadDays days between the first and the last; not negative
 */
public record Acceptance(List<VisitedWater> visits, int fewDays, int manyDays, int manyVisits, int spreadDays) {
    /**
     * Copies the visits and checks the thresholds.
     *
     * @throws IllegalArgumentException if a threshold is out of its range
     */
    public Acceptance {
        visits = List.copyOf(visits);
        if (fewDays < 1 || manyDays < fewDays || spreadDays < 0) {
            throw new IllegalArgumentException(
                    "Thresholds out of range: " + fewDays + ", " + manyDays + ", " + spreadDays);
        }
    }

    /**
     * {@return whether a cluster is accepted}
     *
     * @param decisive whether one of its points is decisive
     * @param days different days on which it was met
     * @param spread days between the first and the last
     * @param lower its lower end, in metres
     * @param upper its upper end, in metres
     */
    public boolean accepts(boolean decisive, int days, int spread, double lower, double upper) {
        if (decisive) {
            return true;
        }
        if (spread < spreadDays || days < fewDays) {
            return false;
        }
        return days >= manyDays || days >= daysNeeded(lower, upper);
    }

    /**
     * {@return the days asked for of a cluster that reaches from one position to another}
     *
     * @param lower its lower end, in metres
     * @param upper its upper end, in metres
     */
    public int daysNeeded(double lower, double upper) {
        return visits.size() >= manyVisits && visitsCovering(lower, upper) >= manyVisits ? manyDays : fewDays;
    }

    /**
     * {@return how many visits covered a stretch: those that saw at least half of as much of it as the visit that saw most}
     *
     * @param lower the lower end, in metres
     * @param upper the upper end, in metres
     */
    public int visitsCovering(double lower, double upper) {
        double most = 0;
        for (VisitedWater visit : visits) {
            most = Math.max(most, visit.lengthWithin(lower, upper));
        }
        int covering = 0;
        for (VisitedWater visit : visits) {
            double seen = visit.lengthWithin(lower, upper);
            if (most > 0 ? seen >= most / 2 : visit.touches(lower, upper)) {
                covering++;
            }
        }
        return covering;
    }
}

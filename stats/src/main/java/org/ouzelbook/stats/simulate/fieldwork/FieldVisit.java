package org.ouzelbook.stats.simulate.fieldwork;

import java.time.LocalTime;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Direction;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;

/**
 * A visit with what its record does not say.
 *
 * @param visit the record
 * @param skill log-odds that the observers add to finding a pair
 */
record FieldVisit(Visit visit, double skill) {
    private static final double METRES_PER_MINUTE = 28;

    /** Minutes that a stretch takes on foot, with stops. */
    static long minutes(double metres) {
        return Math.round(metres / METRES_PER_MINUTE);
    }

    boolean upstream() {
        return visit.direction().orElse(Direction.UPSTREAM) == Direction.UPSTREAM;
    }

    boolean covers(UUID riverId, double metres) {
        return metres >= 0
                && visit.riverId().equals(riverId)
                && visit.walked()
                        .map(walked -> walked.contains(new Chainage(metres)))
                        .orElse(false);
    }

    /** When the observers pass a place. */
    LocalTime passing(double metres) {
        Stretch walked = visit.walked().orElseThrow();
        double gone =
                upstream() ? metres - walked.lower().metres() : walked.upper().metres() - metres;
        return visit.start().orElseThrow().plusMinutes(minutes(Math.max(0, gone)));
    }
}

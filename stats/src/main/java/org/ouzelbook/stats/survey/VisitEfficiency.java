package org.ouzelbook.stats.survey;

import java.util.List;
import java.util.Optional;

/**
 * The share of territories that an average visit finds: of all pairs of an accepted territory and an effective visit that
 * walked past a registration of it, how many gave a registration that day.
 *
 * <p>Territories that no visit found are not in it, so it is too high rather than too low.
 */
final class VisitEfficiency {
    private VisitEfficiency() {}

    static Optional<Double> of(List<Cluster> clusters, Effort effort) {
        int passed = 0;
        int found = 0;
        for (Cluster cluster : clusters) {
            if (cluster.accepted()) {
                for (Effort.Day day : effort.effective()) {
                    boolean walkedPast = cluster.atHome().stream()
                            .anyMatch(member -> day.walked().stream()
                                    .anyMatch(walked ->
                                            walked.contains(member.place().chainage())));
                    if (walkedPast) {
                        passed++;
                        found += cluster.days().contains(day.date()) ? 1 : 0;
                    }
                }
            }
        }
        return passed == 0 ? Optional.empty() : Optional.of((double) found / passed);
    }
}

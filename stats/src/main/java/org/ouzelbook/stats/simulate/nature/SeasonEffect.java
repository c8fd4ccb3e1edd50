package org.ouzelbook.stats.simulate.nature;

import java.util.UUID;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * What made one stretch better or worse in some seasons: a spill, a drought, a hard winter.
 *
 * @param firstSeason the first breeding season that felt it
 * @param lastSeason the last one
 * @param riverId the river
 * @param where the stretch
 * @param survival log-odds added to a grown bird's survival to that season
 * @param staying log-odds added to a site's being kept
 * @param settling log-odds added to a free site's being settled
 * @param nestLosses factor on the daily loss of nests; 1 for none
 */
public record SeasonEffect(
        int firstSeason,
        int lastSeason,
        UUID riverId,
        Stretch where,
        double survival,
        double staying,
        double settling,
        double nestLosses) {

    boolean reaches(int season, NestingSite site) {
        return firstSeason <= season
                && season <= lastSeason
                && riverId.equals(site.riverId())
                && where.contains(site.at());
    }
}

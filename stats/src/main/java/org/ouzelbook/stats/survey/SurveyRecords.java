package org.ouzelbook.stats.survey;

import java.util.List;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;

/**
 * The records that an analysis reads: all of a book, or the part that was asked for.
 *
 * @param rivers the rivers and how they join
 * @param landmarks known rocks, bridges and other places
 * @param reaches named stretches
 * @param visits visits
 * @param sightings sightings
 * @param nests nests
 * @param nestChecks checks of those nests
 */
public record SurveyRecords(
        RiverNetwork rivers,
        List<Landmark> landmarks,
        List<Reach> reaches,
        List<Visit> visits,
        List<Sighting> sightings,
        List<Nest> nests,
        List<NestCheck> nestChecks) {
    /** Copies the lists. */
    public SurveyRecords {
        landmarks = List.copyOf(landmarks);
        reaches = List.copyOf(reaches);
        visits = List.copyOf(visits);
        sightings = List.copyOf(sightings);
        nests = List.copyOf(nests);
        nestChecks = List.copyOf(nestChecks);
    }
}

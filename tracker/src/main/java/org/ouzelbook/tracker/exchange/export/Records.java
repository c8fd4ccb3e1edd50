package org.ouzelbook.tracker.exchange.export;

import java.util.List;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.river.RiverNetwork;

/**
 * What of a book goes out.
 *
 * @param rivers the rivers and their lines
 * @param landmarks landmarks
 * @param reaches reaches
 * @param visits visits
 * @param sightings sightings
 * @param nests nests
 * @param nestChecks checks of these nests
 * @param ringedBirds birds with colour rings
 * @param kickSamples kick samples
 * @param decisions what surveyors decided about territories
 */
public record Records(
        RiverNetwork rivers,
        List<Landmark> landmarks,
        List<Reach> reaches,
        List<Visit> visits,
        List<Sighting> sightings,
        List<Nest> nests,
        List<NestCheck> nestChecks,
        List<RingedBird> ringedBirds,
        List<KickSample> kickSamples,
        List<Decision> decisions) {
    /** Copies the lists. */
    public Records {
        landmarks = List.copyOf(landmarks);
        reaches = List.copyOf(reaches);
        visits = List.copyOf(visits);
        sightings = List.copyOf(sightings);
        nests = List.copyOf(nests);
        nestChecks = List.copyOf(nestChecks);
        ringedBirds = List.copyOf(ringedBirds);
        kickSamples = List.copyOf(kickSamples);
        decisions = List.copyOf(decisions);
    }
}

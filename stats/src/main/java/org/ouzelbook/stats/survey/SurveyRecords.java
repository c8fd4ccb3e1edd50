package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.List;
import java.util.function.Predicate;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.Reach;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
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
 * @param ringedBirds birds with colour rings
 * @param kickSamples kick samples
 * @param decisions what surveyors decided about territories
 */
public record SurveyRecords(
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
    public SurveyRecords {
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

    /** {@return the same records, as if no surveyor had decided anything} */
    public SurveyRecords withoutDecisions() {
        return new SurveyRecords(
                rivers, landmarks, reaches, visits, sightings, nests, nestChecks, ringedBirds, kickSamples, List.of());
    }

    /** The same records without visits, sightings, checks and kick samples of other days. */
    SurveyRecords onDays(Predicate<LocalDate> days) {
        return new SurveyRecords(
                rivers,
                landmarks,
                reaches,
                visits.stream().filter(visit -> days.test(visit.date())).toList(),
                sightings.stream()
                        .filter(sighting -> days.test(sighting.date()))
                        .toList(),
                nests,
                nestChecks.stream().filter(check -> days.test(check.date())).toList(),
                ringedBirds,
                kickSamples.stream().filter(sample -> days.test(sample.date())).toList(),
                decisions);
    }

    /** {@return the same records with other kick samples} */
    SurveyRecords withKickSamples(List<KickSample> samples) {
        return new SurveyRecords(
                rivers, landmarks, reaches, visits, sightings, nests, nestChecks, ringedBirds, samples, decisions);
    }

    /**
     * {@return what surveyors decided about the territories of one season}
     *
     * @param species whose territories
     * @param season the year of the season
     */
    public List<Decision> decisions(Species species, int season) {
        return decisions.stream()
                .filter(decision -> decision.species().equals(species) && decision.season() == season)
                .toList();
    }
}

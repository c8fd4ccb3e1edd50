package org.ouzelbook.stats.simulate.fieldwork;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.stats.simulate.fieldwork.SurveySettings.Followed;
import org.ouzelbook.stats.simulate.nature.TruePair;
import org.ouzelbook.stats.simulate.nature.Truth;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;

/**
 * Years of field records from a river whose truth is known. The records are clean: as a perfect notebook would hold them,
 * with a person's eyes and luck, but without slips of the pen.
 *
 * @param truth every pair, found or not
 * @param visits the visits, made or missed, by date of their round
 * @param sightings the sightings of those visits
 * @param nests the nests that were found
 * @param nestChecks the checks of those nests
 * @param ringedBirds the birds that carry colour rings
 * @param kickSamples the kick samples
 */
public record SimulatedSurvey(
        Truth truth,
        List<Visit> visits,
        List<Sighting> sightings,
        List<Nest> nests,
        List<NestCheck> nestChecks,
        List<RingedBird> ringedBirds,
        List<KickSample> kickSamples) {
    /** Copies the lists. */
    public SimulatedSurvey {
        visits = List.copyOf(visits);
        sightings = List.copyOf(sightings);
        nests = List.copyOf(nests);
        nestChecks = List.copyOf(nestChecks);
        ringedBirds = List.copyOf(ringedBirds);
        kickSamples = List.copyOf(kickSamples);
    }

    /**
     * {@return the survey that these settings and this seed make; the same ones always make the same survey}
     *
     * @param settings what it is made from
     * @param seed where chance begins
     */
    public static SimulatedSurvey of(SurveySettings settings, long seed) {
        Draws draws = Draws.of(seed);
        List<TruePair> pairs = new ArrayList<>();
        for (Followed followed : settings.followed()) {
            pairs.addAll(
                    followed.nature().pairs(settings.courses(), settings.firstSeason(), settings.lastSeason(), draws));
        }
        Truth truth = new Truth(pairs);
        Ringing ringing = settings.ringing()
                .map(project -> Ringing.of(project, pairs, draws))
                .orElseGet(Ringing::none);
        List<Species> lookedFor = settings.followed().stream()
                .map(followed -> followed.nature().species())
                .toList();
        List<Visit> visits = new ArrayList<>();
        List<Sighting> sightings = new ArrayList<>();
        for (FieldSeason season : settings.seasons()) {
            for (FieldVisit visit : VisitDiary.of(season, lookedFor, draws)) {
                visits.add(visit.visit());
                sightings.addAll(sightings(visit, settings, truth, ringing, draws));
            }
        }
        NestWatch nests =
                settings.nests().map(plan -> NestWatch.of(plan, pairs, draws)).orElseGet(NestWatch::none);
        List<KickSample> kicks = settings.kicks()
                .map(plan -> KickNet.of(plan, settings.firstSeason(), settings.lastSeason(), draws))
                .orElse(List.of());
        return new SimulatedSurvey(truth, visits, sightings, nests.nests(), nests.checks(), ringing.birds(), kicks);
    }

    private static List<Sighting> sightings(
            FieldVisit visit, SurveySettings settings, Truth truth, Ringing ringing, Draws draws) {
        if (visit.visit().walked().isEmpty()) {
            return List.of();
        }
        String label = visit.visit().label();
        List<Glimpse> glimpses = new ArrayList<>();
        for (Followed followed : settings.followed()) {
            Species species = followed.nature().species();
            List<TruePair> pairs = truth.pairs(species, visit.visit().date().getYear());
            Draws sites = draws.branch("easy to find", species.scientificName());
            Draws chance = draws.branch("meetings", species.scientificName(), label);
            glimpses.addAll(Meetings.on(visit, pairs, followed.detection(), ringing, sites, chance));
        }
        return Page.of(visit.visit(), glimpses, draws.branch("page", label));
    }
}

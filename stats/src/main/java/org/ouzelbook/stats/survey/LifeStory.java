package org.ouzelbook.stats.survey;

import java.time.Year;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.exposure.ExposureDays;
import org.ouzelbook.stats.estimator.markresight.CormackJollySeber;
import org.ouzelbook.stats.estimator.occupancy.SiteVisits;
import org.ouzelbook.stats.survey.RiverStory.Basis;
import org.ouzelbook.stats.survey.RiverStory.Finding;
import org.ouzelbook.stats.survey.RiverStory.Topic;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.Species;

/**
 * The part of a season's story that tells of the water used, of nests and of ringed birds. It gives totals only, no place of any.
 *
 * @param records records up to the end of the season
 * @param species whose story
 * @param season the calendar year
 * @param water the water it is about
 * @param settings the rules of the map, for its season
 * @param level level of the intervals, between 0 and 1
 */
record LifeStory(SurveyRecords records, Species species, int season, Water water, MapSettings settings, double level) {
    private static final double SURPRISING = 0.05;

    /** Copies the records without those of later seasons. */
    LifeStory {
        int last = season;
        records = records.onDays(day -> day.getYear() <= last);
    }

    /** How much of the water birds used, allowing for those that visits missed: of just these sites, by all seasons so far. */
    Optional<Finding> occupancy() {
        SiteSettings usual = SiteSettings.usualFor(species);
        List<Integer> years = records.visits().stream()
                .map(visit -> visit.date().getYear())
                .distinct()
                .sorted()
                .toList();
        SiteOccupancy found = SiteOccupancy.of(
                records, species, years, water, usual.withSeason(settings), SiteOccupancy.Model.CONSTANT, false, level);
        int place = found.seasons().indexOf(season);
        return found.fit()
                .found()
                .filter(fit -> place >= 0)
                .flatMap(fit -> fit.ofTheseSites().get(place).found())
                .map(share -> occupancy(found.visits(), place, usual, share));
    }

    private static Finding occupancy(SiteVisits visits, int place, SiteSettings settings, Estimate share) {
        SiteVisits.Naive naive = visits.naive().get(place);
        return new Finding(
                Topic.OCCUPANCY,
                Basis.ESTIMATED,
                Message.of(
                        "story.occupancy",
                        naive.detected(),
                        naive.visited(),
                        settings.stretchMetres(),
                        share.value(),
                        share.lower(),
                        share.upper()),
                List.of(),
                (int) visits.visits().stream()
                        .filter(visit -> visit.season() == place)
                        .count(),
                Optional.of(Message.of("story.caveat.used")));
    }

    /** How many nests succeeded, and how likely an attempt is to: the season first, then all seasons. */
    List<Finding> nests() {
        BreedingPace pace = BreedingPace.usualFor(species);
        List<Integer> seasons = records.nestChecks().stream()
                .map(check -> check.date().getYear())
                .distinct()
                .sorted()
                .toList();
        List<NestAttempt> sound = NestSuccess.attempts(records, species, seasons, water, pace).stream()
                .filter(NestAttempt::isSound)
                .toList();
        List<NestAttempt> now =
                sound.stream().filter(attempt -> attempt.season() == season).toList();
        List<Finding> findings = new ArrayList<>();
        if (!now.isEmpty()) {
            findings.add(new Finding(
                    Topic.NESTS,
                    Basis.COUNTED,
                    Message.of(
                            "story.nests",
                            now.size(),
                            NestSuccess.count(now, NestOutcome.SUCCESS),
                            NestSuccess.count(now, NestOutcome.FAILURE),
                            NestSuccess.count(now, NestOutcome.UNKNOWN)),
                    List.of(),
                    now.size(),
                    Optional.of(Message.of("story.caveat.nestsFound"))));
            NestSuccess.exposure(sound, level)
                    .found()
                    .ifPresent(exposure -> findings.add(success(
                            exposure,
                            exposure.success(pace.eggDays() + pace.youngDays()),
                            sound.get(0).season())));
        }
        return findings;
    }

    private static Finding success(ExposureDays exposure, Estimate success, int first) {
        return new Finding(
                Topic.NESTS,
                Basis.ESTIMATED,
                Message.of(
                        "story.nestSuccess",
                        success.value(),
                        success.lower(),
                        success.upper(),
                        Math.round(exposure.days()),
                        exposure.losses(),
                        Year.of(first)),
                List.of(),
                Math.round(exposure.days()),
                Optional.of(
                        exposure.losses() < NestSuccess.FEW_LOSSES
                                ? Message.of("story.caveat.fewLosses", exposure.losses())
                                : Message.of("story.caveat.sameDays")));
    }

    /** How many ringed birds are there again a year later. */
    Optional<Finding> survival() {
        if (records.ringedBirds().isEmpty()) {
            return Optional.empty();
        }
        Survival found = Survival.of(
                records,
                species,
                new Survival.Model(List.of(), List.of(), (name, seasons, atEnd) -> Optional.empty()),
                level);
        return found.fit()
                .found()
                .flatMap(
                        fit -> fit.probabilities().get(0).estimate().found().map(share -> survival(found, fit, share)));
    }

    private static Finding survival(Survival found, CormackJollySeber fit, Estimate share) {
        boolean doubted = fit.goodnessOfFit().p().orElse(1) < SURPRISING;
        return new Finding(
                Topic.SURVIVAL,
                Basis.ESTIMATED,
                Message.of(
                        "story.survival",
                        share.value(),
                        share.lower(),
                        share.upper(),
                        found.animals().animals(),
                        found.seasons().size()),
                List.of(),
                found.animals().animals(),
                Optional.of(Message.of(doubted ? "story.caveat.pastMatters" : "story.caveat.left")));
    }
}

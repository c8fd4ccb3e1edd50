package org.ouzelbook.stats.survey;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.ouzelbook.stats.survey.Admission.DoubtfulAge;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;

/**
 * The days on which sites were visited, and whether the species was found: the detection histories of a book.
 *
 * <p>Effective visits of one day to one river are one visit. A site that such a day did not cover is missing, never a zero, whatever
 * was seen there. Only what was seen on those visits counts, and a nest checked on the same day with birds, eggs or young in it: a
 * bird met by chance has no visit behind it that could also have found nothing.
 */
final class SiteDays {
    private final SiteSettings settings;
    private final List<Site> sites;
    private final Map<UUID, List<Sighting>> byVisit = new HashMap<>();
    private final Map<LocalDate, List<Place>> nestsInUse = new HashMap<>();
    private final List<SiteDay> days = new ArrayList<>();
    private final Set<UUID> used = new HashSet<>();
    private final List<Sighting> admitted;
    private int partly;

    /**
     * One site on one day.
     *
     * @param site its place in the list of sites
     * @param date the day
     * @param occasion which visit of the season to the river it was, from 0
     * @param found whether the species was found
     */
    record SiteDay(int site, LocalDate date, int occasion, boolean found) {}

    private SiteDays(SurveyRecords records, Species species, List<Site> sites, SiteSettings settings) {
        this.settings = settings;
        this.sites = sites;
        List<Sighting> ofSpecies = records.sightings().stream()
                .filter(sighting -> sighting.species().equals(species))
                .toList();
        this.admitted =
                Admission.of(ofSpecies, settings.season(), DoubtfulAge.USUAL).admitted();
        for (Sighting sighting : admitted) {
            sighting.visitId()
                    .ifPresent(visit -> byVisit.computeIfAbsent(visit, key -> new ArrayList<>())
                            .add(sighting));
        }
        Map<UUID, Nest> nests = new HashMap<>();
        records.nests().stream()
                .filter(nest -> nest.species().equals(species))
                .forEach(nest -> nests.put(nest.id(), nest));
        for (NestCheck check : records.nestChecks()) {
            Nest nest = nests.get(check.nestId());
            if (nest != null && isInUse(check)) {
                nestsInUse
                        .computeIfAbsent(check.date(), key -> new ArrayList<>())
                        .add(nest.place());
            }
        }
    }

    static SiteDays of(
            SurveyRecords records, Species species, List<Integer> years, List<Site> sites, SiteSettings settings) {
        SiteDays made = new SiteDays(records, species, sites, settings);
        for (int year : years) {
            for (River river : records.rivers().rivers()) {
                made.add(river.id(), Effort.of(records.visits(), river.id(), species, year, settings.season()));
            }
        }
        return made;
    }

    private boolean isInUse(NestCheck check) {
        return check.stage() != NestStage.COMPLETE
                && check.stage() != NestStage.EMPTY
                && BreedingSigns.of(check)
                        .filter(code -> settings.found().holds(code.evidenceClass()))
                        .isPresent();
    }

    private void add(UUID river, Effort effort) {
        for (int occasion = 0; occasion < effort.effective().size(); occasion++) {
            Effort.Day day = effort.effective().get(occasion);
            List<Sighting> seen = day.visits().stream()
                    .map(Visit::id)
                    .flatMap(visit -> byVisit.getOrDefault(visit, List.of()).stream())
                    .toList();
            List<Place> found = Stream.concat(
                            seen.stream()
                                    .filter(sighting -> settings.found()
                                            .holds(BreedingSigns.of(sighting, settings.season())
                                                    .evidenceClass()))
                                    .map(Sighting::place),
                            nestsInUse.getOrDefault(day.date(), List.of()).stream())
                    .toList();
            for (int site = 0; site < sites.size(); site++) {
                double covered = sites.get(site).covered(river, day.walked());
                if (covered >= settings.coveredShare() - 1e-9) {
                    days.add(new SiteDay(site, day.date(), occasion, anyOn(site, found)));
                    markUsed(site, seen);
                } else if (covered > 0) {
                    partly++;
                }
            }
        }
    }

    private boolean anyOn(int site, Collection<Place> places) {
        return places.stream().anyMatch(place -> holds(site, place));
    }

    private boolean holds(int site, Place place) {
        return sites.get(site).holds(place.riverId(), place.chainage(), sites);
    }

    private void markUsed(int site, List<Sighting> seen) {
        seen.stream().filter(sighting -> holds(site, sighting.place())).forEach(sighting -> used.add(sighting.id()));
    }

    /** The days, by season, river and date. */
    List<SiteDay> days() {
        return days;
    }

    /** How many times a day touched a site without covering it. */
    int partly() {
        return partly;
    }

    /** Sightings of the asked years on the water of the sites that count nowhere, since no day covered their site. */
    long unused(List<Integer> years) {
        return admitted.stream()
                .filter(sighting -> years.contains(sighting.date().getYear()) && !used.contains(sighting.id()))
                .filter(sighting -> sites.stream()
                        .anyMatch(site ->
                                site.river().id().equals(sighting.place().riverId())
                                        && site.stretch()
                                                .contains(sighting.place().chainage())))
                .count();
    }

    /** Sightings that count, but are placed no better than half their site is long. */
    long vague() {
        return admitted.stream()
                .filter(sighting -> used.contains(sighting.id()))
                .filter(sighting -> sites.stream()
                        .anyMatch(site -> site.holds(
                                        sighting.place().riverId(),
                                        sighting.place().chainage(),
                                        sites)
                                && sighting.place().uncertaintyMetres()
                                        > site.stretch().length() / 2))
                .count();
    }
}

package org.ouzelbook.ui.strip;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.LandmarkKind;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;

/**
 * Everything ever seen of a species at one place, and every visit that went by.
 *
 * @param river its river
 * @param place the place
 * @param kind what stands there; empty where it is no landmark
 * @param species the species
 * @param years the years of the book, in order; one or more
 * @param passing effective visits that looked for the species and went by, by date
 * @param sightings sightings of the species there, by date
 * @param samples kick samples taken there
 * @param nests nests there; none unless asked for
 */
public record PlaceScene(
        River river,
        StripView.OnePlace place,
        Optional<LandmarkKind> kind,
        Species species,
        List<Integer> years,
        List<Visit> passing,
        List<Sighting> sightings,
        List<ShownSample> samples,
        List<ShownNest> nests) {
    /**
     * Copies the lists.
     *
     * @throws IllegalArgumentException if there is no year
     */
    public PlaceScene {
        years = List.copyOf(years);
        passing = List.copyOf(passing);
        sightings = List.copyOf(sightings);
        samples = List.copyOf(samples);
        nests = List.copyOf(nests);
        if (years.isEmpty()) {
            throw new IllegalArgumentException("A place over the years needs a year");
        }
    }

    /**
     * {@return what was ever seen at a place}
     *
     * @param records the records of the book
     * @param species the species
     * @param place the place
     * @param withNests whether its nests are shown; such a strip is private
     * @throws IllegalArgumentException if nobody ever looked for the species or saw it
     */
    public static PlaceScene of(SurveyRecords records, Species species, StripView.OnePlace place, boolean withNests) {
        TreeSet<Integer> years = new TreeSet<>();
        List<Visit> looking = records.visits().stream()
                .filter(visit -> visit.lookedFor().contains(species))
                .sorted(Comparator.comparing(Visit::date))
                .toList();
        looking.forEach(visit -> years.add(visit.date().getYear()));
        List<Sighting> seen = records.sightings().stream()
                .filter(sighting -> sighting.species().equals(species))
                .sorted(Comparator.comparing(Sighting::date))
                .toList();
        seen.forEach(sighting -> years.add(sighting.date().getYear()));
        List<ShownNest> nests = years.stream()
                .flatMap(year -> ShownNest.of(records, species, year).stream())
                .filter(shown -> withNests
                        && shown.nest().place().riverId().equals(place.riverId())
                        && place.around().contains(shown.nest().place().chainage()))
                .toList();
        return new PlaceScene(
                records.rivers().river(place.riverId()),
                place,
                records.landmarks().stream()
                        .filter(landmark -> landmark.name().equals(place.name())
                                && landmark.place().riverId().equals(place.riverId()))
                        .map(landmark -> landmark.kind())
                        .findFirst(),
                species,
                List.copyOf(years),
                looking.stream()
                        .filter(visit -> visit.effective()
                                && visit.riverId().equals(place.riverId())
                                && visit.walked()
                                        .filter(walked ->
                                                walked.contains(place.around().middle()))
                                        .isPresent())
                        .toList(),
                seen.stream()
                        .filter(sighting -> sighting.place().riverId().equals(place.riverId())
                                && place.around().contains(sighting.place().chainage()))
                        .toList(),
                records.kickSamples().stream()
                        .filter(sample -> sample.place().riverId().equals(place.riverId())
                                && place.around().contains(sample.place().chainage()))
                        .map(ShownSample::of)
                        .toList(),
                nests);
    }

    /**
     * {@return the visits that went by in a year}
     *
     * @param year a calendar year
     */
    public List<Visit> passingIn(int year) {
        return passing.stream().filter(visit -> visit.date().getYear() == year).toList();
    }

    /**
     * {@return how many of some visits saw the species here}
     *
     * @param visits visits that went by
     */
    public long seenOn(List<Visit> visits) {
        Set<UUID> seenByVisits = new HashSet<>();
        Set<LocalDate> seenBesides = new HashSet<>();
        sightings.forEach(sighting ->
                sighting.visitId().ifPresentOrElse(seenByVisits::add, () -> seenBesides.add(sighting.date())));
        return visits.stream()
                .filter(visit -> seenByVisits.contains(visit.id()) || seenBesides.contains(visit.date()))
                .count();
    }
}

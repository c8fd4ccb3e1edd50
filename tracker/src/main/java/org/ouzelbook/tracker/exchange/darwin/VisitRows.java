package org.ouzelbook.tracker.exchange.darwin;

import com.google.gson.JsonPrimitive;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.exchange.export.Records;

/**
 * Visits as events, under one event for each season on a river; with what was looked for, how long and how far, and an absence for
 * each species that was looked for and not found.
 */
final class VisitRows {
    private static final String LIST = " | ";

    private final Records records;
    private final Publication publication;
    private final ToldPlaces places;
    private final Star star;
    private final Map<UUID, Set<Species>> seen = new HashMap<>();

    VisitRows(Records records, Publication publication, ToldPlaces places, Star star) {
        this.records = records;
        this.publication = publication;
        this.places = places;
        this.star = star;
        for (Sighting sighting : records.sightings()) {
            sighting.visitId()
                    .ifPresent(visit ->
                            seen.computeIfAbsent(visit, key -> new HashSet<>()).add(sighting.species()));
        }
    }

    private record Season(UUID riverId, int year) {
        String id() {
            return PublishedId.of(riverId, "season " + year);
        }
    }

    void write() {
        Map<String, List<Visit>> seasons = new TreeMap<>();
        for (Visit visit : records.visits()) {
            seasons.computeIfAbsent(season(visit).id(), id -> new ArrayList<>()).add(visit);
            star.add(visit.date(), PublishedId.of(visit.id()), () -> write(visit));
        }
        seasons.forEach((id, visits) -> star.add(firstDay(visits), id, () -> season(visits)));
    }

    private void write(Visit visit) {
        event(visit);
        inventory(visit);
        measure(visit);
        absent(visit).forEach(species -> absence(visit, species));
    }

    private static LocalDate firstDay(List<Visit> visits) {
        return visits.stream().map(Visit::date).min(Comparator.naturalOrder()).orElseThrow();
    }

    private static Season season(Visit visit) {
        return new Season(visit.riverId(), visit.date().getYear());
    }

    private void season(List<Visit> visits) {
        Visit one = visits.get(0);
        LocalDate first = firstDay(visits);
        LocalDate last =
                visits.stream().map(Visit::date).max(Comparator.naturalOrder()).orElseThrow();
        List<Stretch> walked =
                visits.stream().map(Visit::walked).flatMap(Optional::stream).toList();
        Optional<Stretch> whole = walked.isEmpty()
                ? Optional.empty()
                : Optional.of(new Stretch(
                        walked.stream()
                                .map(Stretch::lower)
                                .min(Comparator.naturalOrder())
                                .orElseThrow(),
                        walked.stream()
                                .map(Stretch::upper)
                                .max(Comparator.naturalOrder())
                                .orElseThrow()));
        ArchiveRow row = star.event(season(one).id(), "Survey")
                .with("dwc:eventDate", first.equals(last) ? first : first + "/" + last)
                .with("dwc:samplingProtocol", publication.words().protocol());
        places.stretch(row, one.riverId(), whole);
    }

    private void event(Visit visit) {
        ArchiveRow row = star.event(PublishedId.of(visit.id()), "Site Visit")
                .with("dwc:parentEventID", season(visit).id())
                .with("dwc:eventDate", when(visit))
                .with("dwc:samplingProtocol", publication.words().protocol())
                .with("dwc:samplingEffort", effort(visit));
        visit.walked()
                .filter(walked -> walked.length() > 0)
                .ifPresent(walked -> row.with("dwc:sampleSizeValue", tenths(walked.length() / 1000))
                        .with("dwc:sampleSizeUnit", "kilometre"));
        places.stretch(row, visit.riverId(), visit.walked());
        if (publication.isPublic()) {
            row.with("dwc:informationWithheld", publication.words().withheldVisit());
        } else {
            row.with("dwc:fieldNumber", visit.label()).with("dwc:eventRemarks", visit.note());
        }
    }

    /** Local times: the standard lets the zone be left out, and the book does not keep it. */
    private static String when(Visit visit) {
        if (visit.start().isEmpty()) {
            return visit.date().toString();
        }
        String start = visit.date() + "T" + minutes(visit.start().get());
        return visit.end()
                .filter(end -> !end.isBefore(visit.start().get()))
                .map(end -> start + "/" + visit.date() + "T" + minutes(end))
                .orElse(start);
    }

    static String minutes(LocalTime time) {
        return String.format(Locale.ROOT, "%02d:%02d", time.getHour(), time.getMinute());
    }

    private static Optional<Duration> duration(Visit visit) {
        return visit.start().isPresent() && visit.end().isPresent()
                ? Optional.of(Duration.between(visit.start().get(), visit.end().get()))
                        .filter(lasted -> !lasted.isNegative() && !lasted.isZero())
                : Optional.empty();
    }

    private static Optional<Double> personHours(Visit visit) {
        return visit.observers().isEmpty()
                ? Optional.empty()
                : duration(visit)
                        .map(lasted -> tenths(
                                lasted.toMinutes() / 60.0 * visit.observers().size()));
    }

    private static String effort(Visit visit) {
        List<String> told = new ArrayList<>();
        personHours(visit).ifPresent(hours -> told.add(hours + " observer-hours"));
        visit.mode().ifPresent(mode -> told.add(mode.name().toLowerCase(Locale.ROOT)));
        visit.direction().ifPresent(way -> told.add(way.name().toLowerCase(Locale.ROOT)));
        return String.join(", ", told);
    }

    private static double tenths(double exact) {
        return Math.max(0.1, Math.round(exact * 10) / 10.0);
    }

    private void inventory(Visit visit) {
        List<Species> absent = absent(visit);
        ArchiveRow row = star.inventory(PublishedId.of(visit.id()))
                .with("eco:inventoryTypes", visit.lookedFor().isEmpty() ? "adventitious" : "restrictedSearch")
                .with("eco:protocolNames", publication.words().protocol())
                .with("eco:protocolDescriptions", publication.method())
                .with("eco:targetTaxonomicScope", names(visit.lookedFor()))
                .with("eco:isAbsenceReported", showsAbsence(visit))
                .with("eco:absentTaxa", names(absent))
                .with("eco:taxonCompletenessReported", showsAbsence(visit) ? "reportedComplete" : "notReported")
                .with("eco:isAbundanceReported", true)
                .with("eco:isSamplingEffortReported", !effort(visit).isEmpty())
                .with("eco:samplingEffortValue", personHours(visit))
                .with("eco:samplingEffortUnit", personHours(visit).map(hours -> "personHours"))
                .with("eco:eventDurationValue", duration(visit).map(Duration::toMinutes))
                .with("eco:eventDurationUnit", duration(visit).map(lasted -> "minutes"));
        if (showsAbsence(visit)) {
            row.with("eco:isTaxonomicScopeFullyReported", true);
        }
        if (!publication.isPublic() && !visit.weather().isBlank()) {
            row.with("eco:reportedWeather", "{\"weather\":" + new JsonPrimitive(visit.weather()) + "}");
        }
        if (publication.withNames()) {
            row.with("eco:samplingPerformedBy", String.join(LIST, visit.observers()));
        }
    }

    /** A visit in a spate, or along a stretch that nobody wrote down, shows that nothing was there no better than no visit. */
    private static boolean showsAbsence(Visit visit) {
        return visit.effective()
                && visit.walked().isPresent()
                && !visit.lookedFor().isEmpty();
    }

    private List<Species> absent(Visit visit) {
        return showsAbsence(visit)
                ? visit.lookedFor().stream()
                        .filter(species ->
                                !seen.getOrDefault(visit.id(), Set.of()).contains(species))
                        .toList()
                : List.of();
    }

    private static String names(List<Species> species) {
        return String.join(LIST, species.stream().map(Species::scientificName).toList());
    }

    private void absence(Visit visit, Species species) {
        ArchiveRow row = SightingRows.taxon(
                        star.occurrence(
                                PublishedId.of(visit.id()),
                                PublishedId.of(visit.id(), "absence " + species.scientificName())),
                        species)
                .with("dwc:eventDate", visit.date())
                .with("dwc:occurrenceStatus", "absent")
                .with("dwc:individualCount", 0)
                .with("dwc:waterBody", records.rivers().river(visit.riverId()).name());
        if (publication.withNames()) {
            row.with("dwc:recordedBy", String.join(LIST, visit.observers()));
        }
    }

    private void measure(Visit visit) {
        Star.Measured measured = star.measured(visit.id(), PublishedId.of(visit.id()), "")
                .with("direction walked", visit.direction().map(VisitRows::lower), "", "")
                .with("way of travelling", visit.mode().map(VisitRows::lower), "", "")
                .with("birds could be found", visit.effective() ? "yes" : "no", "", "judged by the observers");
        if (!publication.isPublic()) {
            String along = SightingRows.along(records, visit.riverId());
            measured.with(
                            "lower end of the stretch",
                            visit.walked()
                                    .map(walked -> tenthOfAMetre(walked.lower().metres())),
                            "m",
                            along)
                    .with(
                            "upper end of the stretch",
                            visit.walked()
                                    .map(walked -> tenthOfAMetre(walked.upper().metres())),
                            "m",
                            along)
                    .with("river level", visit.level(), "", "in the observers' words");
        }
    }

    private static double tenthOfAMetre(double metres) {
        return Math.round(metres * 10) / 10.0;
    }

    static String lower(Enum<?> term) {
        return term.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}

package org.ouzelbook.tracker.exchange.darwin;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.Age;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.exchange.export.Records;

/** Sightings as occurrences of their visit; one without a visit makes an event of its own. */
final class SightingRows {
    private static final String CODES =
            "Breeding evidence codes 0 to 16: Hagemeijer & Blair 1997, The EBCC Atlas of European Breeding Birds";

    private final Records records;
    private final Publication publication;
    private final ToldPlaces places;
    private final Star star;
    private final Set<UUID> visits = new HashSet<>();
    private final Set<UUID> published = new HashSet<>();

    SightingRows(Records records, Publication publication, ToldPlaces places, Star star) {
        this.records = records;
        this.publication = publication;
        this.places = places;
        this.star = star;
        records.visits().stream().map(Visit::id).forEach(visits::add);
        records.sightings().stream().map(Sighting::id).forEach(published::add);
    }

    void write() {
        records.sightings()
                .forEach(sighting -> star.add(sighting.date(), PublishedId.of(sighting.id()), () -> write(sighting)));
    }

    private void write(Sighting sighting) {
        String event =
                sighting.visitId().filter(visits::contains).map(PublishedId::of).orElseGet(() -> casual(sighting));
        String id = PublishedId.of(sighting.id());
        ArchiveRow row = taxon(star.occurrence(event, id), sighting.species())
                .with("dwc:eventDate", sighting.date())
                .with("dwc:occurrenceStatus", "present")
                .with("dwc:individualCount", sighting.count())
                .with("dwc:sex", sighting.sex() == Sex.UNKNOWN ? "" : VisitRows.lower(sighting.sex()))
                .with("dwc:lifeStage", stage(sighting.age()))
                .with("dwc:vitality", sighting.activities().contains(Activity.DEAD) ? "dead" : "alive");
        places.bird(row, sighting.place());
        if (publication.withNames()) {
            row.with("dwc:recordedBy", sighting.observer());
        }
        if (publication.isPublic()) {
            sighting.breedingCode()
                    .flatMap(BreedingCode::evidenceClass)
                    .ifPresent(
                            evidence -> row.with("dwc:reproductiveCondition", "breeding " + VisitRows.lower(evidence)));
        } else {
            privately(row, sighting, event);
        }
    }

    private void privately(ArchiveRow row, Sighting sighting, String event) {
        row.with("dwc:recordNumber", sighting.label())
                .with("dwc:eventTime", sighting.time().map(VisitRows::minutes))
                .with(
                        "dwc:reproductiveCondition",
                        sighting.breedingCode().map(code -> "breeding code " + code.number()))
                .with(
                        "dwc:behavior",
                        String.join(
                                "; ",
                                sighting.activities().stream()
                                        .sorted()
                                        .map(VisitRows::lower)
                                        .toList()))
                .with("dwc:associatedOccurrences", simultaneous(sighting))
                .with("dwc:occurrenceRemarks", sighting.note());
        String along = along(records, sighting.place().riverId());
        star.measured(sighting.id(), event, PublishedId.of(sighting.id()))
                .with("breeding evidence code", sighting.breedingCode().map(BreedingCode::number), "", CODES)
                .with(
                        "river chainage",
                        tenthOfAMetre(sighting.place().chainage().metres()),
                        "m",
                        along)
                .with(
                        "bank, looking downstream",
                        VisitRows.lower(sighting.place().bank()).replace("unknown", ""),
                        "",
                        "")
                .with(
                        "age told in the field",
                        sighting.age() == Age.UNKNOWN ? "" : VisitRows.lower(sighting.age()),
                        "",
                        "")
                .with("colour-ring reading", sighting.rings(), "", "left leg first, each leg from the top")
                .with("flew to", sighting.flewTo().map(to -> tenthOfAMetre(to.metres())), "m", along)
                .with("turned back there", sighting.turnedBack() ? "yes" : "", "", "");
    }

    private String simultaneous(Sighting sighting) {
        List<String> others = sighting.simultaneousWith().stream()
                .filter(published::contains)
                .map(PublishedId::of)
                .sorted()
                .toList();
        return others.isEmpty() ? "" : "at the same time as: " + String.join(" | ", others);
    }

    private String casual(Sighting sighting) {
        String id = PublishedId.of(sighting.id(), "event");
        ArchiveRow row = star.event(id, "Observation").with("dwc:eventDate", sighting.date());
        places.bird(row, sighting.place());
        star.inventory(id)
                .with("eco:inventoryTypes", "adventitious")
                .with("eco:isAbsenceReported", false)
                .with("eco:isAbundanceReported", true);
        return id;
    }

    static ArchiveRow taxon(ArchiveRow row, Species species) {
        return row.with("dwc:scientificName", species.scientificName())
                .with("dwc:taxonRank", "species")
                .with("dwc:class", "Aves")
                .with("dwc:vernacularName", species.englishName());
    }

    /** Whether a juvenile still depends on its parents stands among the measurements: the vocabulary has no word for it. */
    private static String stage(Age age) {
        return switch (age) {
            case ADULT -> "adult";
            case JUVENILE, DEPENDENT_JUVENILE, INDEPENDENT_JUVENILE -> "juvenile";
            case FIRST_YEAR, UNKNOWN -> "";
        };
    }

    /** {@return how a distance along a river was measured} */
    static String along(Records records, UUID riverId) {
        String version = records.rivers()
                .line(riverId)
                .map(RiverLine::version)
                .map(Object::toString)
                .orElse("1");
        return "along the water from the mouth; version " + version + " of the river's line";
    }

    private static double tenthOfAMetre(double metres) {
        return Math.round(metres * 10) / 10.0;
    }
}

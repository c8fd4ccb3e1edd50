package org.ouzelbook.tracker.exchange.darwin;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.exchange.export.Records;

/** Nests as events, each with one occurrence, and under it an event for each look. What they tell in public is their course and not their place. */
final class NestRows {
    private final Records records;
    private final Publication publication;
    private final ToldPlaces places;
    private final Star star;
    private final Map<UUID, List<NestCheck>> checks = new HashMap<>();

    NestRows(Records records, Publication publication, ToldPlaces places, Star star) {
        this.records = records;
        this.publication = publication;
        this.places = places;
        this.star = star;
        records.nestChecks()
                .forEach(check -> checks.computeIfAbsent(check.nestId(), id -> new ArrayList<>())
                        .add(check));
    }

    void write() {
        for (Nest nest : records.nests()) {
            List<NestCheck> looks = checks.getOrDefault(nest.id(), List.of());
            String days = days(nest, looks);
            star.add(days, PublishedId.of(nest.id()), () -> write(nest, looks, days));
            looks.forEach(look -> star.add(look.date(), PublishedId.of(look.id()), () -> write(look, nest)));
        }
    }

    private void write(Nest nest, List<NestCheck> looks, String days) {
        String event = PublishedId.of(nest.id());
        String occurrence = PublishedId.of(nest.id(), "occurrence");
        ArchiveRow row = star.event(event, "Observation")
                .with("dwc:eventDate", days)
                .with("dwc:samplingProtocol", "nest record");
        places.nest(row, nest.place());
        ArchiveRow bird = SightingRows.taxon(star.occurrence(event, occurrence), nest.species())
                .with("dwc:eventDate", days)
                .with("dwc:occurrenceStatus", "present")
                .with("dwc:reproductiveCondition", laid(looks) ? "breeding confirmed" : "");
        places.nest(bird, nest.place());
        if (!publication.isPublic()) {
            row.with("dwc:fieldNumber", nest.label())
                    .with("dwc:habitat", "nest on: " + VisitRows.lower(nest.site()))
                    .with("dwc:eventRemarks", nest.note());
            star.measured(nest.id(), event, occurrence)
                    .with(
                            "river chainage",
                            Math.round(nest.place().chainage().metres() * 10) / 10.0,
                            "m",
                            SightingRows.along(records, nest.place().riverId()));
            nest.heightMetres()
                    .ifPresent(height -> star.measured(nest.id(), event, occurrence)
                            .with("nest height above water", height, "m", ""));
        }
    }

    private void write(NestCheck look, Nest nest) {
        String event = PublishedId.of(look.id());
        ArchiveRow row = star.event(event, "Observation")
                .with("dwc:parentEventID", PublishedId.of(nest.id()))
                .with("dwc:eventDate", look.date())
                .with("dwc:samplingProtocol", "nest record");
        places.nest(row, nest.place());
        Star.Measured measured = star.measured(look.id(), event, "")
                .with("nest stage", look.stage() == NestStage.UNKNOWN ? "" : VisitRows.lower(look.stage()), "", "")
                .with("nest outcome", look.outcome().map(VisitRows::lower), "", "");
        look.eggs().ifPresent(eggs -> measured.with("eggs", eggs, "individuals", "counted"));
        look.young().ifPresent(young -> measured.with("young", young, "individuals", "counted"));
        look.adults().ifPresent(adults -> measured.with("adults in attendance", adults, "individuals", "counted"));
        if (!publication.isPublic()) {
            measured.with("nest stage in words", look.stageText(), "", "");
            row.with("dwc:eventRemarks", look.note());
        }
    }

    private static boolean laid(List<NestCheck> looks) {
        return looks.stream()
                .anyMatch(look -> look.stage() == NestStage.EGGS
                        || look.stage() == NestStage.YOUNG
                        || look.eggs().orElse(0) + look.young().orElse(0) > 0);
    }

    private static String days(Nest nest, List<NestCheck> looks) {
        TreeSet<LocalDate> days = new TreeSet<>();
        nest.found().ifPresent(days::add);
        looks.stream().map(NestCheck::date).forEach(days::add);
        if (days.isEmpty()) {
            return "";
        }
        return days.size() == 1 ? days.first().toString() : days.first() + "/" + days.last();
    }
}

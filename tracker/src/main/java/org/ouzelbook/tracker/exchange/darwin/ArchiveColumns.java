package org.ouzelbook.tracker.exchange.darwin;

import java.util.List;

/** The columns of the tables that an archive becomes; all are names that tables of our own may have. */
final class ArchiveColumns {
    static final List<String> VISITS = List.of(
            "eventID",
            "eventDate",
            "eventTime",
            "waterBody",
            "from_km",
            "to_km",
            "direction",
            "mode",
            "recordedBy",
            "scientificName",
            "level",
            "weather",
            "effective",
            "eventRemarks");
    static final List<String> SIGHTINGS = List.of(
            "occurrenceID",
            "eventID",
            "eventDate",
            "eventTime",
            "waterBody",
            "km",
            "decimalLatitude",
            "decimalLongitude",
            "coordinateUncertaintyInMeters",
            "bank",
            "scientificName",
            "occurrenceStatus",
            "individualCount",
            "lifeStage",
            "sex",
            "behavior",
            "reproductiveCondition",
            "rings",
            "simultaneous_with",
            "flew_to_km",
            "turned_back",
            "recordedBy",
            "occurrenceRemarks");
    static final List<String> SAMPLES = List.of(
            "fieldNumber",
            "eventDate",
            "waterBody",
            "decimalLatitude",
            "decimalLongitude",
            "coordinateUncertaintyInMeters",
            "minutes",
            "method",
            "sampler",
            "eventRemarks",
            "taxon",
            "abundance");

    private ArchiveColumns() {}
}

package org.ouzelbook.tracker.exchange.darwin;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;

/**
 * The rows of an archive as they are gathered: events in the middle, and around them occurrences, what was looked for, and
 * measurements, each of which hangs on one event.
 */
final class Star {
    private final List<ArchiveRow> events = new ArrayList<>();
    private final List<ArchiveRow> occurrences = new ArrayList<>();
    private final List<ArchiveRow> inventories = new ArrayList<>();
    private final List<ArchiveRow> measurements = new ArrayList<>();

    /** {@return a new event} */
    ArchiveRow event(String id, String type) {
        return added(events, id).with("dwc:eventType", type);
    }

    /** {@return a new occurrence of an event} */
    ArchiveRow occurrence(String eventId, String id) {
        return added(occurrences, eventId)
                .with("dwc:occurrenceID", id)
                .with("dwc:basisOfRecord", "HumanObservation")
                .with("dwc:kingdom", "Animalia");
    }

    /** {@return what was looked for at an event} */
    ArchiveRow inventory(String eventId) {
        return added(inventories, eventId);
    }

    private static ArchiveRow added(List<ArchiveRow> rows, String eventId) {
        ArchiveRow row = new ArchiveRow().with("dwc:eventID", eventId);
        rows.add(row);
        return row;
    }

    /**
     * Takes measurements of one thing.
     *
     * @param key the key of the record
     * @param eventId its event
     * @param occurrenceId its occurrence; blank if it is the event that is measured
     */
    record Measured(Star star, UUID key, String eventId, String occurrenceId) {
        /** Measures, unless the value is blank. */
        Measured with(String type, Object value, String unit, String method) {
            ArchiveRow row = new ArchiveRow().with("dwc:measurementValue", value);
            if (!row.value("dwc:measurementValue").isEmpty()) {
                star.measurements.add(row.with("dwc:eventID", eventId)
                        .with("dwc:occurrenceID", occurrenceId)
                        .with("dwc:measurementID", PublishedId.of(key, type))
                        .with("dwc:measurementType", type)
                        .with("dwc:measurementUnit", unit)
                        .with("dwc:measurementMethod", method));
            }
            return this;
        }
    }

    Measured measured(UUID key, String eventId, String occurrenceId) {
        return new Measured(this, key, eventId, occurrenceId);
    }

    /** {@return the files, the event core first; in an order that tells nothing of that in which records were made} */
    List<ArchiveTable> tables() {
        events.sort(Comparator.comparing((ArchiveRow row) -> row.value("dwc:eventDate"))
                .thenComparing(row -> row.value("dwc:eventID")));
        occurrences.sort(Comparator.comparing(row -> row.value("dwc:occurrenceID")));
        inventories.sort(Comparator.comparing(row -> row.value("dwc:eventID")));
        measurements.sort(Comparator.comparing(row -> row.value("dwc:measurementID")));
        return List.of(
                ArchiveTable.of("event.txt", "http://rs.tdwg.org/dwc/terms/Event", """
                        dwc:eventID dwc:parentEventID dwc:eventType dwc:fieldNumber dwc:eventDate dwc:samplingProtocol
                        dwc:sampleSizeValue dwc:sampleSizeUnit dwc:samplingEffort dwc:habitat dwc:waterBody dwc:verbatimLocality
                        dwc:decimalLatitude dwc:decimalLongitude dwc:geodeticDatum dwc:coordinateUncertaintyInMeters
                        dwc:footprintWKT dwc:footprintSRS dwc:dataGeneralizations dwc:informationWithheld dwc:eventRemarks
                        """, events),
                ArchiveTable.of("occurrence.txt", "http://rs.tdwg.org/dwc/terms/Occurrence", """
                        dwc:eventID dwc:occurrenceID dwc:basisOfRecord dwc:recordNumber dwc:recordedBy dwc:eventDate
                        dwc:eventTime dwc:scientificName dwc:taxonRank dwc:kingdom dwc:class dwc:vernacularName
                        dwc:occurrenceStatus dwc:individualCount dwc:organismQuantity dwc:organismQuantityType dwc:sex
                        dwc:lifeStage dwc:reproductiveCondition dwc:behavior dwc:vitality dwc:associatedOccurrences
                        dwc:waterBody dwc:verbatimLocality dwc:decimalLatitude dwc:decimalLongitude dwc:geodeticDatum
                        dwc:coordinateUncertaintyInMeters dwc:dataGeneralizations dwc:informationWithheld
                        dwc:occurrenceRemarks
                        """, occurrences),
                ArchiveTable.of("humboldt.txt", "http://rs.tdwg.org/eco/terms/Event", """
                        dwc:eventID eco:inventoryTypes eco:protocolNames eco:protocolDescriptions eco:targetTaxonomicScope
                        eco:isTaxonomicScopeFullyReported eco:isAbsenceReported eco:absentTaxa
                        eco:taxonCompletenessReported eco:isAbundanceReported eco:isSamplingEffortReported
                        eco:samplingEffortProtocol eco:samplingEffortValue eco:samplingEffortUnit eco:eventDurationValue
                        eco:eventDurationUnit eco:reportedWeather eco:samplingPerformedBy
                        """, inventories),
                ArchiveTable.of(
                        "emof.txt", "http://rs.iobis.org/obis/terms/ExtendedMeasurementOrFact", """
                        dwc:eventID dwc:occurrenceID dwc:measurementID dwc:measurementType dwc:measurementValue
                        dwc:measurementUnit dwc:measurementMethod
                        """, measurements));
    }
}

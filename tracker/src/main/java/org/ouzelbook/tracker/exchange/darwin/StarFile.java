package org.ouzelbook.tracker.exchange.darwin;

import java.util.List;

/** The files of an archive that we write: events in the middle, and around them what hangs on one event each. */
enum StarFile {
    /** Seasons, visits, nests and looks at them, kick samples, sightings without a visit. */
    EVENTS("event.txt", "http://rs.tdwg.org/dwc/terms/Event", """
            dwc:eventID dwc:parentEventID dwc:eventType dwc:fieldNumber dwc:eventDate dwc:samplingProtocol
            dwc:sampleSizeValue dwc:sampleSizeUnit dwc:samplingEffort dwc:habitat dwc:waterBody dwc:verbatimLocality
            dwc:decimalLatitude dwc:decimalLongitude dwc:geodeticDatum dwc:coordinateUncertaintyInMeters
            dwc:footprintWKT dwc:footprintSRS dwc:dataGeneralizations dwc:informationWithheld dwc:eventRemarks
            """),
    /** What was seen, and what was looked for and not found. */
    OCCURRENCES("occurrence.txt", "http://rs.tdwg.org/dwc/terms/Occurrence", """
            dwc:eventID dwc:occurrenceID dwc:basisOfRecord dwc:recordNumber dwc:recordedBy dwc:eventDate
            dwc:eventTime dwc:scientificName dwc:taxonRank dwc:kingdom dwc:class dwc:vernacularName
            dwc:occurrenceStatus dwc:individualCount dwc:organismQuantity dwc:organismQuantityType dwc:sex
            dwc:lifeStage dwc:reproductiveCondition dwc:behavior dwc:vitality dwc:associatedOccurrences
            dwc:waterBody dwc:verbatimLocality dwc:decimalLatitude dwc:decimalLongitude dwc:geodeticDatum
            dwc:coordinateUncertaintyInMeters dwc:dataGeneralizations dwc:informationWithheld
            dwc:occurrenceRemarks
            """),
    /** What was looked for. */
    INVENTORIES("humboldt.txt", "http://rs.tdwg.org/eco/terms/Event", """
            dwc:eventID eco:inventoryTypes eco:protocolNames eco:protocolDescriptions eco:targetTaxonomicScope
            eco:isTaxonomicScopeFullyReported eco:isAbsenceReported eco:absentTaxa
            eco:taxonCompletenessReported eco:isAbundanceReported eco:isSamplingEffortReported
            eco:samplingEffortProtocol eco:samplingEffortValue eco:samplingEffortUnit eco:eventDurationValue
            eco:eventDurationUnit eco:reportedWeather eco:samplingPerformedBy
            """),
    /** Measurements of an event or an occurrence. */
    MEASUREMENTS("emof.txt", "http://rs.iobis.org/obis/terms/ExtendedMeasurementOrFact", """
            dwc:eventID dwc:occurrenceID dwc:measurementID dwc:measurementType dwc:measurementValue
            dwc:measurementUnit dwc:measurementMethod
            """);

    private final String fileName;
    private final String rowType;
    private final String terms;

    StarFile(String fileName, String rowType, String terms) {
        this.fileName = fileName;
        this.rowType = rowType;
        this.terms = terms;
    }

    /** {@return its name in the archive} */
    String fileName() {
        return fileName;
    }

    /** {@return what each row is} */
    String rowType() {
        return rowType;
    }

    /** {@return the terms that its columns may hold, the event's identifier first; with the prefix of their vocabulary} */
    List<String> terms() {
        return List.of(terms.strip().split("\\s+", -1));
    }
}

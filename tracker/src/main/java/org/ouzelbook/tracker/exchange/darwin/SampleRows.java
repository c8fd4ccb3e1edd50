package org.ouzelbook.tracker.exchange.darwin;

import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.exchange.export.Records;

/** Kick samples as events, with what was in them as occurrences. */
record SampleRows(Records records, Publication publication, ToldPlaces places, Star star) {
    void write() {
        records.kickSamples()
                .forEach(sample -> star.add(sample.date(), PublishedId.of(sample.id()), () -> write(sample)));
    }

    private void write(KickSample sample) {
        String event = PublishedId.of(sample.id());
        ArchiveRow row = star.event(event, "Sample")
                .with("dwc:eventDate", sample.date())
                .with("dwc:samplingProtocol", publication.words().kickSample());
        sample.minutes()
                .ifPresent(minutes -> row.with("dwc:sampleSizeValue", minutes).with("dwc:sampleSizeUnit", "minute"));
        places.openly(row, sample.place());
        if (!publication.isPublic()) {
            row.with("dwc:fieldNumber", sample.label())
                    .with("dwc:samplingEffort", sample.method())
                    .with("dwc:eventRemarks", sample.note());
        }
        for (int i = 0; i < sample.taxa().size(); i++) {
            write(sample, event, i);
        }
    }

    private void write(KickSample sample, String event, int index) {
        KickSample.Taxon taxon = sample.taxa().get(index);
        String id = PublishedId.of(sample.id(), "taxon " + taxon.name() + " " + index);
        String abundance = taxon.abundance().strip();
        boolean counted = abundance.matches("\\d{1,9}");
        boolean none = counted && Integer.parseInt(abundance) == 0;
        ArchiveRow row = star.occurrence(event, id)
                .with("dwc:eventDate", sample.date())
                .with("dwc:scientificName", taxon.name())
                .with("dwc:occurrenceStatus", none ? "absent" : "present");
        if (counted) {
            row.with("dwc:organismQuantity", abundance).with("dwc:organismQuantityType", "individuals");
        }
        if (publication.withNames()) {
            row.with("dwc:recordedBy", sample.sampler());
        }
        places.openly(row, sample.place());
        star.measured(sample.id(), event, id)
                .with(
                        "abundance class " + index,
                        counted ? "" : abundance,
                        "",
                        "A 1 to 9, B 10 to 99, C 100 to 999, D 1000 or more individuals");
    }
}

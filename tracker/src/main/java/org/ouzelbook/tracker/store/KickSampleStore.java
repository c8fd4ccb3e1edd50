package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.Table.date;
import static org.ouzelbook.tracker.store.Table.decimal;
import static org.ouzelbook.tracker.store.Table.text;
import static org.ouzelbook.tracker.store.Table.texts;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.ouzelbook.tracker.domain.KickSample;

/** Keeps kick samples, each with its sheet. */
final class KickSampleStore {
    static final EntryTable<KickSample> SAMPLES = new EntryTable<>(
            KickSample.class,
            Table.ofRecords(
                    "kick_sample",
                    Places.and(
                            text("label"),
                            date("sampled_on"),
                            decimal("kicked_min"),
                            text("method"),
                            text("sampler"),
                            text("note"),
                            texts("taxa"),
                            texts("abundances"))),
            (sample, row) -> Places.write(sample.place(), row)
                    .set("label", sample.label())
                    .set("sampled_on", sample.date())
                    .set("kicked_min", sample.minutes())
                    .set("method", sample.method())
                    .set("sampler", sample.sampler())
                    .set("note", sample.note())
                    .set(
                            "taxa",
                            sample.taxa().stream().map(KickSample.Taxon::name).toList())
                    .set(
                            "abundances",
                            sample.taxa().stream()
                                    .map(KickSample.Taxon::abundance)
                                    .toList()),
            row -> new KickSample(
                    row.id(),
                    row.text("label"),
                    row.date("sampled_on"),
                    Places.read(row),
                    row.optionalDecimal("kicked_min"),
                    row.text("method"),
                    row.text("sampler"),
                    row.text("note"),
                    sheet(row.texts("taxa"), row.texts("abundances"))));

    private KickSampleStore() {}

    private static List<KickSample.Taxon> sheet(List<String> taxa, List<String> abundances) {
        return IntStream.range(0, taxa.size())
                .mapToObj(line -> new KickSample.Taxon(taxa.get(line), abundances.get(line)))
                .toList();
    }

    static List<KickSample> samples(Database database) {
        return SAMPLES.all(database, "sampled_on, label");
    }

    static Optional<KickSample> labelled(Database database, String label) {
        return SAMPLES.where(database, "WHERE label = ?", label).stream().findFirst();
    }
}

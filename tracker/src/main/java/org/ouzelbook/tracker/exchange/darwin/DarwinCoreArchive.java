package org.ouzelbook.tracker.exchange.darwin;

import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.exchange.export.FixedZip;
import org.ouzelbook.tracker.exchange.export.Records;

/**
 * Records of a book as a Darwin Core archive: seasons, visits, nests, looks at nests and kick samples are events; sightings, and
 * species that were looked for and not found, are occurrences of them.
 *
 * <p>The same record has the same identifier in every archive that is made of its book, and the same records make the same bytes.
 */
public final class DarwinCoreArchive {
    private final Records records;
    private final Publication publication;
    private final Star star = new Star();
    private final List<ArchiveTable> tables;

    private DarwinCoreArchive(Records records, Publication publication) {
        this.records = records;
        this.publication = publication;
        ToldPlaces places = new ToldPlaces(records, publication);
        new VisitRows(records, publication, places, star).write();
        new SightingRows(records, publication, places, star).write();
        new NestRows(records, publication, places, star).write();
        new SampleRows(records, publication, places, star).write();
        this.tables = star.tables();
    }

    /**
     * {@return the archive of these records}
     *
     * @param records the records
     * @param publication how they are published
     */
    public static DarwinCoreArchive of(Records records, Publication publication) {
        return new DarwinCoreArchive(records, publication);
    }

    /** {@return how many rows each file has, by its name} */
    public Map<String, Integer> contents() {
        Map<String, Integer> contents = new LinkedHashMap<>();
        tables.forEach(table -> contents.put(table.file().fileName(), table.rows()));
        return contents;
    }

    /**
     * Writes the archive, a zip.
     *
     * @param out where to; it is closed
     * @throws IOException if it cannot be written
     */
    public void write(OutputStream out) throws IOException {
        try (FixedZip zip = new FixedZip(out)) {
            zip.put("meta.xml", MetaXml.text(tables, publication.licence()));
            zip.put("eml.xml", EmlXml.text(publication, coverage()));
            for (ArchiveTable table : tables) {
                zip.put(table.file().fileName(), text -> {
                    text.write(table.header());
                    star.each(table.file(), row -> text.write(table.line(row)));
                });
            }
        }
    }

    private EmlXml.Coverage coverage() {
        TreeSet<LocalDate> days = new TreeSet<>();
        records.visits().forEach(visit -> days.add(visit.date()));
        records.sightings().forEach(sighting -> days.add(sighting.date()));
        records.kickSamples().forEach(sample -> days.add(sample.date()));
        List<River> rivers = records.rivers().rivers();
        String names = rivers.stream().map(River::name).sorted().collect(Collectors.joining(", "));
        UUID id = rivers.stream()
                .map(River::id)
                .sorted()
                .findFirst()
                .map(key -> UUID.fromString(PublishedId.of(key, "data set")))
                .orElseGet(() -> new UUID(0, 0));
        return new EmlXml.Coverage(
                id,
                names,
                corners(),
                days.isEmpty() ? Optional.empty() : Optional.of(days.first()),
                days.isEmpty() ? Optional.empty() : Optional.of(days.last()));
    }

    private List<GeoPoint> corners() {
        List<GeoPoint> points = new ArrayList<>();
        records.rivers()
                .rivers()
                .forEach(river ->
                        records.rivers().line(river.id()).map(RiverLine::points).ifPresent(points::addAll));
        if (points.isEmpty()) {
            return List.of();
        }
        return List.of(
                new GeoPoint(
                        points.stream().mapToDouble(GeoPoint::latitude).min().orElseThrow(),
                        points.stream().mapToDouble(GeoPoint::longitude).min().orElseThrow()),
                new GeoPoint(
                        points.stream().mapToDouble(GeoPoint::latitude).max().orElseThrow(),
                        points.stream().mapToDouble(GeoPoint::longitude).max().orElseThrow()));
    }
}

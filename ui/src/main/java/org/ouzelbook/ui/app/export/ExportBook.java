package org.ouzelbook.ui.app.export;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.exchange.darwin.DarwinCoreArchive;
import org.ouzelbook.tracker.exchange.export.Audience;
import org.ouzelbook.tracker.exchange.export.CsvFiles;
import org.ouzelbook.tracker.exchange.export.DataTable;
import org.ouzelbook.tracker.exchange.export.Feature;
import org.ouzelbook.tracker.exchange.export.GeoJsonFile;
import org.ouzelbook.tracker.exchange.export.GpxFile;
import org.ouzelbook.tracker.exchange.export.KmlFile;
import org.ouzelbook.tracker.exchange.export.RecordTables;
import org.ouzelbook.tracker.exchange.export.Records;
import org.ouzelbook.tracker.exchange.export.XlsxFile;
import org.ouzelbook.tracker.exchange.geopackage.GeoPackageFile;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.tracker.store.SightingQuery;
import org.ouzelbook.ui.app.BookRecords;
import org.ouzelbook.ui.app.WrongRequest;
import org.ouzelbook.ui.app.leak.Leak;
import org.ouzelbook.ui.app.leak.LeakCheck;
import org.ouzelbook.ui.app.leak.PrivateFile;
import org.ouzelbook.ui.app.leak.PublicFile;

/** Writes records of a book into a file of another form. The book is not changed. */
public final class ExportBook {
    private final ExportRequest request;
    private final SurveyRecords read;
    private final LocalDate changed;
    private final Records records;

    private ExportBook(ExportRequest request, SurveyRecords read, LocalDate changed) {
        this.request = request;
        this.read = read;
        this.changed = changed;
        this.records = new Records(
                read.rivers(),
                read.landmarks(),
                read.reaches(),
                read.visits(),
                read.sightings(),
                read.nests(),
                read.nestChecks(),
                read.ringedBirds(),
                read.kickSamples(),
                read.decisions());
    }

    /**
     * What was written.
     *
     * @param file the file; empty if nothing was written
     * @param form its form
     * @param audience who may read it: {@code public} or {@code private}
     * @param contents how many rows or features of each table or layer it holds
     * @param leaks what a public form would have told of a nest, a ring or a person; it was therefore not written
     */
    public record Answer(
            Optional<String> file, String form, String audience, Map<String, Integer> contents, List<Leak> leaks) {}

    /**
     * Exports.
     *
     * @param request what, and how
     * @return what was written
     * @throws WrongRequest if the file’s name ends like another form, records are to be published and nobody said under which licence,
     *     or tables for an analysis are not asked for privately
     * @throws IOException if the file cannot be written, or is there already and may not be replaced
     */
    public static Answer run(ExportRequest request) throws IOException {
        Path file = request.out().orElseGet(() -> usualFile(request));
        if (request.format().isMisnamed(file.toString())) {
            throw new WrongRequest(Message.of(
                    "export.wrong.ending",
                    String.valueOf(file.getFileName()),
                    request.format().written(),
                    request.format().extension()));
        }
        if (request.out().isPresent() && !request.replace() && Files.exists(file)) {
            throw new FileAlreadyExistsException(file.toString());
        }
        if (request.format() == ExportFormat.DARWIN_CORE
                && request.publishing().licence().isEmpty()) {
            throw new WrongRequest(Message.of("export.wrong.noLicence"));
        }
        if (request.format() == ExportFormat.ANALYSIS && request.audience() == Audience.PUBLIC) {
            throw new WrongRequest(Message.of("export.wrong.analysis"));
        }
        try (Book book = Book.open(request.book())) {
            SurveyRecords read = book.read(view -> read(view, request));
            LocalDate changed = book.history(1).get(0).at().toLocalDate();
            LeakCheck check =
                    book.read(view -> LeakCheck.of(view, request.publishing().withNames()));
            return new ExportBook(request, read, changed).write(file, check);
        }
    }

    private static SurveyRecords read(BookView view, ExportRequest request) {
        Predicate<LocalDate> asked =
                day -> request.season().isEmpty() || request.season().get() == day.getYear();
        return BookRecords.of(view, SightingQuery.ALL, asked);
    }

    private static Path usualFile(ExportRequest request) {
        String stem = String.valueOf(request.book().getFileName()).replaceFirst("(\\.mv)?\\.db$", "");
        return Path.of(
                stem + "-" + word(request.audience()) + "." + request.format().extension());
    }

    private static String word(Audience audience) {
        return audience == Audience.PUBLIC ? "public" : "private";
    }

    /** A private file goes to the disk as it is made; a public one is looked through first, and so is made whole. */
    private Answer write(Path file, LeakCheck check) throws IOException {
        Map<String, Integer> contents = new LinkedHashMap<>();
        PrivateFile.Content content = content(contents);
        List<Leak> leaks = List.of();
        if (request.audience() == Audience.PUBLIC) {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            content.write(bytes);
            leaks = PublicFile.write(check, file, bytes.toByteArray());
        } else {
            PrivateFile.write(file, content);
        }
        Optional<String> written =
                leaks.isEmpty() ? Optional.of(file.toAbsolutePath().toString()) : Optional.empty();
        return new Answer(written, request.format().written(), word(request.audience()), contents, leaks);
    }

    /** {@return what writes the file; how many rows or features of each kind it will hold is told at once} */
    private PrivateFile.Content content(Map<String, Integer> contents) {
        return switch (request.format()) {
            case CSV, XLSX -> {
                List<DataTable> tables = RecordTables.of(records, request.audience());
                tables.forEach(table -> contents.put(table.name(), table.rows().size()));
                yield out -> writeTables(tables, out);
            }
            case DARWIN_CORE -> {
                DarwinCoreArchive archive =
                        DarwinCoreArchive.of(records, PublicationWords.of(records, request, changed));
                contents.putAll(archive.contents());
                yield archive::write;
            }
            case ANALYSIS -> {
                List<DataTable> tables = AnalysisTables.of(read);
                tables.forEach(table -> contents.put(table.name(), table.rows().size()));
                yield out -> CsvFiles.write(tables, Map.of(), out);
            }
            case GEOJSON, KML, GPX, GEOPACKAGE -> {
                List<Feature> features = features();
                features.forEach(feature -> contents.merge(feature.layer(), 1, Integer::sum));
                yield out -> out.write(
                        request.format() == ExportFormat.GEOPACKAGE
                                ? GeoPackageFile.bytes(features, changed)
                                : text(features).getBytes(StandardCharsets.UTF_8));
            }
        };
    }

    private void writeTables(List<DataTable> tables, OutputStream out) throws IOException {
        DataTable dictionary = DataDictionary.of(tables);
        DataTable settings = SettingsTable.of();
        if (request.format() == ExportFormat.XLSX) {
            List<DataTable> all = new ArrayList<>(tables);
            all.add(settings);
            all.add(dictionary);
            XlsxFile.write(all, out);
        } else {
            Map<String, String> others = new LinkedHashMap<>();
            others.put("rivers.geojson", GeoJsonFile.text(MapFeatures.rivers(records)));
            others.put("settings.md", DataDictionary.markdown(settings));
            others.put("dictionary.md", DataDictionary.markdown(dictionary));
            CsvFiles.write(tables, others, out);
        }
    }

    private List<Feature> features() {
        List<TerritoryMap> maps = maps();
        return request.format() == ExportFormat.GPX
                ? MapFeatures.forTheField(records, maps, request.audience())
                : MapFeatures.all(records, maps, request.audience());
    }

    private String text(List<Feature> features) {
        String title =
                records.rivers().rivers().stream().map(river -> river.name()).collect(Collectors.joining(", "));
        return switch (request.format()) {
            case KML -> KmlFile.text(title, features);
            case GPX -> GpxFile.text(title, features);
            default -> GeoJsonFile.text(features);
        };
    }

    /** The territories of each species that was looked for in the season, or in the last one. */
    private List<TerritoryMap> maps() {
        List<TerritoryMap> maps = new ArrayList<>();
        for (Species species : Species.all()) {
            read.visits().stream()
                    .filter(visit -> visit.lookedFor().contains(species))
                    .mapToInt(visit -> visit.date().getYear())
                    .max()
                    .ifPresent(season ->
                            maps.add(TerritoryMap.of(read, species, season, MapSettings.usualFor(species), Water.ALL)));
        }
        return maps;
    }
}

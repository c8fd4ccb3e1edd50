package org.ouzelbook.ui.app.export;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
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
import java.util.concurrent.CancellationException;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.ouzelbook.stats.survey.MapSettings;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.TerritoryOutline;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
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
    private final Optional<LeakCheck> check;
    private final ExportStep.Listener listener;
    private final Records records;

    /**
     * @param request what, and how
     * @param read the records
     * @param changed the day of the last change
     * @param check looks through what is for everybody; empty if it is not
     * @param listener hears how far it has come
     */
    private ExportBook(
            ExportRequest request,
            SurveyRecords read,
            LocalDate changed,
            Optional<LeakCheck> check,
            ExportStep.Listener listener) {
        this.request = request;
        this.read = read;
        this.changed = changed;
        this.check = check;
        this.listener = listener;
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
     * @param listener hears how far it has come
     * @return what was written
     * @throws CancellationException if it is stopped; nothing was written
     * @throws WrongRequest if the file’s name ends like another form, the form has no room for the records, records are to be published and nobody said under which licence,
     *     or tables for an analysis are not asked for privately
     * @throws IOException if the file cannot be written, or is there already and may not be replaced
     */
    public static Answer run(ExportRequest request, ExportStep.Listener listener) throws IOException {
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
            LocalDate changed = book.history(1).get(0).at().toLocalDate();
            return book.read(view -> of(view, request, changed, listener)).write(file);
        }
    }

    private static ExportBook of(
            BookView view, ExportRequest request, LocalDate changed, ExportStep.Listener listener) {
        SurveyRecords written = BookRecords.asWritten(view, listener.at(ExportStep.READING));
        Optional<LeakCheck> check = request.audience() == Audience.PUBLIC
                ? Optional.of(LeakCheck.of(view, written, request.publishing().withNames()))
                : Optional.empty();
        Predicate<LocalDate> asked =
                day -> request.season().isEmpty() || request.season().get() == day.getYear();
        SurveyRecords once = BookRecords.once(view, written, asked);
        return new ExportBook(request, once, changed, check, listener);
    }

    private static Path usualFile(ExportRequest request) {
        String stem = String.valueOf(request.book().getFileName()).replaceFirst("(\\.mv)?\\.db$", "");
        return Path.of(
                stem + "-" + word(request.audience()) + "." + request.format().extension());
    }

    private static String word(Audience audience) {
        return audience == Audience.PUBLIC ? "public" : "private";
    }

    /** A private file goes to the disk as it is made; a public one is looked through first. */
    private Answer write(Path file) throws IOException {
        Map<String, Integer> contents = new LinkedHashMap<>();
        Progress progress = listener.at(ExportStep.WRITING);
        PrivateFile.Content content = content(contents);
        PrivateFile.Content told = out -> content.write(new ToldStream(out, progress));
        List<Leak> leaks = List.of();
        if (check.isPresent()) {
            leaks = PublicFile.write(check.get(), file, told, () -> listener.at(ExportStep.LOOKING));
        } else {
            PrivateFile.write(file, told);
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
                if (request.format() == ExportFormat.XLSX) {
                    XlsxFile.noRoom(tables).ifPresent(why -> {
                        throw new WrongRequest(why);
                    });
                }
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
                yield out -> writeFeatures(features, out);
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
        List<TerritoryOutline> territories = territories();
        return request.format() == ExportFormat.GPX
                ? MapFeatures.forTheField(records, territories, request.audience())
                : MapFeatures.all(records, territories, request.audience());
    }

    private void writeFeatures(List<Feature> features, OutputStream out) throws IOException {
        if (request.format() == ExportFormat.GEOPACKAGE) {
            out.write(GeoPackageFile.bytes(features, changed));
            return;
        }
        String title =
                records.rivers().rivers().stream().map(river -> river.name()).collect(Collectors.joining(", "));
        Writer writer = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
        switch (request.format()) {
            case KML -> KmlFile.write(title, features, writer);
            case GPX -> GpxFile.write(title, features, writer);
            default -> GeoJsonFile.write(features, writer);
        }
        writer.flush();
    }

    /** The territories of each species that was looked for in the season, or in the last one. */
    private List<TerritoryOutline> territories() {
        List<TerritoryOutline> territories = new ArrayList<>();
        for (Species species : Species.all()) {
            read.visits().stream()
                    .filter(visit -> visit.lookedFor().contains(species))
                    .mapToInt(visit -> visit.date().getYear())
                    .max()
                    .ifPresent(season -> territories.addAll(
                            TerritoryMap.outlines(read, species, season, MapSettings.usualFor(species))));
        }
        return territories;
    }
}

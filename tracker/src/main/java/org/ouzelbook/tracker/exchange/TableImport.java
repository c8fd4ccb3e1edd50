package org.ouzelbook.tracker.exchange;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.exchange.cell.CellAt;
import org.ouzelbook.tracker.exchange.cell.DateOrder;
import org.ouzelbook.tracker.exchange.darwin.ArchiveTables;
import org.ouzelbook.tracker.exchange.darwin.ReadArchive;
import org.ouzelbook.tracker.exchange.file.CsvRow;
import org.ouzelbook.tracker.exchange.file.CsvRows;
import org.ouzelbook.tracker.exchange.file.FileSource;
import org.ouzelbook.tracker.exchange.file.TableFile;
import org.ouzelbook.tracker.exchange.file.UnreadableFile;
import org.ouzelbook.tracker.exchange.river.KmlPlaces;
import org.ouzelbook.tracker.exchange.trip.GpxTrip;
import org.ouzelbook.tracker.exchange.xlsx.Workbook;
import org.ouzelbook.tracker.store.BookEdit;

/**
 * Tables on their way into a book. They are read twice: once to understand each of them as a whole, and then row by row, in
 * the order of {@link TableKind}, whatever their names. No more than a few rows are held at a time.
 */
public final class TableImport {
    private final ImportAnswers answers;
    private final List<TableSurvey> tables = new ArrayList<>();
    private final List<Problem> unreadable = new ArrayList<>();
    private final List<Message> skipped = new ArrayList<>();
    private final List<GpxTrip> trips = new ArrayList<>();
    private final List<ReadArchive> archives = new ArrayList<>();
    private Optional<RiverSources> rivers = Optional.empty();
    private final Map<FileSource, LeftOut> leftOut = new LinkedHashMap<>();
    private final Map<FileSource, BitSet> inBook = new HashMap<>();

    private record LeftOut(TableFile file, BitSet rows) {}

    private TableImport(ImportAnswers answers) {
        this.answers = answers;
    }

    /**
     * Reads tables through to understand them.
     *
     * @param sources the files
     * @param answers what the surveyor said beforehand
     * @param progress hears how far it is, and may stop
     * @return the tables, ready to go into a book
     * @throws ImportStopped if it was stopped
     */
    public static TableImport of(List<FileSource> sources, ImportAnswers answers, Progress progress) {
        TableImport tables = new TableImport(answers);
        tables.readAll(tables.withoutArchives(sources), progress);
        return tables;
    }

    /** Sets archives aside, which are more than the tables that they hold; a description that describes nothing is passed over. */
    private List<FileSource> withoutArchives(List<FileSource> sources) {
        Set<FileSource> parts = new HashSet<>();
        for (FileSource source : sources) {
            if (ReadArchive.isMeta(source)) {
                parts.add(source);
                reading(source, () -> add(ReadArchive.described(source, sources), parts));
            }
        }
        for (FileSource source : sources) {
            if (ReadArchive.isDescription(source) && parts.add(source)) {
                skipped.add(Message.of("import.skipped.noTable", source.name()));
            } else if (!parts.contains(source)
                    && !reading(
                            source,
                            () -> ReadArchive.bare(source, sources).ifPresent(archive -> add(archive, parts)))) {
                parts.add(source);
            }
        }
        return sources.stream().filter(source -> !parts.contains(source)).toList();
    }

    private void add(ReadArchive archive, Set<FileSource> parts) {
        archives.add(archive);
        parts.addAll(archive.parts());
    }

    private void readAll(List<FileSource> sources, Progress progress) {
        Set<FileSource> others = new HashSet<>();
        for (FileSource source : sources) {
            boolean read = reading(
                    source,
                    () -> GpxTrip.of(source).ifPresent(trip -> {
                        this.trips.add(trip);
                        others.add(source);
                    }));
            if (!read) {
                others.add(source);
            }
        }
        sources.stream().filter(KmlPlaces::isOne).forEach(source -> {
            if (!reading(source, () -> addPlaces(KmlPlaces.of(source), source, others, progress))) {
                others.add(source);
            }
        });
        List<FileSource> drawn = sources.stream()
                .filter(source -> RiverSources.isRiver(source) && !others.contains(source))
                .toList();
        if (!drawn.isEmpty()) {
            reading(drawn.get(0), () -> rivers = Optional.of(RiverSources.of(drawn, answers.rivers())));
        }
        for (FileSource source : sources) {
            if (Workbook.isOne(source)) {
                reading(source, () -> surveySheets(source, sources.size() == 1, progress));
            } else if (!RiverSources.isRiver(source)) {
                reading(source, () -> survey(source, sources.size() == 1, progress));
            }
        }
        tables.sort(Comparator.comparing(table -> table.header().kind()));
    }

    private void addPlaces(KmlPlaces places, FileSource source, Set<FileSource> others, Progress progress)
            throws IOException {
        if (places.landmarks().isPresent()) {
            TableFile file = TableFile.of(places.landmarks().get(), Header::knownColumns);
            tables.add(TableSurvey.of(file, TableKind.LANDMARKS, progress));
            if (!places.hasLines()) {
                others.add(source);
            }
        }
    }

    /** {@return sheets of spreadsheets that are no tables} */
    public List<Message> skipped() {
        return List.copyOf(skipped);
    }

    private interface Reading {
        void run() throws IOException;
    }

    /** Reads a file; one that cannot be read becomes a problem, and the others go on. */
    private boolean reading(FileSource source, Reading reading) {
        try {
            reading.run();
            return true;
        } catch (UnreadableFile e) {
            unreadable.add(new Problem(source.name(), 0, "", "", e.why()));
        } catch (IOException e) {
            String reason = Optional.ofNullable(e.getMessage()).orElse("");
            unreadable.add(
                    new Problem(source.name(), 0, "", "", Message.of("import.file.unreadable", source.name(), reason)));
        }
        return false;
    }

    /** A sheet that is no table is passed over where another sheet is one. */
    private void surveySheets(FileSource workbook, boolean alone, Progress progress) throws IOException {
        List<FileSource> sheets = Workbook.sheets(workbook);
        List<UnreadableFile> noTables = new ArrayList<>();
        for (FileSource sheet : sheets) {
            try {
                survey(sheet, alone && sheets.size() == 1, progress);
            } catch (UnreadableFile e) {
                noTables.add(e);
                skipped.add(Message.of("import.skipped.noTable", sheet.name()));
            }
        }
        if (sheets.isEmpty()) {
            throw new UnreadableFile(Message.of("import.file.allHidden"));
        }
        if (noTables.size() == sheets.size()) {
            throw noTables.get(0);
        }
    }

    private void survey(FileSource source, boolean alone, Progress progress) throws IOException {
        TableFile file = TableFile.of(source, Header::knownColumns);
        List<TableKind> kinds = Header.kinds(file.header());
        boolean told = answers.kind().isPresent() && (alone || kinds.size() != 1);
        if (!told && kinds.size() > 1) {
            throw new UnreadableFile(Message.of(
                    "import.kind.doubt", kinds.stream().map(TableKind::written).toList()));
        }
        if (!told && kinds.isEmpty()) {
            throw new UnreadableFile(whyNoKind(file.header()));
        }
        TableKind kind = told ? answers.kind().orElseThrow() : kinds.get(0);
        Header header = Header.of(kind, file.header());
        if (!kind.isSatisfiedBy(header.columns())) {
            throw new UnreadableFile(Message.of("import.kind.lacks", kind.written(), kind.missing(header.columns())));
        }
        tables.add(TableSurvey.of(file, kind, progress));
    }

    /** The kind that knows the most of the columns is the one that was probably meant. */
    private static Message whyNoKind(List<String> names) {
        TableKind nearest = null;
        long most = 0;
        for (TableKind kind : TableKind.values()) {
            long known = Header.of(kind, names).columns().size();
            if (known > most) {
                nearest = kind;
                most = known;
            }
        }
        return nearest == null
                ? Message.of("import.kind.none")
                : Message.of(
                        "import.kind.nearest",
                        nearest.written(),
                        nearest.missing(Header.of(nearest, names).columns()));
    }

    /**
     * Puts every row that is ready into a book.
     *
     * @param edit the book
     * @param progress hears how far it is, and may stop
     * @return what became of the rows
     * @throws ImportStopped if it was stopped
     */
    public ImportResult into(BookEdit edit, Progress progress) {
        leftOut.clear();
        inBook.clear();
        Findings findings = new Findings();
        unreadable.forEach(problem -> findings.add(Finding.PROBLEM, problem));
        List<RiverResult> riverResults =
                rivers.map(files -> files.into(edit, findings)).orElse(List.of());
        BookIndex book = new BookIndex(edit, answers);
        if (answers.river().isPresent() && book.usualRiver().isEmpty()) {
            throw new IllegalArgumentException(
                    "No river of the book has the name " + answers.river().get());
        }
        List<TableResult> results = new ArrayList<>();
        List<TableSurvey> all = new ArrayList<>(tables);
        trips.forEach(trip -> all.addAll(surveyed(trip, edit, findings, progress)));
        archives.forEach(archive -> all.addAll(surveyed(archive, edit, findings, progress)));
        all.sort(Comparator.comparing(table -> table.header().kind()));
        long total = all.stream().mapToLong(TableSurvey::rows).sum();
        long done = 0;
        for (TableSurvey survey : all) {
            TableContext table = TableContext.of(survey, answers, book);
            noteContradiction(table, findings);
            results.add(put(table, findings, done, total, progress));
            done += survey.rows();
        }
        return new ImportResult(riverResults, results, findings);
    }

    /** {@return the tables of a walk, whose rivers may have come with the same import} */
    private List<TableSurvey> surveyed(GpxTrip trip, BookEdit edit, Findings findings, Progress progress) {
        GpxTrip.Tables made = trip.tables(edit.network(), edit.reaches(), answers.zone());
        made.remarks()
                .forEach(remark -> findings.add(
                        Finding.WARNING, new Problem(trip.name(), remark.line(), "", remark.name(), remark.message())));
        List<TableSurvey> surveys = new ArrayList<>();
        for (FileSource table : made.tables()) {
            try {
                TableFile file = TableFile.of(table, Header::knownColumns);
                surveys.add(TableSurvey.of(file, Header.kinds(file.header()).get(0), progress));
            } catch (IOException e) {
                throw new UncheckedIOException(table.name(), e);
            }
        }
        return surveys;
    }

    /** {@return the tables of an archive; one that cannot be read is a problem} */
    private List<TableSurvey> surveyed(ReadArchive archive, BookEdit edit, Findings findings, Progress progress) {
        List<TableSurvey> surveys = new ArrayList<>();
        try {
            ArchiveTables made = ArchiveTables.of(archive, edit);
            made.remarks()
                    .forEach(remark -> findings.add(Finding.WARNING, new Problem(archive.name(), 0, "", "", remark)));
            for (ArchiveTables.Made table : made.tables()) {
                TableFile file = TableFile.of(table.table(), Header::knownColumns);
                inBook.put(table.table(), table.known());
                surveys.add(TableSurvey.of(file, TableKind.valueOf(table.kind().name()), progress));
            }
        } catch (UnreadableFile e) {
            findings.add(Finding.PROBLEM, new Problem(archive.name(), 0, "", "", e.why()));
        } catch (IOException e) {
            throw new UncheckedIOException(archive.name(), e);
        }
        return surveys;
    }

    private TableResult put(TableContext table, Findings findings, long before, long total, Progress progress) {
        TableSurvey survey = table.survey();
        boolean importedBefore =
                table.book().importedFile(table.file().sha256()).isPresent();
        BitSet known = importedBefore ? rowsInBook(table) : new BitSet();
        known.or(inBook.getOrDefault(survey.file().source(), new BitSet()));
        TableTally tally = new TableTally(table, findings);
        KindRows rows = rows(table, tally);
        long read = 0;
        try (CsvRows file = survey.file().rows()) {
            for (Optional<CsvRow> row = file.next(); row.isPresent(); row = file.next()) {
                read++;
                ImportStopped.ask(progress, before + read, total);
                if (survey.isTotals(row.get())) {
                    tally.countTotals();
                } else {
                    RowReader reader = new RowReader(table, row.get());
                    if (known.get(Math.toIntExact(reader.number()))) {
                        tally.settle(reader, Outcome.DUPLICATE);
                    } else {
                        reader.checkWidth();
                        rows.take(reader);
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(table.name(), e);
        }
        rows.finish();
        leftOut.put(survey.file().source(), new LeftOut(survey.file(), tally.leftOut()));
        return new TableResult(
                table.name(),
                TableUnderstood.of(table),
                read - tally.totals(),
                tally.count(Outcome.ADDED),
                tally.count(Outcome.DUPLICATE),
                tally.count(Outcome.NONE_SEEN),
                tally.open(),
                tally.rejected(),
                tally.totals(),
                tally.attached(),
                importedBefore);
    }

    /**
     * The rows of exactly this file whose records are in the book, be they edited since: they are not added again. A kick
     * sample is known by its label instead, since only one of its rows is remembered.
     */
    private static BitSet rowsInBook(TableContext table) {
        return table.header().kind() == TableKind.KICK_SAMPLES
                ? new BitSet()
                : table.book().edit().rowsFrom(table.file());
    }

    private static KindRows rows(TableContext table, TableTally tally) {
        BookIndex book = table.book();
        return switch (table.header().kind()) {
            case LANDMARKS -> new LandmarkRows(book, tally);
            case REACHES -> new ReachRows(book, tally);
            case VISITS -> new VisitRows(book, tally);
            case SIGHTINGS -> new SightingRows(table, tally);
            case NESTS -> new NestRows(book, tally);
            case NEST_CHECKS -> new NestCheckRows(book, tally);
            case RINGED_BIRDS -> new RingedBirdRows(book, tally);
            case KICK_SAMPLES -> new KickSampleRows(book, tally);
            case DECISIONS -> new DecisionRows(book, tally);
        };
    }

    /** A file that shows both orders cannot say which one its other dates have. */
    private void noteContradiction(TableContext table, Findings findings) {
        if (table.survey().dates().contradicts() && answers.dateOrder().isEmpty()) {
            CellAt dayFirst =
                    table.survey().dates().firstShowing(DateOrder.DAY_FIRST).orElseThrow();
            CellAt monthFirst =
                    table.survey().dates().firstShowing(DateOrder.MONTH_FIRST).orElseThrow();
            CellAt later = dayFirst.row() > monthFirst.row() ? dayFirst : monthFirst;
            findings.add(
                    Finding.PROBLEM,
                    new Problem(
                            table.name(),
                            later.row(),
                            later.column(),
                            later.text(),
                            Message.of(
                                    "import.date.contradiction",
                                    dayFirst.text(),
                                    dayFirst.row(),
                                    monthFirst.text(),
                                    monthFirst.row())));
        }
    }

    /**
     * Writes the rows that stayed out of the book, in the layout of their own file: same header, separator and encoding.
     *
     * @param target says where, for the name of each file that has such rows
     * @return the files written
     * @throws IOException if one cannot be written, or a source is no longer there
     */
    public List<Path> writeLeftOut(LeftOutTarget target) throws IOException {
        List<Path> written = new ArrayList<>();
        for (LeftOut rest : leftOut.values()) {
            if (!rest.rows.isEmpty()) {
                Path path = target.path(rest.file.source().plainName());
                rest.file.copyRows(rest.rows, path);
                written.add(path);
            }
        }
        return written;
    }

    /** Says where the rows of a file that stayed out are written. */
    @FunctionalInterface
    public interface LeftOutTarget {
        /**
         * {@return where to write}
         *
         * @param fileName the name of the file that the rows came from, without folders
         */
        Path path(String fileName);
    }
}

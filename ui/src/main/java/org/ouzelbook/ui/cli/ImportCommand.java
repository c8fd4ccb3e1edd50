package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.Year;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.exchange.ImportAnswers;
import org.ouzelbook.tracker.exchange.TableKind;
import org.ouzelbook.tracker.exchange.cell.DateOrder;
import org.ouzelbook.tracker.exchange.cell.DecimalSign;
import org.ouzelbook.tracker.exchange.cell.SerialDates;
import org.ouzelbook.tracker.exchange.cell.WrittenSpecies;
import org.ouzelbook.tracker.river.RiverAnswers;
import org.ouzelbook.ui.app.ImportFiles;
import org.ouzelbook.ui.app.ImportReport;
import org.ouzelbook.ui.app.ImportRequest;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes tables into a book. */
@Command(name = "import")
final class ImportCommand implements Callable<Integer> {
    private static final double FARTHEST_METRES = 250;

    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "BOOK", descriptionKey = "BOOK")
    private @Nullable Path book;

    @Parameters(index = "1..*", arity = "1..*", paramLabel = "FILE", descriptionKey = "FILE")
    private List<Path> files = new ArrayList<>();

    @Option(names = "--dry-run")
    private boolean dryRun;

    @Option(names = "--accept")
    private boolean accept;

    @Option(names = "--rejected", paramLabel = "FILE")
    private @Nullable Path rejected;

    @Option(names = "--as", paramLabel = "KIND")
    private @Nullable String kind;

    @Option(names = "--dates", paramLabel = "HOW")
    private String dates = "";

    @Option(names = "--year", paramLabel = "YEAR")
    private @Nullable String year;

    @Option(names = "--zone", paramLabel = "PLACE")
    private @Nullable String zone;

    @Option(names = "--decimals", paramLabel = "SIGN")
    private @Nullable String decimals;

    @Option(names = "--species", paramLabel = "NAME")
    private @Nullable String species;

    @Option(names = "--river", paramLabel = "NAME")
    private @Nullable String river;

    @Option(names = "--off-river", paramLabel = "METRES")
    private @Nullable String offRiver;

    @Option(names = "--bridge-gaps", paramLabel = "METRES")
    private double bridgeGaps;

    @Option(names = "--leave-gaps")
    private boolean leaveGaps;

    @Option(names = "--json")
    private boolean json;

    ImportCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        ImportReport report;
        String telling = Texts.of(dryRun ? "import.told.reading" : "import.told.importing");
        try (ProgressLine progress = new ProgressLine(terminal, telling)) {
            report = ImportFiles.run(request(), progress);
        }
        if (json) {
            Json.print(report, terminal.out());
        } else {
            new ImportPrinter(terminal, accept).print(report);
        }
        return report.isClean() || (accept && report.imported()) ? ExitCode.DONE : ExitCode.PROBLEMS;
    }

    private ImportRequest request() {
        if (book == null) {
            throw new IllegalStateException("picocli asks for BOOK before a command runs");
        }
        ImportRequest.Mode ready = accept ? ImportRequest.Mode.WHAT_IS_READY : ImportRequest.Mode.ALL_OR_NOTHING;
        return new ImportRequest(
                book,
                files,
                answers(),
                dryRun ? ImportRequest.Mode.REHEARSE : ready,
                Optional.ofNullable(rejected),
                Path.of(""),
                System.getProperty("user.name", ""));
    }

    private ImportAnswers answers() {
        return new ImportAnswers(
                LocalDate.now(ZoneId.systemDefault()),
                Optional.ofNullable(kind).map(ImportCommand::kind),
                words(dates)
                        .map(ImportCommand::dateOrder)
                        .flatMap(Optional::stream)
                        .findFirst(),
                words(dates)
                        .map(ImportCommand::serials)
                        .flatMap(Optional::stream)
                        .findFirst(),
                Optional.ofNullable(year).map(ImportCommand::year),
                Optional.ofNullable(zone).map(ImportCommand::zone),
                Optional.ofNullable(decimals).map(ImportCommand::decimals),
                Optional.ofNullable(species).map(ImportCommand::species),
                Optional.ofNullable(river),
                new RiverAnswers(Map.of(), Map.of(), gap(bridgeGaps), leaveGaps),
                Optional.ofNullable(offRiver).map(ImportCommand::metres));
    }

    private static Stream<String> words(String list) {
        return Pattern.compile(",").splitAsStream(list).map(ImportCommand::word).filter(word -> !word.isEmpty());
    }

    private static String word(String text) {
        return text.strip().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static TableKind kind(String text) {
        return TableKind.named(text)
                .orElseThrow(() -> new WrongRequest(Message.of(
                        "import.wrong.kind",
                        text,
                        Stream.of(TableKind.values()).map(TableKind::written).toList())));
    }

    private static Optional<DateOrder> dateOrder(String word) {
        return switch (word) {
            case "day-first" -> Optional.of(DateOrder.DAY_FIRST);
            case "month-first" -> Optional.of(DateOrder.MONTH_FIRST);
            case "excel-1900", "excel-1904" -> Optional.empty();
            default -> throw new WrongRequest(Message.of("import.wrong.dates", word));
        };
    }

    private static Optional<SerialDates> serials(String word) {
        return switch (word) {
            case "excel-1900" -> Optional.of(SerialDates.EXCEL_1900);
            case "excel-1904" -> Optional.of(SerialDates.EXCEL_1904);
            default -> Optional.empty();
        };
    }

    private static Year year(String text) {
        if (!text.matches("(1[89]|20)[0-9]{2}")) {
            throw new WrongRequest(Message.of("import.wrong.year", text));
        }
        return Year.of(Integer.parseInt(text));
    }

    private static ZoneId zone(String text) {
        try {
            return ZoneId.of(text);
        } catch (DateTimeException e) {
            throw new WrongRequest(Message.of("import.wrong.zone", text));
        }
    }

    private static DecimalSign decimals(String text) {
        return switch (word(text)) {
            case "point" -> DecimalSign.POINT;
            case "comma" -> DecimalSign.COMMA;
            case "either" -> DecimalSign.EITHER;
            default -> throw new WrongRequest(Message.of("import.wrong.decimals", text));
        };
    }

    private static Species species(String text) {
        return WrittenSpecies.of(text)
                .orElseThrow(() -> new WrongRequest(Message.of("import.wrong.species", text, Species.all())));
    }

    private static double gap(double metres) {
        if (!(metres >= 0)) {
            throw new WrongRequest(Message.of("import.wrong.gap", metres));
        }
        return metres;
    }

    private static double metres(String text) {
        double metres = text.matches("[0-9]{1,3}([.][0-9]+)?") ? Double.parseDouble(text) : -1;
        if (metres < 0 || metres > FARTHEST_METRES) {
            throw new WrongRequest(Message.of("import.wrong.offRiver", text));
        }
        return metres;
    }
}

package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.ui.app.BookHistory;
import org.ouzelbook.ui.app.ShowRecords;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows the records of a book. */
@Command(name = "show")
final class ShowCommand implements Callable<Integer> {
    private static final int STEPS = 1000;

    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "BOOK")
    private @Nullable Path book;

    @Parameters(index = "1", paramLabel = "WHAT")
    private String what = "";

    @Option(names = "--species", paramLabel = "NAME", converter = AnalysisOptions.SpeciesNamed.class)
    private @Nullable Species species;

    @Option(names = "--season", paramLabel = "YEAR")
    private @Nullable Integer season;

    @Option(names = "--from", paramLabel = "DATE", converter = AnalysisOptions.Day.class)
    private @Nullable LocalDate from;

    @Option(names = "--to", paramLabel = "DATE", converter = AnalysisOptions.Day.class)
    private @Nullable LocalDate to;

    @Option(names = "--river", paramLabel = "NAME")
    private @Nullable String river;

    @Option(names = "--visit", paramLabel = "LABEL")
    private @Nullable String visit;

    @Option(names = "--json")
    private boolean json;

    ShowCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        switch (what) {
            case "rivers" -> show(RecordTable.RIVERS, ShowRecords::rivers);
            case "landmarks" -> show(RecordTable.LANDMARKS, ShowRecords::landmarks);
            case "reaches" -> show(RecordTable.REACHES, ShowRecords::reaches);
            case "visits" -> show(RecordTable.VISITS, ShowRecords::visits);
            case "sightings" -> show(RecordTable.SIGHTINGS, ShowRecords::sightings);
            case "nests" -> show(RecordTable.NESTS, ShowRecords::nests);
            case "birds" -> show(RecordTable.BIRDS, ShowRecords::birds);
            case "samples" -> show(RecordTable.SAMPLES, ShowRecords::samples);
            case "decisions" -> show(RecordTable.DECISIONS, ShowRecords::decisions);
            case "files" -> show(RecordTable.FILES, ShowRecords::files);
            case "history" ->
                RecordTable.HISTORY.print(BookHistory.steps(Objects.requireNonNull(book), STEPS), terminal, json);
            default -> throw new WrongRequest(Message.of("show.what", what));
        }
        return ExitCode.DONE;
    }

    private <T> void show(RecordTable<T> table, Function<ShowRecords, List<ShowRecords.Owned<T>>> kind) {
        table.printOwned(ShowRecords.in(Objects.requireNonNull(book), wish(), kind), terminal, json);
    }

    private ShowRecords.Wish wish() {
        if (season != null && (from != null || to != null)) {
            throw new WrongRequest(Message.of("cli.scope.seasonAndDays"));
        }
        LocalDate first = season == null ? from : LocalDate.of(season, 1, 1);
        LocalDate last = season == null ? to : LocalDate.of(season, 12, 31);
        return new ShowRecords.Wish(
                Optional.ofNullable(species),
                Optional.ofNullable(first),
                Optional.ofNullable(last),
                Optional.ofNullable(river),
                Optional.ofNullable(visit));
    }
}

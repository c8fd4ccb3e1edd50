package org.ouzelbook.ui.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.LogLine;
import org.ouzelbook.ui.app.TypedLines;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Enters lines of a notebook: from the command line, or from what is typed or piped in. */
@Command(name = "log")
final class LogCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final LogPrinter printer;

    @Parameters(paramLabel = "BOOK", index = "0")
    private @Nullable Path book;

    @Parameters(paramLabel = "LINE", index = "1..*")
    private List<String> line = new ArrayList<>();

    @Option(names = "--file", paramLabel = "FILE")
    private @Nullable Path file;

    @Option(names = "--visit", paramLabel = "LABEL")
    private @Nullable String visit;

    @Option(names = "--date", paramLabel = "DAY", converter = AnalysisOptions.Day.class)
    private @Nullable LocalDate date;

    @Option(names = "--species", paramLabel = "SPECIES", converter = AnalysisOptions.SpeciesNamed.class)
    private @Nullable Species species;

    @Option(names = "--casual")
    private boolean casual;

    @Option(names = "--dry-run")
    private boolean dryRun;

    @Option(names = "--json")
    private boolean json;

    LogCommand(Terminal terminal) {
        this.terminal = terminal;
        this.printer = new LogPrinter(terminal);
    }

    @Override
    public Integer call() {
        LogLine.Options options = new LogLine.Options(
                Optional.ofNullable(visit),
                Optional.ofNullable(date),
                Optional.ofNullable(species),
                casual,
                dryRun,
                LocalDate.now(ZoneId.systemDefault()),
                System.getProperty("user.name", ""));
        try (Book open = Book.open(Objects.requireNonNull(book))) {
            LogLine log = new LogLine(open, options);
            if (file != null) {
                return fromFile(log, file);
            }
            if (line.isEmpty()) {
                return all(log, terminal.in());
            }
            boolean severalLines = line.size() > 1 && line.stream().allMatch(text -> text.contains(" "));
            return severalLines
                    ? all(log, new BufferedReader(new StringReader(String.join("\n", line))))
                    : one(log, String.join(" ", line));
        }
    }

    private int one(LogLine log, String text) {
        TypedLines.Answer answer = log.enter(text);
        if (json) {
            Json.print(answer, terminal.out());
        } else {
            printer.print(answer);
        }
        return answer.isClear() ? ExitCode.DONE : ExitCode.PROBLEMS;
    }

    private int fromFile(LogLine log, Path path) {
        try (BufferedReader lines = Files.newBufferedReader(path)) {
            return all(log, lines);
        } catch (NoSuchFileException e) {
            throw new WrongRequest(Message.of("log.noFile", path.toString()));
        } catch (IOException e) {
            throw new WrongRequest(Message.of("log.noTextFile", path.toString()));
        }
    }

    private int all(LogLine log, BufferedReader lines) {
        List<TypedLines.Answer> answers = new ArrayList<>();
        int unclear = 0;
        try {
            for (String text = lines.readLine(); text != null; text = lines.readLine()) {
                if (text.isBlank()) {
                    continue;
                }
                TypedLines.Answer answer = log.enter(text);
                unclear += answer.isClear() ? 0 : 1;
                if (json) {
                    answers.add(answer);
                } else {
                    printer.print(answer);
                    terminal.flush();
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        if (json) {
            Json.print(answers, terminal.out());
        }
        return unclear == 0 ? ExitCode.DONE : ExitCode.PROBLEMS;
    }
}

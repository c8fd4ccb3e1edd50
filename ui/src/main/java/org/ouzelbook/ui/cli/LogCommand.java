package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.LogLine;
import org.ouzelbook.ui.app.Texts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Enters lines of a notebook: from the command line, or from what is typed or piped in. */
@Command(name = "log")
final class LogCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "BOOK", index = "0")
    private @Nullable Path book;

    @Parameters(paramLabel = "LINE", index = "1..*")
    private List<String> line = new ArrayList<>();

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
            return line.isEmpty() ? all(log) : one(log, String.join(" ", line));
        }
    }

    private int one(LogLine log, String text) {
        LogLine.Answer answer = log.enter(text);
        if (json) {
            Json.print(answer, terminal.out());
        } else {
            print(answer);
        }
        return answer.isClear() ? ExitCode.DONE : ExitCode.PROBLEMS;
    }

    private int all(LogLine log) {
        List<LogLine.Answer> answers = new ArrayList<>();
        int unclear = 0;
        try {
            for (String text = terminal.in().readLine();
                    text != null;
                    text = terminal.in().readLine()) {
                if (text.isBlank()) {
                    continue;
                }
                LogLine.Answer answer = log.enter(text);
                unclear += answer.isClear() ? 0 : 1;
                if (json) {
                    answers.add(answer);
                } else {
                    print(answer);
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

    private void print(LogLine.Answer answer) {
        answer.understood().forEach(words -> terminal.out().println(words));
        answer.remarks().forEach(remark -> terminal.out().println("  " + Texts.of(remark)));
        if (answer.isClear() && !answer.stored()) {
            terminal.out().println("  " + Texts.of("log.dryRun"));
        }
        if (!answer.isClear()) {
            terminal.err().println(answer.line());
            for (LogLine.QuestionAnswer question : answer.questions()) {
                terminal.err()
                        .println(
                                " ".repeat(question.from()) + "^".repeat(Math.max(1, question.to() - question.from())));
                terminal.err().println("  " + Texts.of(question.question()));
                if (!question.choices().isEmpty()) {
                    terminal.err().println("  " + Texts.of("log.choices", question.choices()));
                }
            }
            terminal.err().println("  " + Texts.of("log.nothingStored"));
        }
    }
}

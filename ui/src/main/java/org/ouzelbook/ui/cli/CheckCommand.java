package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.ui.app.CheckBook;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.leak.CheckLeaks;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Looks whether a book is sound. */
@Command(name = "check")
final class CheckCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "BOOK")
    private @Nullable Path book;

    @Option(names = "--leaks", paramLabel = "FILE", arity = "1..*")
    private List<Path> leaks = new ArrayList<>();

    @Option(names = "--with-names")
    private boolean withNames;

    @Option(names = "--json")
    private boolean json;

    CheckCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        if (!leaks.isEmpty()) {
            return leaks();
        }
        CheckBook.Answer answer;
        try (ProgressLine progress = new ProgressLine(terminal, Texts.of("book.check.telling"))) {
            answer = CheckBook.check(Objects.requireNonNull(book), progress);
        }
        if (json) {
            Json.print(answer, terminal.out());
        } else if (answer.sound()) {
            terminal.out().println(Texts.of("book.check.sound", answer.book()));
        } else {
            answer.found().forEach(found -> terminal.out().println(Texts.of(found)));
        }
        if (!json) {
            answer.seals().forEach(told -> terminal.out().println(Texts.of(told)));
        }
        return answer.sound() ? ExitCode.DONE : ExitCode.PROBLEMS;
    }

    private int leaks() throws IOException {
        CheckLeaks.Answer answer;
        try (ProgressLine progress = new ProgressLine(terminal, Texts.of("leak.telling"))) {
            answer = CheckLeaks.check(Objects.requireNonNull(book), leaks, withNames, progress);
        }
        if (json) {
            Json.print(answer, terminal.out());
        } else if (answer.clean()) {
            terminal.out().println(Texts.of("leak.none", answer.files()));
        } else {
            LeakLines.print(answer.leaks(), terminal);
        }
        return answer.clean() ? ExitCode.DONE : ExitCode.PROBLEMS;
    }
}

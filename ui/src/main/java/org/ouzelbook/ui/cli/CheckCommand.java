package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.ui.app.CheckBook;
import org.ouzelbook.ui.app.Texts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Looks whether a book is sound. */
@Command(name = "check")
final class CheckCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "BOOK")
    private @Nullable Path book;

    @Option(names = "--json")
    private boolean json;

    CheckCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
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
        return answer.sound() ? ExitCode.DONE : ExitCode.PROBLEMS;
    }
}

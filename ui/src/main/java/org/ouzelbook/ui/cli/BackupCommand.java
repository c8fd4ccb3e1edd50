package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.ui.app.BackUpBook;
import org.ouzelbook.ui.app.Texts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Makes a proven copy of a book. */
@Command(name = "backup")
final class BackupCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "BOOK")
    private @Nullable Path book;

    @Parameters(index = "1", paramLabel = "COPY")
    private @Nullable Path copy;

    @Option(names = "--json")
    private boolean json;

    BackupCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        BackUpBook.Answer answer;
        try (ProgressLine progress = new ProgressLine(terminal, Texts.of("book.backup.telling"))) {
            answer = BackUpBook.backUp(Objects.requireNonNull(book), Objects.requireNonNull(copy), progress);
        }
        if (json) {
            Json.print(answer, terminal.out());
        } else {
            terminal.out().println(Texts.of("book.backup.done", answer.copy(), answer.megabytes()));
        }
        return ExitCode.DONE;
    }
}

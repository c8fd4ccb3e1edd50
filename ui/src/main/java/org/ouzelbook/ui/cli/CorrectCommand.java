package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.CorrectRecord;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TypedLines;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code correct}: shows a sighting or visit as its notebook line, writes it anew, or removes it. */
@Command(name = "correct")
final class CorrectCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "BOOK", index = "0")
    private @Nullable Path book;

    @Parameters(paramLabel = "RECORD", index = "1")
    private String record = "";

    @Parameters(paramLabel = "LINE", index = "2..*")
    private List<String> line = new ArrayList<>();

    @Option(names = "--remove")
    private boolean remove;

    @Option(names = "--dry-run")
    private boolean dryRun;

    @Option(names = "--json")
    private boolean json;

    CorrectCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        try (Book open = Book.open(Objects.requireNonNull(book))) {
            CorrectRecord correction = new CorrectRecord(
                    open,
                    CorrectRecord.named(open, record),
                    LocalDate.now(ZoneId.systemDefault()),
                    System.getProperty("user.name", ""));
            if (remove) {
                String removed = correction.remove();
                terminal.out().println(Texts.of("correct.removed", removed));
                return ExitCode.DONE;
            }
            if (line.isEmpty()) {
                terminal.out().println(correction.line());
                return ExitCode.DONE;
            }
            String text = String.join(" ", line);
            TypedLines.Answer answer = dryRun ? correction.read(text) : correction.enter(text);
            if (json) {
                Json.print(answer, terminal.out());
            } else {
                new LogPrinter(terminal).print(answer);
            }
            return answer.isClear() ? ExitCode.DONE : ExitCode.PROBLEMS;
        }
    }
}

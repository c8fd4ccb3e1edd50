package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.ui.app.BookHistory;
import org.ouzelbook.ui.app.Texts;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Undoes a step of a book's history, or does it again. */
@Command(name = "undo")
final class UndoCommand implements Callable<Integer> {
    private static final int LISTED = 20;

    private final Terminal terminal;

    @Parameters(paramLabel = "BOOK")
    private @Nullable Path book;

    @ArgGroup
    private Choice choice = new Choice();

    @Option(names = "--json")
    private boolean json;

    /** What to do other than undoing the last step; one of them at the most. */
    private static final class Choice {
        @Option(names = "--step", paramLabel = "NUMBER")
        private @Nullable Long step;

        @Option(names = "--back-to", paramLabel = "NUMBER")
        private @Nullable Long backTo;

        @Option(names = "--redo")
        private boolean redo;

        @Option(names = "--list")
        private boolean list;
    }

    UndoCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        Path path = Objects.requireNonNull(book);
        if (choice.list) {
            RecordTable.HISTORY.print(BookHistory.steps(path, LISTED), terminal, json);
            return ExitCode.DONE;
        }
        if (choice.backTo != null) {
            return goTo(path, choice.backTo);
        }
        BookHistory.Line done = done(path);
        if (json) {
            Json.print(done, terminal.out());
        } else {
            terminal.out().println(Texts.of(done.what()));
            terminal.out().println(Texts.of("book.undo.rows", done.added(), done.changed(), done.removed()));
        }
        return ExitCode.DONE;
    }

    private int goTo(Path path, long step) {
        List<BookHistory.Line> done;
        try (ProgressLine progress = new ProgressLine(terminal, Texts.of("book.undo.telling"))) {
            done = BookHistory.goTo(path, step, System.getProperty("user.name", ""), progress);
        }
        if (json) {
            Json.print(done, terminal.out());
        } else {
            done.forEach(line -> terminal.out().println(Texts.of(line.what())));
            terminal.out().println(Texts.of("book.goTo.done", step, done.size()));
        }
        return ExitCode.DONE;
    }

    private BookHistory.Line done(Path path) {
        String who = System.getProperty("user.name", "");
        try (ProgressLine progress = new ProgressLine(terminal, Texts.of("book.undo.telling"))) {
            return choice.redo
                    ? BookHistory.redo(path, who, progress)
                    : BookHistory.undo(
                            path,
                            choice.step == null ? OptionalLong.empty() : OptionalLong.of(choice.step),
                            who,
                            progress);
        }
    }
}

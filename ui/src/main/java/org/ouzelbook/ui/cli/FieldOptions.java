package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.BookRecords;
import org.ouzelbook.ui.app.FieldWater;
import org.ouzelbook.ui.app.Scope;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.leak.Leak;
import org.ouzelbook.ui.app.leak.LeakCheck;
import org.ouzelbook.ui.app.leak.PrivateFile;
import org.ouzelbook.ui.report.Paper;
import org.ouzelbook.ui.report.PublicPaper;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/**
 * Which water of which book one goes out to, and the file that one takes along. What is taken along is lost along the water one day,
 * and so is made for whoever finds it, unless it is said to be private; then it says so itself.
 */
final class FieldOptions {
    @Parameters(paramLabel = "BOOK")
    private @Nullable Path book;

    @Option(names = "--river", paramLabel = "NAME")
    private @Nullable String river;

    @Option(names = "--reach", paramLabel = "NAME")
    private @Nullable String reach;

    @Option(
            names = {"-o", "--out"},
            paramLabel = "FILE")
    private @Nullable Path out;

    @Option(names = "--replace")
    private boolean replace;

    @Option(names = "--private")
    private boolean isPrivate;

    /** Makes what is taken along. */
    @FunctionalInterface
    interface Maker {
        /** {@return what is taken along to some water; private or not} */
        Paper of(FieldWater water, boolean isPrivate);
    }

    /**
     * {@return how it went}
     *
     * @param usual the file that is written if none is named
     * @param maker makes what is written
     * @param written key of the words that tell where it is
     * @param terminal where they are said
     * @throws IOException if it cannot be written, or is there already and may not be replaced
     */
    int write(String usual, Maker maker, String written, Terminal terminal) throws IOException {
        Path file = out == null ? Path.of(usual) : out;
        if (!replace && Files.exists(file)) {
            throw new FileAlreadyExistsException(file.toString());
        }
        List<Leak> leaks = List.of();
        try (Book opened = Book.open(book());
                ProgressLine progress = new ProgressLine(terminal, Texts.of("export.told.reading"))) {
            Paper paper = maker.of(water(opened), isPrivate);
            if (isPrivate) {
                PrivateFile.write(file, paper.content(file));
            } else {
                LeakCheck check = opened.read(view -> LeakCheck.of(view, BookRecords.asWritten(view, progress), false));
                leaks = PublicPaper.write(check, file, paper, () -> progress.now(Texts.of("leak.telling")));
            }
        }
        if (!leaks.isEmpty()) {
            terminal.err().println(Texts.of("cli.field.stopped"));
            LeakLines.print(leaks, terminal);
            return ExitCode.PROBLEMS;
        }
        terminal.out().println(Texts.of(written, file.toString()));
        return ExitCode.DONE;
    }

    private Path book() {
        if (book == null) {
            throw new IllegalStateException("picocli asks for BOOK before a command runs");
        }
        return book;
    }

    private FieldWater water(Book opened) {
        Scope everything = Scope.everything();
        return FieldWater.of(
                opened,
                new Scope(
                        Species.DIPPER,
                        everything.season(),
                        everything.from(),
                        everything.to(),
                        Optional.ofNullable(river),
                        Optional.ofNullable(reach),
                        everything.level()));
    }
}

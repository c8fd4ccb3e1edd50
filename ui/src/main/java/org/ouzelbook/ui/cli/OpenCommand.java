package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.window.RiverWindow;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code open}: the river strip in a window; without a book, where one is chosen or begun. */
@Command(name = "open")
final class OpenCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(paramLabel = "BOOK", arity = "0..1")
    private @Nullable Path book;

    @Option(names = "--species", paramLabel = "NAME", converter = AnalysisOptions.SpeciesNamed.class)
    private @Nullable Species species;

    @Option(names = "--season", paramLabel = "YEAR")
    private @Nullable Integer season;

    OpenCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        return show(
                terminal,
                Optional.ofNullable(book),
                Optional.ofNullable(species),
                season == null ? OptionalInt.empty() : OptionalInt.of(season));
    }

    /** Shows a book until its window is closed, or where to choose or begin one, or says why it cannot. */
    static int show(Terminal terminal, Optional<Path> book, Optional<Species> species, OptionalInt season) {
        book.ifPresent(file -> Book.open(file).close());
        Optional<Message> missing = Display.missing();
        if (missing.isPresent()) {
            terminal.err().println(Texts.of(missing.get()));
            return ExitCode.PROBLEMS;
        }
        terminal.flush();
        RiverWindow.show(book, species, season);
        return ExitCode.DONE;
    }
}

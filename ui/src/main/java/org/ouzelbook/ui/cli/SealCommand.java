package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.SealSeason;
import org.ouzelbook.ui.app.Texts;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code seal}: keeps what was answered about a season when it is reported, shows it again, and tells what differs since. */
@Command(name = "seal")
final class SealCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "BOOK")
    private @Nullable Path book;

    @Option(names = "--species", paramLabel = "NAME", converter = AnalysisOptions.SpeciesNamed.class)
    private Species species = Species.DIPPER;

    @Option(names = "--season", paramLabel = "YEAR")
    private @Nullable Integer season;

    @ArgGroup
    private Choice choice = new Choice();

    @Option(names = "--by", paramLabel = "NAME")
    private String by = System.getProperty("user.name", "");

    @Option(names = "--json")
    private boolean json;

    /** What to do other than sealing; one of them at the most. */
    private static final class Choice {
        @Option(names = "--show")
        private boolean show;

        @Option(names = "--list")
        private boolean list;

        @Option(names = "--remove")
        private boolean remove;
    }

    SealCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        Optional<Integer> year = Optional.ofNullable(season);
        try (Book open = Book.open(Objects.requireNonNull(book))) {
            if (choice.list) {
                list(SealSeason.all(open));
            } else if (choice.show) {
                tell(SealSeason.of(open, species, year), Optional.empty());
            } else if (choice.remove) {
                tell(SealSeason.remove(open, species, year, by), Optional.of("seal.removed"));
            } else {
                tell(seal(open, year), Optional.of("seal.sealed"));
            }
        }
        return ExitCode.DONE;
    }

    private SealSeason.Answer seal(Book open, Optional<Integer> year) {
        try (ProgressLine progress = new ProgressLine(terminal, Texts.of("cli.map.fitting"))) {
            return SealSeason.seal(open, species, year, by, LocalDate.now(ZoneId.systemDefault()), progress);
        }
    }

    private void list(List<SealSeason.Answer> answers) {
        if (json) {
            Json.print(answers, terminal.out());
        } else if (answers.isEmpty()) {
            terminal.out().println(Texts.of("seal.listEmpty"));
        } else {
            answers.forEach(answer -> {
                head(answer);
                differences(answer);
            });
        }
    }

    private void head(SealSeason.Answer answer) {
        terminal.out()
                .println(Texts.of(
                        "seal.head", answer.season(), answer.species(), answer.on(), answer.by(), answer.program()));
    }

    private void tell(SealSeason.Answer answer, Optional<String> done) {
        if (json) {
            Json.print(answer, terminal.out());
            return;
        }
        if (done.isPresent()) {
            terminal.out().println(Texts.of(done.get(), answer.season(), answer.species()));
        }
        head(answer);
        if (done.equals(Optional.of("seal.removed"))) {
            return;
        }
        answer.figures().forEach((name, value) -> terminal.out().println("  " + name + ": " + value));
        answer.sentences().forEach(sentence -> terminal.out().println("  " + sentence));
        differences(answer);
    }

    private void differences(SealSeason.Answer answer) {
        if (answer.same()) {
            terminal.out().println("  " + Texts.of("seal.same"));
            return;
        }
        terminal.out().println(Texts.of("seal.differs"));
        answer.differences().forEach(difference -> terminal.out().println("  " + Texts.of(difference)));
        terminal.out().println(Texts.of("seal.why"));
        answer.because().forEach(reason -> terminal.out().println("  " + Texts.of(reason)));
    }
}

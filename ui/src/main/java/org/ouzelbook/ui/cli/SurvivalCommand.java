package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.SurvivalAnswer;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.estimate.BadTable;
import org.ouzelbook.ui.app.estimate.EstimateSurvival;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code survival}: how ringed birds survive and move, from their colour rings. */
@Command(name = "survival")
final class SurvivalCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private AnalysisOptions question = new AnalysisOptions();

    @Option(names = "--survival-by", paramLabel = "NAMES", defaultValue = "")
    private String survivalBy = "";

    @Option(names = "--resighting-by", paramLabel = "NAMES", defaultValue = "")
    private String resightingBy = "";

    @Option(names = "--occasions", paramLabel = "FILE")
    private @Nullable Path occasions;

    SurvivalCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        EstimateSurvival.Model model = EstimateSurvival.Model.of(
                survivalBy,
                resightingBy,
                Optional.ofNullable(occasions),
                question.scope().level());
        SurvivalAnswer answer;
        try (Book book = Book.open(question.book())) {
            answer = SurvivalAnswer.of(book, question.scope(), model);
        } catch (BadTable bad) {
            bad.problems().forEach(problem -> terminal.err().println(ProblemLine.of(problem)));
            return ExitCode.PROBLEMS;
        }
        if (question.json()) {
            Json.print(answer, terminal.out());
        } else {
            print(answer);
        }
        return ExitCode.DONE;
    }

    private void print(SurvivalAnswer answer) {
        terminal.out().println(terminal.bold(Texts.of("cli.survival.title", answer.species())));
        SurvivalAnswer.Readings readings = answer.readings();
        told(
                "cli.survival.readings",
                readings.identified(),
                readings.oneCandidate(),
                readings.severalCandidates(),
                readings.noCandidate(),
                readings.notUnderstood());
        told("cli.survival.histories", answer.birds(), answer.occasions());
        terminal.out().println();
        EstimatePrinter printer = new EstimatePrinter(terminal);
        if (answer.why().isPresent()) {
            told("estimate.told.none", Texts.of(answer.why().get()));
        } else {
            printer.parameters(answer.parameters(), answer.level());
            answer.goodnessOfFit().ifPresent(printer::goodnessOfFit);
        }
        if (answer.medianMoveMetres().isPresent()) {
            told(
                    "cli.survival.moves",
                    answer.moves().size(),
                    answer.medianMoveMetres().getAsDouble() / 1000);
        }
        terminal.out().println();
        terminal.out().println(Lines.of(Texts.of("cli.survival.reading"), 0));
        answer.warnings().forEach(warning -> told("estimate.told.warning", Texts.of(warning)));
        told("cli.survival.law");
    }

    private void told(String key, Object... facts) {
        terminal.out().println(Lines.of(Texts.of(key, facts), 0));
    }
}

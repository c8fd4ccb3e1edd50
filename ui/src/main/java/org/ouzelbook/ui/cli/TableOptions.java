package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.exchange.Problem;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.estimate.BadTable;
import org.ouzelbook.ui.app.estimate.TableAnswer;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What every estimator on a plain table can be told, and how its answer is given. */
final class TableOptions {
    private static final int PROBLEMS_SHOWN = 30;

    @Parameters(paramLabel = "TABLE")
    private @Nullable Path file;

    @Option(names = "--level", paramLabel = "SHARE", defaultValue = "0.95", converter = AnalysisOptions.Level.class)
    private double level;

    @Option(names = "--json")
    private boolean json;

    /** {@return the table} */
    Path file() {
        if (file == null) {
            throw new IllegalStateException("picocli asks for TABLE before a command runs");
        }
        return file;
    }

    /** {@return the level of the limits} */
    double level() {
        return level;
    }

    /** {@return the exit code, after the answer was printed, or what is wrong with the table} */
    int tell(Terminal terminal, Supplier<TableAnswer> estimator) {
        return tell(terminal, estimator, answer -> new EstimatePrinter(terminal).print(answer));
    }

    /** {@return the same for an answer of another form, which is shown to a person in its own way} */
    <T> int tell(Terminal terminal, Supplier<T> estimator, Consumer<T> show) {
        T answer;
        try {
            answer = estimator.get();
        } catch (BadTable bad) {
            tell(terminal, bad.problems());
            return ExitCode.PROBLEMS;
        }
        if (json) {
            Json.print(answer, terminal.out());
        } else {
            show.accept(answer);
        }
        return ExitCode.DONE;
    }

    private static void tell(Terminal terminal, List<Problem> problems) {
        problems.stream()
                .limit(PROBLEMS_SHOWN)
                .forEach(problem -> terminal.err().println(ProblemLine.of(problem)));
        if (problems.size() > PROBLEMS_SHOWN) {
            terminal.err().println(Texts.of("estimate.moreProblems", problems.size() - PROBLEMS_SHOWN));
        }
    }
}

package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.ouzelbook.ui.app.estimate.TableAnswer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** An estimator that needs nothing but its table. */
@Command
final class EstimateTableCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Estimator estimator;

    @Mixin
    private TableOptions table = new TableOptions();

    /** From a table and a level to an answer. */
    @FunctionalInterface
    interface Estimator {
        TableAnswer answer(Path file, double level);
    }

    EstimateTableCommand(Terminal terminal, Estimator estimator) {
        this.terminal = terminal;
        this.estimator = estimator;
    }

    @Override
    public Integer call() {
        return table.tell(terminal, () -> estimator.answer(table.file(), table.level()));
    }
}

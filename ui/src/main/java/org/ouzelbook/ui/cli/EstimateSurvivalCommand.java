package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.ui.app.estimate.EstimateSurvival;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Survival and resighting of marked birds from a table of encounter histories. */
@Command
final class EstimateSurvivalCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private TableOptions table = new TableOptions();

    @Option(names = "--survival-by", paramLabel = "NAMES", defaultValue = "")
    private String survivalBy = "";

    @Option(names = "--resighting-by", paramLabel = "NAMES", defaultValue = "")
    private String resightingBy = "";

    @Option(names = "--occasions", paramLabel = "FILE")
    private @Nullable Path occasions;

    EstimateSurvivalCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        EstimateSurvival.Model model =
                EstimateSurvival.Model.of(survivalBy, resightingBy, Optional.ofNullable(occasions), table.level());
        return table.tell(terminal, () -> EstimateSurvival.of(table.file(), model));
    }
}

package org.ouzelbook.ui.cli;

import java.util.concurrent.Callable;
import org.ouzelbook.stats.estimator.exposure.ExposureDays;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.WrongRequest;
import org.ouzelbook.ui.app.estimate.EstimateNests;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Daily survival of nests from a table of intervals or of checks. */
@Command
final class EstimateNestsCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private TableOptions table = new TableOptions();

    @Option(names = "--survival-by", paramLabel = "NAMES", defaultValue = "")
    private String survivalBy = "";

    @Option(names = "--period", paramLabel = "DAYS", defaultValue = "")
    private String period = "";

    @Option(names = "--lost-share", paramLabel = "SHARE", defaultValue = "0.5")
    private double lostShare = ExposureDays.HALF;

    EstimateNestsCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (!(lostShare > 0 && lostShare < 1)) {
            throw new WrongRequest(Message.of("cli.wrong.value", "--lost-share", String.valueOf(lostShare)));
        }
        EstimateNests.Model model = EstimateNests.Model.of(survivalBy, period, lostShare, table.level());
        return table.tell(terminal, () -> EstimateNests.of(table.file(), model));
    }
}

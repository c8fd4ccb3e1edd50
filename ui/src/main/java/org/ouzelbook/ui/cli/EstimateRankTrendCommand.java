package org.ouzelbook.ui.cli;

import java.util.concurrent.Callable;
import org.ouzelbook.stats.estimator.trend.RankTrend.Ranks;
import org.ouzelbook.ui.app.estimate.EstimateRankTrend;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The trend by ranks of one series. */
@Command
final class EstimateRankTrendCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private TableOptions table = new TableOptions();

    @Option(names = "--ranks", paramLabel = "RULE", defaultValue = "interpolated")
    private Ranks ranks = Ranks.INTERPOLATED;

    EstimateRankTrendCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        return table.tell(terminal, () -> EstimateRankTrend.of(table.file(), table.level(), ranks));
    }
}

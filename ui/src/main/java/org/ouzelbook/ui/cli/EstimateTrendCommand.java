package org.ouzelbook.ui.cli;

import java.util.concurrent.Callable;
import org.ouzelbook.stats.estimator.trend.TrendSettings;
import org.ouzelbook.stats.estimator.trend.TrendSettings.Spread;
import org.ouzelbook.ui.app.estimate.EstimateTrend;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The log-linear trend of counts by site and year. */
@Command
final class EstimateTrendCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private TableOptions table = new TableOptions();

    @Option(names = "--shape", paramLabel = "SHAPE", defaultValue = "line")
    private Shape shape = Shape.LINE;

    @Option(names = "--poisson")
    private boolean poisson;

    /** What the seasons follow. */
    enum Shape {
        /** A straight line on the log scale. */
        LINE,
        /** Each its own height. */
        SEASONS
    }

    EstimateTrendCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        TrendSettings settings = new TrendSettings(table.level(), poisson ? Spread.POISSON : Spread.AT_LEAST_POISSON);
        return table.tell(
                terminal,
                () -> shape == Shape.LINE
                        ? EstimateTrend.line(table.file(), settings)
                        : EstimateTrend.seasons(table.file(), settings));
    }
}

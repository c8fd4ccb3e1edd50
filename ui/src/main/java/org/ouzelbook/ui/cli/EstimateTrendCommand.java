package org.ouzelbook.ui.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.ouzelbook.stats.estimator.trend.TrendSettings;
import org.ouzelbook.stats.estimator.trend.TrendSettings.Spread;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.WrongRequest;
import org.ouzelbook.ui.app.estimate.EstimateBends;
import org.ouzelbook.ui.app.estimate.EstimateCurve;
import org.ouzelbook.ui.app.estimate.EstimateLine;
import org.ouzelbook.ui.app.estimate.EstimateSeasons;
import org.ouzelbook.ui.app.estimate.TableAnswer;
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

    @Option(names = "--negative-binomial")
    private boolean negativeBinomial;

    @Option(names = "--serial")
    private boolean serial;

    @Option(names = "--changes", paramLabel = "YEARS", split = ",")
    private List<Integer> changes = List.of();

    @Option(names = "--count-empty-sites")
    private boolean countEmptySites;

    /** What the seasons follow. */
    enum Shape {
        /** A straight line on the log scale. */
        LINE,
        /** Each its own height. */
        SEASONS,
        /** A smooth curve on the log scale. */
        CURVE
    }

    EstimateTrendCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (negativeBinomial && (poisson || serial)) {
            throw new WrongRequest(Message.of("estimate.trend.oneVariation"));
        }
        if (!changes.isEmpty() && shape != Shape.LINE) {
            throw new WrongRequest(Message.of("estimate.trend.changesOfALine"));
        }
        Spread widened = negativeBinomial ? Spread.NEGATIVE_BINOMIAL : Spread.AT_LEAST_POISSON;
        TrendSettings settings =
                new TrendSettings(table.level(), poisson ? Spread.POISSON : widened, serial, countEmptySites);
        return table.tell(terminal, () -> answer(settings));
    }

    private TableAnswer answer(TrendSettings settings) {
        return switch (shape) {
            case LINE ->
                changes.isEmpty()
                        ? EstimateLine.of(table.file(), settings)
                        : EstimateBends.of(table.file(), changes, settings);
            case SEASONS -> EstimateSeasons.of(table.file(), settings);
            case CURVE -> EstimateCurve.of(table.file(), settings);
        };
    }
}

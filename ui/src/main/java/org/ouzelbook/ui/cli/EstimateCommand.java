package org.ouzelbook.ui.cli;

import java.util.concurrent.Callable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.WrongRequest;
import org.ouzelbook.ui.app.estimate.EstimateProportions;
import org.ouzelbook.ui.app.estimate.EstimateRates;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** Runs an estimator on a plain table, without a book; each estimator is a command under this one. */
@Command(name = "estimate")
final class EstimateCommand implements Callable<Integer> {
    private EstimateCommand() {}

    /** {@return the command with all its estimators} */
    static CommandLine of(Terminal terminal) {
        return new CommandLine(new EstimateCommand())
                .addSubcommand("occupancy", new EstimateOccupancyCommand(terminal))
                .addSubcommand("trend", new EstimateTrendCommand(terminal))
                .addSubcommand("nests", new EstimateNestsCommand(terminal))
                .addSubcommand("survival", new EstimateSurvivalCommand(terminal))
                .addSubcommand("rank-trend", new EstimateRankTrendCommand(terminal))
                .addSubcommand("territories", new EstimateTerritoriesCommand(terminal))
                .addSubcommand("rate", new EstimateTableCommand(terminal, EstimateRates::of))
                .addSubcommand("proportion", new EstimateTableCommand(terminal, EstimateProportions::of));
    }

    @Override
    public Integer call() {
        throw new WrongRequest(Message.of("estimate.what"));
    }
}

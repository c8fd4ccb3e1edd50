package org.ouzelbook.ui.cli;

import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.WrongRequest;
import org.ouzelbook.ui.app.estimate.EstimateOccupancy;
import org.ouzelbook.ui.app.estimate.EstimateOccupancy.Model;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Occupancy and detection from a table of visits to sites. */
@Command
final class EstimateOccupancyCommand implements Callable<Integer> {
    private static final int MOST_DRAWS = 100_000;

    private final Terminal terminal;

    @Mixin
    private TableOptions table = new TableOptions();

    @Option(names = "--occupancy-by", paramLabel = "NAMES", defaultValue = "")
    private String occupancyBy = "";

    @Option(names = "--colonisation-by", paramLabel = "NAMES", defaultValue = "")
    private String colonisationBy = "";

    @Option(names = "--extinction-by", paramLabel = "NAMES", defaultValue = "")
    private String extinctionBy = "";

    @Option(names = "--detection-by", paramLabel = "NAMES", defaultValue = "")
    private String detectionBy = "";

    @Option(names = "--draws", paramLabel = "N")
    private @Nullable Integer draws;

    @Option(names = "--profile")
    private boolean profile;

    @Option(names = "--compare")
    private boolean compare;

    EstimateOccupancyCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        checkDraws(draws);
        Model model = new Model(
                Model.names(occupancyBy),
                Model.names(colonisationBy),
                Model.names(extinctionBy),
                Model.names(detectionBy),
                Optional.ofNullable(draws),
                profile,
                compare,
                table.level());
        return table.tell(terminal, () -> EstimateOccupancy.of(table.file(), model));
    }

    /**
     * Checks a number of simulated sets.
     *
     * @throws WrongRequest if there are fewer than none, or too many
     */
    static void checkDraws(@Nullable Integer draws) {
        if (draws != null && (draws < 0 || draws > MOST_DRAWS)) {
            throw new WrongRequest(Message.of("estimate.occupancy.draws", MOST_DRAWS));
        }
    }
}

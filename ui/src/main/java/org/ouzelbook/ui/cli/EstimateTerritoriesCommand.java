package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.ui.app.ByModel;
import org.ouzelbook.ui.app.MapAnswer;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.estimate.EstimateTerritories;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The territories of plain tables of sightings and visits. */
@Command
final class EstimateTerritoriesCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private TableOptions table = new TableOptions();

    @Mixin
    private RuleOptions rules = new RuleOptions();

    @Option(names = "--visits", paramLabel = "FILE", required = true)
    private @Nullable Path visits;

    @Option(
            names = "--species",
            paramLabel = "NAME",
            defaultValue = "dipper",
            converter = AnalysisOptions.SpeciesNamed.class)
    private Species species = Species.DIPPER;

    EstimateTerritoriesCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        return table.tell(terminal, this::estimated, this::show);
    }

    private List<MapAnswer> estimated() {
        try (ProgressLine progress = new ProgressLine(terminal, Texts.of("cli.map.fitting"))) {
            return EstimateTerritories.of(table.file(), visits(), species, rules::change, table.level(), progress);
        }
    }

    private Path visits() {
        if (visits == null) {
            throw new IllegalStateException("picocli asks for --visits before a command runs");
        }
        return visits;
    }

    private void show(List<MapAnswer> maps) {
        if (maps.isEmpty()) {
            terminal.out().println(Texts.of("estimate.territories.none"));
        }
        Table counts = Table.of(
                Texts.of("estimate.head.season"),
                Texts.of("estimate.head.river"),
                Texts.of("estimate.head.km"),
                Texts.of("estimate.head.visits"),
                Texts.of("estimate.head.byRule"),
                Texts.of("estimate.head.byModel"));
        for (MapAnswer map : maps) {
            for (MapAnswer.OnRiver river : map.rivers()) {
                counts.add(
                        String.valueOf(map.season()),
                        river.river(),
                        String.format(Locale.ROOT, "%.1f", river.surveyedKm()),
                        String.valueOf(river.effectiveVisits()),
                        range(
                                river.byRule().count(),
                                river.byRule().min(),
                                river.byRule().max()),
                        byModel(river.byModel()));
            }
        }
        counts.print(terminal);
        List<Message> warnings =
                maps.stream().flatMap(map -> map.warnings().stream()).distinct().toList();
        warnings.forEach(warning ->
                terminal.out().println(Lines.of(Texts.of("estimate.told.warning", warning), "Note: ".length())));
    }

    private static String range(int count, int min, int max) {
        return min == max ? String.valueOf(count) : count + " (" + min + "–" + max + ")";
    }

    private static String byModel(ByModel model) {
        return model.estimate().isEmpty()
                ? "–"
                : String.format(
                        Locale.ROOT,
                        "%.1f (%.0f–%.0f)",
                        model.estimate().getAsDouble(),
                        model.lower().orElse(0),
                        model.upper().orElse(0));
    }
}

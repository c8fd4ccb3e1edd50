package org.ouzelbook.ui.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.stats.survey.SiteOccupancy;
import org.ouzelbook.stats.survey.SiteSettings;
import org.ouzelbook.stats.survey.SiteSettings.Found;
import org.ouzelbook.stats.survey.SiteSettings.Kind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.OccupancyAnswer;
import org.ouzelbook.ui.app.OccupancyAnswer.Site;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;
import org.ouzelbook.ui.app.estimate.EstimateOccupancy;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code occupancy}: which stretches birds occupied, season by season, allowing for birds that visits missed. */
@Command(name = "occupancy")
final class OccupancyCommand implements Callable<Integer> {
    private static final double LONGEST_SITE = 100_000;

    private final Terminal terminal;

    @Mixin
    private AnalysisOptions question = new AnalysisOptions();

    @Option(names = "--sites", paramLabel = "KIND", defaultValue = "stretches")
    private Kind kind = Kind.STRETCHES;

    @Option(names = "--stretch", paramLabel = "METRES")
    private @Nullable Double stretch;

    @Option(names = "--found", paramLabel = "EVIDENCE", defaultValue = "adult")
    private Found found = Found.ADULT;

    @Option(names = "--covered", paramLabel = "SHARE")
    private @Nullable Double covered;

    @Mixin
    private SeasonWindow window = new SeasonWindow();

    @Option(names = "--occupancy-by", paramLabel = "NAMES", defaultValue = "")
    private String occupancyBy = "";

    @Option(names = "--colonisation-by", paramLabel = "NAMES", defaultValue = "")
    private String colonisationBy = "";

    @Option(names = "--extinction-by", paramLabel = "NAMES", defaultValue = "")
    private String extinctionBy = "";

    @Option(names = "--detection-by", paramLabel = "NAMES", defaultValue = "")
    private String detectionBy = "";

    @Option(names = "--compare")
    private boolean compare;

    @Option(names = "--draws", paramLabel = "N")
    private @Nullable Integer draws;

    @Option(names = "--list")
    private boolean list;

    OccupancyCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        EstimateOccupancyCommand.checkDraws(draws);
        OccupancyAnswer.Question asked = new OccupancyAnswer.Question(
                this::settings,
                new SiteOccupancy.Model(
                        EstimateOccupancy.Model.names(occupancyBy),
                        EstimateOccupancy.Model.names(colonisationBy),
                        EstimateOccupancy.Model.names(extinctionBy),
                        EstimateOccupancy.Model.names(detectionBy)),
                compare,
                Optional.ofNullable(draws));
        OccupancyAnswer answer;
        try (Book book = Book.open(question.book())) {
            answer = OccupancyAnswer.of(book, question.scope(), asked);
        }
        if (question.json()) {
            Json.print(answer, terminal.out());
        } else {
            print(answer);
        }
        return ExitCode.DONE;
    }

    private SiteSettings settings(SiteSettings usual) {
        double metres = stretch == null ? usual.stretchMetres() : stretch;
        double share = covered == null ? usual.coveredShare() : covered;
        check(metres >= 10 && metres <= LONGEST_SITE, "--stretch", metres);
        check(share > 0 && share <= 1, "--covered", share);
        return new SiteSettings(kind, metres, usual.placeMetres(), found, share, window.change(usual.season()));
    }

    private static void check(boolean right, String option, double value) {
        if (!right) {
            throw new WrongRequest(Message.of("cli.wrong.value", option, String.valueOf(value)));
        }
    }

    private void print(OccupancyAnswer answer) {
        OccupancyAnswer.Settings settings = answer.settings();
        terminal.out().println(terminal.bold(Texts.of("cli.occupancy.title", answer.species())));
        told(
                "cli.occupancy.what",
                switch (settings.sites()) {
                    case STRETCHES -> Message.of("cli.occupancy.stretches", answer.sites(), settings.stretchMetres());
                    case REACHES -> Message.of("cli.occupancy.reaches", answer.sites());
                    case PLACES -> Message.of("cli.occupancy.places", answer.sites(), settings.placeMetres());
                },
                settings.found(),
                settings.seasonFrom(),
                settings.seasonTo(),
                settings.coveredShare());
        terminal.out().println();
        EstimatePrinter printer = new EstimatePrinter(terminal);
        OccupancyPrinter occupancy = new OccupancyPrinter(terminal, printer);
        occupancy.seasons(answer.bySeason(), answer.level());
        if (answer.why().isPresent()) {
            told("estimate.told.none", Texts.of(answer.why().get()));
        } else {
            terminal.out().println(Lines.of(Texts.of("cli.occupancy.model", answer.model(), answer.source()), 0));
            terminal.out().println();
            printer.parameters(answer.parameters(), answer.level());
            answer.equilibrium()
                    .ifPresent(figure -> printer.told("estimate.told.equilibrium", EstimatePrinter.limits(figure)));
            answer.goodnessOfFit().ifPresent(occupancy::fit);
            printer.told(
                    "estimate.told.likelihood",
                    EstimatePrinter.number(answer.logLikelihood().orElseThrow()),
                    EstimatePrinter.number(answer.aicc()),
                    answer.sites());
        }
        occupancy.models(answer.models());
        if (list) {
            list(answer);
        }
        if (list || answer.models().isEmpty()) {
            terminal.out().println();
        }
        told("cli.occupancy.reading");
        answer.warnings().forEach(warning -> told("estimate.told.warning", Texts.of(warning)));
    }

    /** For each site and season the visits that found birds, of those made, and the probability that it was occupied. */
    private void list(OccupancyAnswer answer) {
        List<String> headings = new ArrayList<>(List.of(Texts.of("cli.density.river"), Texts.of("cli.occupancy.site")));
        answer.bySeason().forEach(season -> headings.add(Integer.toString(season.season())));
        Table table = Table.of(headings.toArray(String[]::new));
        for (Site site : answer.occupied()) {
            List<String> cells = new ArrayList<>(List.of(site.river(), site.site()));
            for (int season = 0; season < site.history().size(); season++) {
                cells.add(cell(site, season));
            }
            table.add(cells.toArray(String[]::new));
        }
        terminal.out().println();
        told("cli.occupancy.listTitle");
        table.print(terminal);
    }

    private static String cell(Site site, int season) {
        String history = site.history().get(season);
        long found = history.chars().filter(sign -> sign == '1').count();
        long missed = history.chars().filter(sign -> sign == '0').count();
        String visits = found + "/" + (found + missed);
        return site.probability().stream()
                .skip(season)
                .findFirst()
                .filter(probability -> found == 0 && probability.isPresent())
                .map(probability -> String.format(Locale.ROOT, "%s (%.2f)", visits, probability.getAsDouble()))
                .orElse(visits);
    }

    private void told(String key, Object... facts) {
        terminal.out().println(Lines.of(Texts.of(key, facts), 0));
    }
}

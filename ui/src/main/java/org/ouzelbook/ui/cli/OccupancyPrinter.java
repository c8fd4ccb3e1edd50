package org.ouzelbook.ui.cli;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.estimate.EstimateOccupancy.Occupied;
import org.ouzelbook.ui.app.estimate.OccupancyFigures.Change;
import org.ouzelbook.ui.app.estimate.OccupancyFigures.Compared;
import org.ouzelbook.ui.app.estimate.OccupancyFigures.Fit;
import org.ouzelbook.ui.app.estimate.OccupancyFigures.Profile;
import org.ouzelbook.ui.app.estimate.OccupancyFigures.Season;

/** Tells a person about occupancy: the parameters, season by season, how it changes, and how well the model fits. */
final class OccupancyPrinter {
    private final Terminal terminal;
    private final EstimatePrinter printer;

    OccupancyPrinter(Terminal terminal, EstimatePrinter printer) {
        this.terminal = terminal;
        this.printer = printer;
    }

    void print(Occupied occupied) {
        printer.head(occupied.model(), occupied.source());
        printer.parameters(occupied.parameters(), occupied.level());
        profile(occupied.profile());
        seasons(occupied.bySeason(), occupied.level());
        changes("estimate.told.growth", occupied.growth());
        changes("estimate.told.turnover", occupied.turnover());
        occupied.equilibrium()
                .ifPresent(figure -> printer.told("estimate.told.equilibrium", EstimatePrinter.limits(figure)));
        fit(occupied.goodnessOfFit());
        printer.told(
                "estimate.told.likelihood",
                EstimatePrinter.number(occupied.logLikelihood()),
                EstimatePrinter.number(occupied.aicc()),
                occupied.n());
        models(occupied.models());
        printer.warnings(occupied.warnings());
    }

    void seasons(List<Season> seasons, double level) {
        Table table = Table.of(
                Texts.of("estimate.head.season"),
                Texts.of("estimate.head.visited"),
                Texts.of("estimate.head.detected"),
                Texts.of("estimate.head.naive"),
                Texts.of("estimate.head.occupied"),
                Texts.of("estimate.head.lowerAt", level),
                Texts.of("estimate.head.upper"),
                Texts.of("estimate.head.ofTheseSites"),
                Texts.of("estimate.head.lower"),
                Texts.of("estimate.head.upper"));
        for (Season season : seasons) {
            table.add(
                    Integer.toString(season.season()),
                    Integer.toString(season.visited()),
                    Integer.toString(season.detected()),
                    EstimatePrinter.number(season.naive()),
                    EstimatePrinter.number(season.occupancy()),
                    EstimatePrinter.number(season.lower()),
                    EstimatePrinter.number(season.upper()),
                    EstimatePrinter.number(season.ofTheseSites()),
                    EstimatePrinter.number(season.ofTheseSitesLower()),
                    EstimatePrinter.number(season.ofTheseSitesUpper()));
        }
        table.print(terminal);
        terminal.out().println();
    }

    void fit(Fit fit) {
        if (fit.why().isPresent()) {
            printer.told(
                    "estimate.told.noFit",
                    EstimatePrinter.number(fit.chiSquare()),
                    fit.why().get());
        } else {
            printer.told(
                    "estimate.told.bootstrap",
                    EstimatePrinter.number(fit.chiSquare()),
                    EstimatePrinter.number(fit.cHat()),
                    EstimatePrinter.number(fit.p()),
                    fit.draws());
        }
    }

    void changes(String key, List<Change> changes) {
        changes.forEach(change ->
                printer.told(key, Integer.toString(change.season()), EstimatePrinter.limits(change.figure())));
    }

    private void profile(List<Profile> profile) {
        if (profile.isEmpty()) {
            return;
        }
        terminal.out().println(Texts.of("estimate.told.profile"));
        Table table = Table.of(
                Texts.of("estimate.head.part"),
                Texts.of("estimate.head.term"),
                Texts.of("estimate.head.lower"),
                Texts.of("estimate.head.upper"));
        for (Profile one : profile) {
            table.add(one.part(), one.term(), EstimatePrinter.number(one.lower()), EstimatePrinter.number(one.upper()));
        }
        table.print(terminal);
        terminal.out().println();
    }

    void models(List<Compared> models) {
        if (models.isEmpty()) {
            return;
        }
        terminal.out().println();
        Table table = Table.of(
                Texts.of("estimate.head.model"),
                Texts.of("estimate.head.parameters"),
                Texts.of("estimate.head.logLikelihood"),
                Texts.of("estimate.head.aic"),
                Texts.of("estimate.head.aicc"),
                Texts.of("estimate.head.delta"),
                Texts.of("estimate.head.weight"));
        for (Compared model : models) {
            table.add(
                    name(model),
                    Integer.toString(model.parameters()),
                    EstimatePrinter.number(model.logLikelihood()),
                    EstimatePrinter.number(model.aic()),
                    EstimatePrinter.number(model.aicc()),
                    String.format(Locale.ROOT, "%.2f", model.delta()),
                    String.format(Locale.ROOT, "%.3f", model.weight()));
        }
        table.print(terminal);
        terminal.out().println();
    }

    private static String name(Compared model) {
        String name = Stream.of(
                        part("occupancy", model.occupancyBy()),
                        part("colonisation", model.colonisationBy()),
                        part("extinction", model.extinctionBy()),
                        part("detection", model.detectionBy()))
                .filter(part -> !part.isEmpty())
                .collect(Collectors.joining("; "));
        return name.isEmpty() ? Texts.of("estimate.told.allConstant") : name;
    }

    private static String part(String part, List<String> names) {
        return names.isEmpty() ? "" : Texts.of("estimate.told.partBy", part, names);
    }
}

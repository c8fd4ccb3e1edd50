package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import java.util.function.UnaryOperator;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.BookRecords;
import org.ouzelbook.ui.app.Counting;
import org.ouzelbook.ui.app.DemoBook;
import org.ouzelbook.ui.app.ImportReport;
import org.ouzelbook.ui.app.Scope;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.leak.Leak;
import org.ouzelbook.ui.app.leak.LeakCheck;
import org.ouzelbook.ui.app.leak.PrivateFile;
import org.ouzelbook.ui.report.PublicPaper;
import org.ouzelbook.ui.report.SeasonReport;
import org.ouzelbook.ui.strip.Frame;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.RiverStrip;
import org.ouzelbook.ui.strip.SeasonsScene;
import org.ouzelbook.ui.strip.StripDrawing;
import org.ouzelbook.ui.strip.SvgPen;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code demo}: an invented river with ten seasons, to look around in. */
@Command(name = "demo")
final class DemoCommand implements Callable<Integer> {
    private static final double STRIP_WIDTH = 1200;
    private static final double STRIP_HEIGHT = 700;

    private final Terminal terminal;

    @Option(names = "--into", paramLabel = "DIR", defaultValue = "ouzelbook-demo")
    private Path folder = Path.of("ouzelbook-demo");

    @Option(names = "--window")
    private boolean window;

    DemoCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        DemoBook.Answer demo;
        try (ProgressLine progress = new ProgressLine(terminal, Texts.of("cli.demo.making"))) {
            demo = DemoBook.make(folder, progress);
        }
        Optional<ImportReport> failed = demo.imported().filter(report -> !report.imported());
        if (failed.isPresent()) {
            failed.get().problems().forEach(reason -> terminal.err().println(reason));
            return ExitCode.PROBLEMS;
        }
        SeasonFindings findings;
        LeakCheck check;
        try (Book book = Book.open(demo.book());
                ProgressLine progress = new ProgressLine(terminal, Texts.of("cli.map.fitting"))) {
            SurveyRecords written = book.read(BookRecords::asWritten);
            check = book.read(view -> LeakCheck.of(view, written, false));
            findings = SeasonFindings.of(
                    book, written, Scope.everything(), UnaryOperator.identity(), Counting.BY_MODEL, progress);
        }
        tell(demo, findings);
        terminal.out()
                .println(terminal.bold(
                        Texts.of("cli.trend.verdict", findings.trend().verdict().sentence())));
        terminal.out().println();
        Path report = folder.resolve("report.html");
        List<Leak> leaks = PublicPaper.write(check, report, SeasonReport.of(findings));
        if (!leaks.isEmpty()) {
            terminal.err().println(Texts.of("export.stopped"));
            LeakLines.print(leaks, terminal);
            return ExitCode.PROBLEMS;
        }
        where(demo, report, writeStrip(findings));
        return window
                ? OpenCommand.show(terminal, Optional.of(demo.book()), Optional.of(Species.DIPPER), OptionalInt.empty())
                : ExitCode.DONE;
    }

    private Path writeStrip(SeasonFindings findings) throws IOException {
        SeasonsScene scene = SeasonsScene.of(findings.records(), findings.seasons());
        Frame frame = Frame.fitting(scene.waters(), STRIP_WIDTH, STRIP_HEIGHT);
        StripDrawing drawing = RiverStrip.seasons(scene, frame, Optional.empty());
        Path file = folder.resolve("arrel-water.svg");
        PrivateFile.write(file, SvgPen.write(RiverStrip.sheet(drawing), Palette.LIGHT, "s"));
        return file;
    }

    private void tell(DemoBook.Answer demo, SeasonFindings findings) {
        terminal.out().println(terminal.bold(Texts.of("cli.demo.title")));
        say("cli.demo.scenario");
        say(
                demo.imported().isPresent() ? "cli.demo.made" : "cli.demo.kept",
                demo.book().toString());
        terminal.out().println();
        table(findings);
        terminal.out().println();
    }

    private void table(SeasonFindings findings) {
        List<TerritoryMap> seasons = findings.seasons();
        List<River> rivers = seasons.get(0).rivers().stream()
                .map(TerritoryMap.RiverMap::river)
                .toList();
        List<String> headings = new ArrayList<>(List.of(Texts.of("cli.demo.season")));
        rivers.forEach(river ->
                headings.addAll(List.of(river.name(), Texts.of("cli.demo.range"), Texts.of("cli.demo.kmWalked"))));
        headings.add(Texts.of("cli.demo.byModel"));
        Table table = Table.of(headings.toArray(String[]::new));
        for (TerritoryMap season : seasons) {
            List<String> cells = new ArrayList<>(List.of(String.valueOf(season.season())));
            for (TerritoryMap.RiverMap map : season.rivers()) {
                TerritoryMap.Count count = map.count();
                boolean walked = map.isCounted();
                cells.add(walked ? String.valueOf(count.likely()) : "–");
                cells.add(walked && count.min() < count.max() ? count.min() + "–" + count.max() : "");
                cells.add(String.format(Locale.ROOT, "%.1f", map.surveyedKm()));
            }
            cells.add(findings.trend().seasons().stream()
                    .filter(total -> total.season() == season.season())
                    .flatMap(total -> total.model().stream())
                    .map(model -> Texts.of("cli.trend.byModel.count", model.expected(), model.lower(), model.upper()))
                    .findFirst()
                    .orElse("–"));
            table.add(cells.toArray(String[]::new));
        }
        table.print(terminal);
    }

    private void where(DemoBook.Answer demo, Path report, Path strip) {
        Path book = demo.book();
        say("cli.demo.look", report.toString(), strip.toString());
        say(
                "cli.demo.ask",
                ShellWords.of("map", book, "--season", 2026),
                ShellWords.of("map", book, "--season", 2026, "--why", "B"),
                ShellWords.of("density", book),
                ShellWords.of("trend", book),
                ShellWords.of("open", book));
        say(
                "cli.demo.print",
                ShellWords.of("report", book, "--pdf", "dippers.pdf"),
                ShellWords.of("sheet", book),
                ShellWords.of("pocket", book));
        say("cli.demo.truth", DemoBook.files().toString());
    }

    private void say(String key, Object... facts) {
        terminal.out().println(Texts.of(key, facts));
    }
}

package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.BookRecords;
import org.ouzelbook.ui.app.SealSeason;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;
import org.ouzelbook.ui.app.leak.Leak;
import org.ouzelbook.ui.app.leak.LeakCheck;
import org.ouzelbook.ui.app.leak.PrivateFile;
import org.ouzelbook.ui.report.PrivateAnnex;
import org.ouzelbook.ui.report.PublicPaper;
import org.ouzelbook.ui.report.SeasonReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code report}: the page for the local group, for the screen or on paper. */
@Command(name = "report")
final class ReportCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private AnalysisOptions question = new AnalysisOptions();

    @Mixin
    private RuleOptions rules = new RuleOptions();

    @Mixin
    private CountingOptions counting = new CountingOptions();

    @Option(names = "--out", paramLabel = "FILE")
    private @Nullable Path out;

    @Option(names = "--pdf", paramLabel = "FILE")
    private @Nullable Path pdf;

    @Option(names = "--private-annex", paramLabel = "FILE")
    private @Nullable Path annex;

    @Option(names = "--replace")
    private boolean replace;

    ReportCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        checkFiles();
        SeasonFindings findings;
        LeakCheck check;
        try (Book book = Book.open(question.book());
                ProgressLine progress = new ProgressLine(terminal, Texts.of("cli.map.fitting"))) {
            SurveyRecords written = book.read(BookRecords::asWritten);
            check = book.read(view -> LeakCheck.of(view, written, false));
            findings = SeasonFindings.of(book, written, question.scope(), rules::change, counting.counting(), progress);
            TerritoryMap map = findings.map();
            SealSeason.warnings(book, map.species(), map.season())
                    .forEach(warning -> terminal.err().println(Texts.of(warning)));
        }
        if (annex != null) {
            PrivateFile.write(annex, PrivateAnnex.of(findings).content(annex));
            terminal.err().println(Texts.of("cli.report.annexWritten", annex.toString()));
        }
        List<Path> files = asked().isEmpty() ? List.of(Path.of(usualName(findings))) : asked();
        for (Path file : files) {
            List<Leak> leaks = question.scope()
                    .reach()
                    .map(reach -> check.ofReach(String.valueOf(file.getFileName()), reach))
                    .orElse(List.of());
            if (leaks.isEmpty()) {
                leaks = PublicPaper.write(check, file, SeasonReport.of(findings));
            }
            if (!leaks.isEmpty()) {
                terminal.err().println(Texts.of("cli.report.stopped"));
                LeakLines.print(leaks, terminal);
                return ExitCode.PROBLEMS;
            }
            if (question.json()) {
                Json.print(
                        new Written(
                                file.toAbsolutePath().toString(), findings.map().season()),
                        terminal.out());
            } else {
                terminal.out().println(Texts.of("cli.report.written", file.toString()));
            }
        }
        return ExitCode.DONE;
    }

    private void checkFiles() throws IOException {
        List<Path> files = asked();
        if (annex != null) {
            Path apart = annex.toAbsolutePath().normalize();
            if (files.stream()
                    .anyMatch(file -> file.toAbsolutePath().normalize().equals(apart))) {
                throw new WrongRequest(Message.of("cli.report.sameFile", annex.toString()));
            }
            files.add(annex);
        }
        for (Path file : files) {
            if (!replace && Files.exists(file)) {
                throw new FileAlreadyExistsException(file.toString());
            }
        }
    }

    private List<Path> asked() {
        List<Path> files = new ArrayList<>();
        if (out != null) {
            files.add(out);
        }
        if (pdf != null) {
            files.add(pdf);
        }
        return files;
    }

    /** A file that only this command writes, so that it may be written again. */
    private static String usualName(SeasonFindings findings) {
        String species =
                findings.map().species().englishName().toLowerCase(Locale.ROOT).replace(' ', '-');
        return species + "-report-" + findings.map().season() + ".html";
    }

    /**
     * What was written.
     *
     * @param file the page
     * @param season the season that it tells
     */
    record Written(String file, int season) {}
}

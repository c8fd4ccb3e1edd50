package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.SeasonFindings;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.report.SeasonReport;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code report}: the page for the local group. */
@Command(name = "report")
final class ReportCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private AnalysisOptions question = new AnalysisOptions();

    @Mixin
    private RuleOptions rules = new RuleOptions();

    @Option(names = "--out", paramLabel = "FILE")
    private @Nullable Path out;

    @Option(names = "--replace")
    private boolean replace;

    ReportCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        SeasonFindings findings;
        try (Book book = Book.open(question.book())) {
            findings = SeasonFindings.of(book, question.scope(), rules::change);
        }
        Path file = out == null ? Path.of(usualName(findings)) : out;
        if (out != null && !replace && Files.exists(file)) {
            throw new FileAlreadyExistsException(file.toString());
        }
        Files.writeString(file, SeasonReport.html(findings));
        if (question.json()) {
            Json.print(
                    new Written(file.toAbsolutePath().toString(), findings.map().season()), terminal.out());
        } else {
            terminal.out().println(Texts.of("cli.report.written", file.toString()));
        }
        return ExitCode.DONE;
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

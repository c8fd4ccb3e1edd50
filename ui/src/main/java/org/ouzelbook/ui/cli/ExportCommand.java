package org.ouzelbook.ui.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.exchange.darwin.Licence;
import org.ouzelbook.tracker.exchange.export.Audience;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;
import org.ouzelbook.ui.app.export.ExportBook;
import org.ouzelbook.ui.app.export.ExportBundle;
import org.ouzelbook.ui.app.export.ExportFormat;
import org.ouzelbook.ui.app.export.ExportRequest;
import org.ouzelbook.ui.app.export.ExportStep;
import org.ouzelbook.ui.app.export.Publishing;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes records into a file for other programs. */
@Command(name = "export")
final class ExportCommand implements Callable<Integer> {
    private static final String BUNDLE = "bundle";

    private final Terminal terminal;

    @Parameters(paramLabel = "BOOK")
    private @Nullable Path book;

    @Option(names = "--as", paramLabel = "FORM", required = true)
    private String form = "";

    @Option(names = "--season", paramLabel = "YEAR")
    private @Nullable Integer season;

    @Option(names = "--private")
    private boolean privately;

    @Option(names = "--licence", paramLabel = "NAME")
    private @Nullable String licence;

    @Option(names = "--with-names")
    private boolean withNames;

    @Option(names = "--title", paramLabel = "TEXT")
    private String title = "";

    @Option(names = "--group", paramLabel = "NAME")
    private String group = "";

    @Option(names = "--email", paramLabel = "ADDRESS")
    private String email = "";

    @Option(names = "--out", paramLabel = "FILE")
    private @Nullable Path out;

    @Option(names = "--replace")
    private boolean replace;

    @Option(names = "--by", paramLabel = "NAME")
    private String by = System.getProperty("user.name", "");

    @Option(names = "--json")
    private boolean json;

    ExportCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        if (form.strip().equalsIgnoreCase(BUNDLE)) {
            return bundle();
        }
        ExportFormat format = ExportFormat.named(form)
                .orElseThrow(() -> new WrongRequest(Message.of(
                        "export.wrong.form",
                        form,
                        Stream.concat(Stream.of(ExportFormat.values()).map(ExportFormat::written), Stream.of(BUNDLE))
                                .toList())));
        ExportRequest request = new ExportRequest(
                Objects.requireNonNull(book),
                format,
                privately ? Audience.PRIVATE : Audience.PUBLIC,
                new Publishing(
                        Optional.ofNullable(licence).map(ExportCommand::licence), withNames, title, group, email),
                Optional.ofNullable(season),
                Optional.ofNullable(out),
                replace);
        ExportBook.Answer answer;
        try (ProgressLine progress = new ProgressLine(terminal, Texts.of("export.told.reading"))) {
            answer = ExportBook.run(request, step -> progress.now(doing(step)));
        }
        if (json) {
            Json.print(answer, terminal.out());
        } else {
            tell(answer);
        }
        return answer.leaks().isEmpty() ? ExitCode.DONE : ExitCode.PROBLEMS;
    }

    private static String doing(ExportStep step) {
        return switch (step) {
            case READING -> Texts.of("export.told.reading");
            case WRITING -> Texts.of("export.told.writing");
            case LOOKING -> Texts.of("leak.telling");
        };
    }

    private static Licence licence(String name) {
        return Licence.named(name)
                .orElseThrow(() -> new WrongRequest(Message.of(
                        "export.wrong.licence",
                        name,
                        Stream.of(Licence.values()).map(Licence::written).toList())));
    }

    /** Everything, for another person's book: never public. */
    private int bundle() throws IOException {
        ExportBundle.Answer answer;
        try (ProgressLine progress = new ProgressLine(terminal, Texts.of("export.told.writing"))) {
            answer = ExportBundle.run(Objects.requireNonNull(book), by, Optional.ofNullable(out), replace, progress);
        }
        if (json) {
            Json.print(answer, terminal.out());
        } else {
            terminal.out().println(answer.file());
            answer.contents()
                    .forEach((table, count) -> terminal.out()
                            .println("  " + Texts.of("export.contents", Texts.of("bundle.part." + table), count)));
            terminal.out().println(Texts.of("bundle.private", answer.from()));
        }
        return ExitCode.DONE;
    }

    private void tell(ExportBook.Answer answer) {
        if (answer.file().isEmpty()) {
            terminal.out().println(Texts.of("export.stopped"));
            LeakLines.print(answer.leaks(), terminal);
            return;
        }
        terminal.out().println(answer.file().get());
        answer.contents()
                .forEach((name, count) -> terminal.out().println("  " + Texts.of("export.contents", name, count)));
        String publicly =
                answer.form().equals(ExportFormat.DARWIN_CORE.written()) ? "export.published" : "export.public";
        terminal.out().println(Texts.of(privately ? "export.private" : publicly));
    }
}

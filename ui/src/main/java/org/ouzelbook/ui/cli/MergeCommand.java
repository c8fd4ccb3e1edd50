package org.ouzelbook.ui.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.store.MergeAnswer;
import org.ouzelbook.tracker.store.MergeAnswers;
import org.ouzelbook.ui.app.ImportRequest;
import org.ouzelbook.ui.app.MergeBooks;
import org.ouzelbook.ui.app.MergeReport;
import org.ouzelbook.ui.app.MergeRequest;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code merge}: puts other people's books into one. */
@Command(name = "merge")
final class MergeCommand implements Callable<Integer> {
    private static final Pattern CODE = Pattern.compile("[0-9a-f]{4,16}|" + MergeAnswers.ALL);

    private final Terminal terminal;

    @Parameters(index = "0", paramLabel = "BOOK", descriptionKey = "BOOK")
    private @Nullable Path book;

    @Parameters(index = "1..*", paramLabel = "BUNDLE", descriptionKey = "BUNDLE")
    private List<Path> bundles = new ArrayList<>();

    @Option(names = "--dry-run")
    private boolean dryRun;

    @Option(names = "--accept")
    private boolean accept;

    @Option(names = "--answer", paramLabel = "CODE=WORD")
    private List<String> answers = new ArrayList<>();

    @Option(names = "--by", paramLabel = "NAME")
    private String by = System.getProperty("user.name", "");

    @Option(names = "--json")
    private boolean json;

    MergeCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        ImportRequest.Mode ready = accept ? ImportRequest.Mode.WHAT_IS_READY : ImportRequest.Mode.ALL_OR_NOTHING;
        MergeReport report;
        try (ProgressLine progress = new ProgressLine(terminal, Texts.of("merge.told.merging"))) {
            report = MergeBooks.run(
                    new MergeRequest(
                            Objects.requireNonNull(book),
                            bundles,
                            answers(),
                            dryRun ? ImportRequest.Mode.REHEARSE : ready,
                            by),
                    progress);
        }
        if (json) {
            Json.print(report, terminal.out());
        } else {
            new MergePrinter(terminal).print(report);
        }
        return report.questions().isEmpty() || report.merged() ? ExitCode.DONE : ExitCode.PROBLEMS;
    }

    private MergeAnswers answers() {
        Map<String, MergeAnswer> given = new HashMap<>();
        answers.stream()
                .flatMap(list -> Pattern.compile(",").splitAsStream(list))
                .filter(one -> !one.isBlank())
                .forEach(one -> take(one, given));
        return new MergeAnswers(given);
    }

    private static void take(String written, Map<String, MergeAnswer> given) {
        int sign = written.indexOf('=');
        String code = written.substring(0, Math.max(0, sign)).strip().toLowerCase(Locale.ROOT);
        MergeAnswer answer = MergeAnswer.of(written.substring(sign + 1))
                .filter(any -> CODE.matcher(code).matches())
                .orElseThrow(() -> new WrongRequest(Message.of(
                        "merge.wrong.written",
                        written,
                        Stream.of(MergeAnswer.values())
                                .map(MergeAnswer::written)
                                .toList())));
        given.put(code, answer);
    }
}

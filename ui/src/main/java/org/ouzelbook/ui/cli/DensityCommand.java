package org.ouzelbook.ui.cli;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.ComparisonAnswer;
import org.ouzelbook.ui.app.DensityAnswer;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code density}: territories per km of surveyed water, by season, river and reach. */
@Command(name = "density")
final class DensityCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private AnalysisOptions question = new AnalysisOptions();

    @Mixin
    private RuleOptions rules = new RuleOptions();

    @Option(names = "--compare", paramLabel = "A,B", split = ",")
    private List<String> compare = List.of();

    @Mixin
    private CountingOptions counting = new CountingOptions();

    DensityCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (!compare.isEmpty()) {
            return compare();
        }
        DensityAnswer answer;
        try (Book book = Book.open(question.book());
                ProgressLine progress = new ProgressLine(terminal, Texts.of("cli.map.fitting"))) {
            answer = DensityAnswer.of(book, question.scope(), rules::change, counting.counting(), progress);
        }
        if (question.json()) {
            Json.print(answer, terminal.out());
        } else {
            print(answer);
        }
        return ExitCode.DONE;
    }

    private int compare() {
        if (compare.size() != 2) {
            throw new WrongRequest(Message.of("app.compare.two", String.join(",", compare)));
        }
        ComparisonAnswer answer;
        try (Book book = Book.open(question.book())) {
            answer = ComparisonAnswer.of(
                    book,
                    question.scope(),
                    rules::change,
                    compare.get(0).strip(),
                    compare.get(1).strip());
        }
        if (question.json()) {
            Json.print(answer, terminal.out());
        } else {
            new ComparisonPage(terminal).print(answer);
        }
        return ExitCode.DONE;
    }

    private void print(DensityAnswer answer) {
        terminal.out().println(terminal.bold(Texts.of("cli.density.title", answer.species())));
        Table table = Table.of(
                Texts.of("cli.density.season"),
                Texts.of("cli.density.river"),
                Texts.of("cli.density.reach"),
                Texts.of("cli.density.km"),
                Texts.of("cli.density.territories"),
                Texts.of("cli.density.range"),
                Texts.of("cli.density.perKm"),
                Texts.of("cli.density.limits", question.scope().level()),
                Texts.of("cli.density.byModel"),
                Texts.of("cli.density.limits", question.scope().level()));
        for (DensityAnswer.Row row : answer.rows()) {
            boolean surveyed = row.perKm().isPresent();
            table.add(
                    String.valueOf(row.season()),
                    row.river(),
                    row.reach().orElse(""),
                    row.surveyedKm() > 0 ? String.format(Locale.ROOT, "%.1f", row.surveyedKm()) : "–",
                    surveyed ? String.valueOf(row.territories()) : Texts.of("cli.density.notCounted"),
                    surveyed && row.min() < row.max() ? row.min() + "–" + row.max() : "",
                    number(row.perKm()),
                    surveyed ? number(row.lower()) + "–" + number(row.upper()) : "–",
                    row.byModel()
                            .map(model -> number(OptionalDouble.of(model.perKm())))
                            .orElse(""),
                    row.byModel()
                            .map(model -> number(OptionalDouble.of(model.lower())) + "–"
                                    + number(OptionalDouble.of(model.upper())))
                            .orElse(""));
        }
        table.print(terminal);
        terminal.out().println();
        terminal.out().println(Lines.of(Texts.of("cli.density.reading"), 0));
        answer.rows().stream()
                .flatMap(row -> row.method().stream())
                .findFirst()
                .ifPresent(method -> terminal.out().println(Texts.of("cli.density.method", method)));
        if (!answer.warnings().isEmpty()) {
            terminal.out()
                    .println(Texts.of("cli.density.warnings", answer.warnings().size()));
        }
    }

    private static String number(OptionalDouble number) {
        return number.isPresent() ? String.format(Locale.ROOT, "%.2f", number.getAsDouble()) : "–";
    }
}

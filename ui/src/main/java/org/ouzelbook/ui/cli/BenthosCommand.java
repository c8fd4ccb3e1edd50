package org.ouzelbook.ui.cli;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.BenthosAnswer;
import org.ouzelbook.ui.app.Texts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code benthos}: what the kick samples score, and the birds' density beside the prey. */
@Command(name = "benthos")
final class BenthosCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private AnalysisOptions question = new AnalysisOptions();

    @Mixin
    private RuleOptions rules = new RuleOptions();

    BenthosCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        BenthosAnswer answer;
        try (Book book = Book.open(question.book())) {
            answer = BenthosAnswer.of(book, question.scope(), rules::change);
        }
        if (question.json()) {
            Json.print(answer, terminal.out());
        } else {
            print(answer);
        }
        problems(answer);
        return answer.hasProblems() ? ExitCode.PROBLEMS : ExitCode.DONE;
    }

    private void problems(BenthosAnswer answer) {
        for (BenthosAnswer.Sample sample : answer.samples()) {
            if (!sample.isComplete()) {
                sample.warnings()
                        .forEach(warning -> terminal.err()
                                .println(Lines.of(Texts.of("cli.benthos.problem", sample.sample(), warning), 2)));
            }
        }
    }

    private void print(BenthosAnswer answer) {
        terminal.out()
                .println(terminal.bold(
                        Texts.of("cli.benthos.title", answer.samples().get(0).table())));
        samples(answer);
        terminal.out().println();
        if (answer.beside().isEmpty()) {
            terminal.out().println(Texts.of("cli.benthos.noneBeside"));
        } else {
            beside(answer);
        }
        terminal.out().println();
        paragraph(answer.caution());
        terminal.out().println();
        answer.warnings().forEach(warning -> paragraph(Message.of("cli.map.warning", warning)));
    }

    private void samples(BenthosAnswer answer) {
        Table table = Table.of(
                Texts.of("cli.benthos.sample"),
                Texts.of("cli.benthos.date"),
                Texts.of("cli.benthos.river"),
                Texts.of("cli.benthos.km"),
                Texts.of("cli.benthos.bmwp"),
                Texts.of("cli.benthos.taxa"),
                Texts.of("cli.benthos.aspt"),
                Texts.of("cli.benthos.ept"),
                Texts.of("cli.benthos.prey"));
        for (BenthosAnswer.Sample sample : answer.samples()) {
            table.add(
                    sample.sample(),
                    Texts.word(sample.date()),
                    sample.river(),
                    String.format(Locale.ROOT, "%.2f", sample.km()),
                    figure(sample, sample.bmwp()),
                    figure(sample, sample.taxa()),
                    number(sample.aspt()),
                    figure(sample, sample.eptFamilies()),
                    figure(sample, sample.preyRanks()));
        }
        table.print(terminal);
    }

    private static String figure(BenthosAnswer.Sample sample, int figure) {
        return sample.isComplete() ? String.valueOf(figure) : Texts.of("cli.benthos.atLeast", String.valueOf(figure));
    }

    private static String number(OptionalDouble number) {
        return number.isPresent() ? String.format(Locale.ROOT, "%.2f", number.getAsDouble()) : "–";
    }

    private void beside(BenthosAnswer answer) {
        answer.compared()
                .ifPresent(effort -> terminal.out()
                        .println(terminal.bold(Texts.of(
                                "cli.benthos.besideTitle", answer.species(), effort.minutes(), effort.method()))));
        Table table = Table.of(
                Texts.of("cli.benthos.water"),
                Texts.of("cli.benthos.season"),
                Texts.of("cli.benthos.territories"),
                Texts.of("cli.benthos.perKm"),
                Texts.of("cli.benthos.samples"),
                Texts.of("cli.benthos.preyMean"),
                Texts.of("cli.benthos.bmwp"),
                Texts.of("cli.benthos.aspt"));
        for (BenthosAnswer.Beside row : answer.beside()) {
            table.add(
                    row.water(),
                    row.season().toString(),
                    String.valueOf(row.territories()),
                    String.format(Locale.ROOT, "%.2f", row.perKm()),
                    String.valueOf(row.samples()),
                    String.format(Locale.ROOT, "%.1f", row.preyRanks()),
                    String.format(Locale.ROOT, "%.0f", row.bmwp()),
                    number(row.aspt()));
        }
        table.print(terminal);
        terminal.out().println();
        paragraph(Message.of("cli.benthos.preyMeaning"));
        BenthosAnswer.Correlation correlation = answer.correlation();
        paragraph(
                correlation.why().isPresent()
                        ? Message.of(
                                "cli.benthos.noCorrelation", correlation.why().get())
                        : Message.of(
                                "cli.benthos.correlation",
                                correlation.rho().orElseThrow(),
                                correlation.p().orElseThrow(),
                                correlation.pairs().orElseThrow()));
        BenthosAnswer.Model model = answer.model();
        paragraph(
                model.why().isPresent()
                        ? Message.of("cli.benthos.noModel", model.why().get())
                        : Message.of(
                                "cli.benthos.model",
                                model.percent().orElseThrow(),
                                model.lower().orElseThrow(),
                                model.upper().orElseThrow(),
                                model.level()));
    }

    private void paragraph(Message message) {
        terminal.out().println(Lines.of(Texts.of(message), 0));
    }
}

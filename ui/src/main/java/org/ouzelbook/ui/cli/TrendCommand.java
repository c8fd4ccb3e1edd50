package org.ouzelbook.ui.cli;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendAnswer;
import org.ouzelbook.ui.app.TrendComparison;
import org.ouzelbook.ui.app.WrongRequest;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code trend}: whether territories have become more or fewer, and how sure that is. */
@Command(name = "trend")
final class TrendCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private AnalysisOptions question = new AnalysisOptions();

    @Mixin
    private RuleOptions rules = new RuleOptions();

    @Option(names = "--compare", paramLabel = "A,B", split = ",")
    private List<String> compare = List.of();

    @Mixin
    private CountingOptions counting = new CountingOptions();

    TrendCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (!compare.isEmpty()) {
            return compare();
        }
        TrendAnswer answer;
        try (Book book = Book.open(question.book());
                ProgressLine progress = new ProgressLine(terminal, Texts.of("cli.map.fitting"))) {
            answer = TrendAnswer.of(book, question.scope(), rules::change, counting.counting(), progress);
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
        TrendComparison answer;
        try (Book book = Book.open(question.book());
                ProgressLine progress = new ProgressLine(terminal, Texts.of("cli.map.fitting"))) {
            answer = TrendComparison.of(
                    book,
                    question.scope(),
                    rules::change,
                    counting.counting(),
                    compare.get(0).strip(),
                    compare.get(1).strip(),
                    progress);
        }
        if (question.json()) {
            Json.print(answer, terminal.out());
        } else {
            new TrendComparisonPage(terminal).print(answer);
        }
        return ExitCode.DONE;
    }

    private void print(TrendAnswer answer) {
        terminal.out().println(terminal.bold(Texts.of("cli.trend.title", answer.species())));
        terminal.out().println(Lines.of(Texts.of("cli.trend.verdict", answer.verdict()), 0));
        terminal.out().println();
        table(answer);
        terminal.out().println();
        change(answer);
        answer.why().forEach(why -> terminal.out().println(Lines.of(Texts.of(why), 0)));
        answer.warnings().forEach(warning -> terminal.out().println(Lines.of(Texts.of("cli.map.warning", warning), 6)));
    }

    private void table(TrendAnswer answer) {
        Table table = Table.of(
                Texts.of("cli.density.season"),
                Texts.of("cli.density.territories"),
                Texts.of("cli.density.range"),
                Texts.of("cli.trend.byModel"),
                Texts.of("cli.density.km"),
                Texts.of("cli.trend.visits"),
                "");
        for (TrendAnswer.Season season : answer.seasons()) {
            boolean counted = season.count().isPresent();
            table.add(
                    String.valueOf(season.season()),
                    counted ? whole(season.count()) : Texts.of("cli.density.notCounted"),
                    counted ? range(season) : "–",
                    season.byModel()
                            .map(model ->
                                    Texts.of("cli.trend.byModel.count", model.estimate(), model.lower(), model.upper()))
                            .orElse(""),
                    counted ? String.format(Locale.ROOT, "%.1f", season.surveyedKm()) : "–",
                    counted ? String.valueOf(season.effectiveVisits()) : "–",
                    season.why().map(Texts::of).orElse(season.imputed() ? Texts.of("cli.trend.imputed") : ""));
        }
        table.print(terminal);
    }

    private static String range(TrendAnswer.Season season) {
        String lower = whole(season.lower());
        String upper = whole(season.upper());
        return lower.equals(upper) ? "" : lower + "–" + upper;
    }

    private static String whole(OptionalDouble number) {
        return number.isPresent() ? String.format(Locale.ROOT, "%.0f", number.getAsDouble()) : "–";
    }

    private void change(TrendAnswer answer) {
        if (answer.perYear().percent().isEmpty()) {
            return;
        }
        say("cli.trend.perYear", answer.perYear());
        say("cli.trend.wholePeriod", answer.wholePeriod());
        answer.byRule().ifPresent(byRule -> say("cli.trend.perYearByRule", byRule.perYear()));
        answer.byNegativeBinomial().ifPresent(other -> say("cli.trend.perYearNegativeBinomial", other.perYear()));
        answer.shareFromCounts()
                .ifPresent(share -> terminal.out().println(Lines.of(Texts.of("cli.trend.shareFromCounts", share), 0)));
        answer.probabilityFalling()
                .ifPresent(falling -> terminal.out().println(Texts.of("cli.trend.falling", falling)));
        answer.smallestDetectable()
                .percentPerYear()
                .ifPresent(fall -> terminal.out()
                        .println(Lines.of(
                                Texts.of(
                                        "cli.trend.smallest",
                                        -fall,
                                        answer.smallestDetectable().power()),
                                0)));
        answer.mannKendall()
                .tau()
                .ifPresent(tau -> terminal.out()
                        .println(Texts.of(
                                "cli.trend.ranks", tau, answer.mannKendall().p().orElse(1))));
        answer.model().ifPresent(model -> terminal.out().println(Lines.of(Texts.of("cli.trend.model", model), 7)));
    }

    private void say(String key, TrendAnswer.Percent percent) {
        terminal.out()
                .println(Texts.of(
                        key,
                        percent.percent().orElse(0),
                        percent.lower().isPresent()
                                ? Texts.of("cli.trend.limit", percent.lower().getAsDouble())
                                : "–",
                        percent.upper().isPresent()
                                ? Texts.of("cli.trend.limit", percent.upper().getAsDouble())
                                : "–",
                        percent.level()));
    }
}

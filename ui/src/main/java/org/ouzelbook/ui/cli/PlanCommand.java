package org.ouzelbook.ui.cli;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.PlanAnswer;
import org.ouzelbook.ui.app.Texts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code plan}: what the present effort can show, what more would buy, and the visits still worth making. */
@Command(name = "plan")
final class PlanCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private AnalysisOptions question = new AnalysisOptions();

    @Mixin
    private RuleOptions rules = new RuleOptions();

    @Mixin
    private CountingOptions counting = new CountingOptions();

    @Option(names = "--on", paramLabel = "DATE", converter = AnalysisOptions.Day.class)
    private @Nullable LocalDate on;

    PlanCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        LocalDate today = on == null ? LocalDate.now(ZoneId.systemDefault()) : on;
        PlanAnswer answer;
        try (Book book = Book.open(question.book());
                ProgressLine progress = new ProgressLine(terminal, Texts.of("cli.map.fitting"))) {
            answer = PlanAnswer.of(book, question.scope(), rules::change, today, counting.counting(), progress);
        }
        if (question.json()) {
            Json.print(answer, terminal.out());
        } else {
            print(answer);
        }
        return ExitCode.DONE;
    }

    private void print(PlanAnswer answer) {
        terminal.out()
                .println(
                        terminal.bold(Texts.of("cli.plan.title", answer.species(), Integer.toString(answer.season()))));
        answer.why().ifPresent(why -> terminal.out().println(Lines.of(Texts.of(why), 0)));
        if (!answer.choices().isEmpty()) {
            terminal.out()
                    .println(Lines.of(
                            Texts.of(
                                    "cli.plan.present",
                                    answer.territories(),
                                    answer.surveyedKm(),
                                    answer.visits(),
                                    answer.countedSeasons(),
                                    answer.detection()),
                            0));
            PlanAnswer.Fitted noise = answer.yearNoiseFitted();
            if (noise.estimate().isPresent()) {
                terminal.out()
                        .println(Lines.of(
                                Texts.of(
                                        "cli.plan.yearNoise",
                                        noise.estimate().getAsDouble(),
                                        noise.lower().orElse(0),
                                        noise.upper().orElse(0),
                                        noise.seasons(),
                                        answer.yearNoise()),
                                0));
            }
            terminal.out().println();
            choices(answer);
        }
        worthMaking(answer);
        calendar(answer);
        answer.warnings().forEach(warning -> terminal.out().println(Lines.of(Texts.of("cli.map.warning", warning), 6)));
    }

    private void choices(PlanAnswer answer) {
        Table table = Table.of(
                Texts.of("cli.plan.way"),
                Texts.of("cli.trend.visits"),
                Texts.of("cli.plan.seasons"),
                Texts.of("cli.plan.halving"),
                Texts.of("cli.plan.smallest"));
        for (PlanAnswer.Choice choice : answer.choices()) {
            table.add(
                    Texts.of("cli.plan.wayNamed", choice.way()),
                    Integer.toString(choice.visits()),
                    Integer.toString(choice.seasons()),
                    Texts.of("number.probability", choice.powerForHalving()),
                    choice.smallestFall().isPresent()
                            ? String.format(
                                    Locale.ROOT,
                                    "%.1f %%",
                                    choice.smallestFall().getAsDouble())
                            : "–");
        }
        table.print(terminal);
        terminal.out().println();
    }

    private void worthMaking(PlanAnswer answer) {
        Table table = Table.of(
                Texts.of("cli.density.river"),
                Texts.of("cli.plan.km"),
                Texts.of("cli.plan.visitsSoFar"),
                Texts.of("cli.plan.worth"),
                Texts.of("cli.plan.surer"));
        for (PlanAnswer.Worth worth : answer.worthMaking()) {
            table.add(
                    worth.river(),
                    km(worth),
                    Integer.toString(worth.visits()),
                    String.format(Locale.ROOT, "%.1f", worth.territories()),
                    worth.deviation().isPresent()
                            ? Texts.of(
                                    "cli.plan.surerBy",
                                    worth.deviation().getAsDouble(),
                                    worth.deviationAfter().orElse(0))
                            : "–");
        }
        if (!answer.worthMaking().isEmpty()) {
            terminal.out().println(Texts.of("cli.plan.worthTitle"));
            table.print(terminal);
            if (answer.worthMaking().get(0).deviation().isPresent()) {
                PlanAnswer.Worth best = answer.worthMaking().get(0);
                terminal.out()
                        .println(Lines.of(
                                Texts.of(
                                        "cli.plan.surerReading",
                                        best.river(),
                                        km(best),
                                        best.deviation().getAsDouble(),
                                        best.deviationAfter().orElse(0),
                                        best.bits().orElse(0)),
                                0));
            }
            terminal.out().println();
        }
    }

    private static String km(PlanAnswer.Worth worth) {
        return String.format(Locale.ROOT, "%.1f–%.1f", worth.fromKm(), worth.toKm());
    }

    private void calendar(PlanAnswer answer) {
        if (answer.calendar().isEmpty()) {
            terminal.out().println(Texts.of("cli.plan.noVisit"));
            return;
        }
        answer.calendar()
                .forEach(window -> terminal.out()
                        .println(Texts.of(
                                "cli.plan.window", window.river(), window.visit(), window.from(), window.to())));
        terminal.out().println();
    }
}

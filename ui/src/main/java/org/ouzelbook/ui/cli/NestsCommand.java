package org.ouzelbook.ui.cli;

import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.ouzelbook.stats.survey.BreedingPace;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.NestsAnswer;
import org.ouzelbook.ui.app.NestsAnswer.Mean;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;
import org.ouzelbook.ui.app.estimate.EstimateNests.Figure;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code nests}: how nests fare, from their checks. */
@Command(name = "nests")
final class NestsCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Mixin
    private AnalysisOptions question = new AnalysisOptions();

    @Mixin
    private RuleOptions rules = new RuleOptions();

    @Option(names = "--incubation", paramLabel = "DAYS")
    private @Nullable String incubation;

    @Option(names = "--nestlings", paramLabel = "DAYS")
    private @Nullable String nestlings;

    NestsCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        NestsAnswer answer;
        try (Book book = Book.open(question.book())) {
            answer = NestsAnswer.of(book, question.scope(), rules::change, this::pace);
        }
        if (question.json()) {
            Json.print(answer, terminal.out());
        } else {
            print(answer);
        }
        return ExitCode.DONE;
    }

    private BreedingPace pace(BreedingPace usual) {
        BreedingPace pace = usual;
        if (incubation != null) {
            int[] days = days("--incubation", incubation);
            pace = pace.withIncubation(days[0], days[1]);
        }
        if (nestlings != null) {
            int[] days = days("--nestlings", nestlings);
            pace = pace.withNestlings(days[0], days[1]);
        }
        return pace;
    }

    /** Days as {@code 16} or {@code 15-18}. */
    private static int[] days(String option, String text) {
        if (!text.matches("[1-9][0-9]?(-[1-9][0-9]?)?")) {
            throw new WrongRequest(Message.of("cli.wrong.value", option, text));
        }
        int dash = text.indexOf('-');
        int from = Integer.parseInt(dash < 0 ? text : text.substring(0, dash));
        int to = Integer.parseInt(text.substring(dash + 1));
        if (from > to) {
            throw new WrongRequest(Message.of("cli.wrong.value", option, text));
        }
        return new int[] {from, to};
    }

    private void print(NestsAnswer answer) {
        terminal.out().println(terminal.bold(Texts.of("cli.nests.title", answer.species())));
        Table seasons = Table.of(
                Texts.of("cli.nests.season"),
                Texts.of("cli.nests.attempts"),
                Texts.of("cli.nests.succeeded"),
                Texts.of("cli.nests.failed"),
                Texts.of("cli.nests.unknown"),
                Texts.of("cli.nests.firstEgg"),
                Texts.of("cli.nests.dated"));
        answer.seasons()
                .forEach(season -> seasons.add(
                        String.valueOf(season.season()),
                        String.valueOf(season.attempts()),
                        String.valueOf(season.succeeded()),
                        String.valueOf(season.failed()),
                        String.valueOf(season.unknown()),
                        season.medianFirstEgg().map(Texts::word).orElse("–"),
                        String.valueOf(season.dated())));
        seasons.print(terminal);
        terminal.out().println();
        told("cli.nests.exposure", answer.exposureDays(), answer.losses(), answer.exposureDaysSeenAlive());
        told("cli.nests.daily", figure(answer.dailySurvival(), "%.4f"));
        told(
                "cli.nests.byStage",
                figure(answer.eggsDailySurvival(), "%.4f"),
                figure(answer.youngDailySurvival(), "%.4f"));
        told("cli.nests.success", answer.periodDays(), figure(answer.success(), "%.2f"));
        told("cli.nests.successByStage", figure(answer.successByStage(), "%.2f"));
        told("cli.nests.apparent", figure(answer.apparent(), "%.2f"));
        told("cli.nests.clutch", mean(answer.clutch()));
        told("cli.nests.fledgedPerAttempt", mean(answer.fledgedPerAttempt()));
        told("cli.nests.fledgedPerTerritory", mean(answer.fledgedPerTerritory()));
        told("cli.nests.shift", figure(answer.firstEggShift(), "%+.1f"));
        terminal.out().println();
        terminal.out().println(Lines.of(Texts.of("cli.nests.reading"), 0));
        answer.warnings()
                .forEach(warning ->
                        terminal.out().println(Lines.of(Texts.of("estimate.told.warning", Texts.of(warning)), 0)));
        terminal.out().println(Lines.of(Texts.of("cli.nests.law"), 0));
    }

    private void told(String key, Object... facts) {
        terminal.out().println(Lines.of(Texts.of(key, facts), 0));
    }

    private static String figure(Figure figure, String form) {
        if (figure.estimate().isEmpty()) {
            return figure.why().map(Texts::of).orElse("–");
        }
        String open = Texts.of("cli.nests.open");
        return Texts.of(
                "estimate.told.limits",
                String.format(Locale.ROOT, form, figure.estimate().getAsDouble()),
                figure.lower().isPresent()
                        ? String.format(Locale.ROOT, form, figure.lower().getAsDouble())
                        : open,
                figure.upper().isPresent()
                        ? String.format(Locale.ROOT, form, figure.upper().getAsDouble())
                        : open);
    }

    private static String mean(Mean mean) {
        return mean.mean().isEmpty()
                ? mean.why().map(Texts::of).orElse("–")
                : Texts.of(
                        "cli.nests.mean",
                        mean.mean().getAsDouble(),
                        mean.lower().orElse(0),
                        mean.upper().orElse(0),
                        mean.n());
    }
}

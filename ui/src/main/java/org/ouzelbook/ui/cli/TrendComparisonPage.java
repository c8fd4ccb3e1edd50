package org.ouzelbook.ui.cli;

import java.util.OptionalDouble;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.TrendComparison;
import org.ouzelbook.ui.app.TrendComparison.Change;
import org.ouzelbook.ui.app.TrendComparison.Difference;
import org.ouzelbook.ui.app.TrendComparison.Side;

/** Tells a person about two seasons beside the trend between them, or about the trends of two waters and how they differ. */
final class TrendComparisonPage {
    private final Terminal terminal;

    TrendComparisonPage(Terminal terminal) {
        this.terminal = terminal;
    }

    void print(TrendComparison answer) {
        answer.counts().ifPresent(counts -> {
            new ComparisonPage(terminal).print(counts);
            terminal.out().println();
        });
        answer.alongTheLine().ifPresent(this::alongTheLine);
        if (!answer.waters().isEmpty()) {
            waters(answer);
        }
        answer.difference().ifPresent(difference -> difference(difference, answer.level()));
        answer.warnings().forEach(warning -> told("estimate.told.warning", Texts.of(warning)));
    }

    private void alongTheLine(Change change) {
        if (change.percent().isPresent()) {
            told("cli.trend.alongTheLine", limits(change.percent(), change.lower(), change.upper()));
            told("cli.trend.falling", change.probabilityFalling().orElse(0));
        }
        change.why().ifPresent(why -> told("cli.trend.noLine", Texts.of(why)));
    }

    private void waters(TrendComparison answer) {
        terminal.out().println(terminal.bold(Texts.of("cli.trend.compareTitle", answer.species())));
        Table table = Table.of(
                Texts.of("cli.compare.water"),
                Texts.of("cli.plan.seasons"),
                Texts.of("cli.trend.aYear"),
                Texts.of("cli.density.limits", answer.level()),
                Texts.of("cli.trend.fell"));
        for (Side side : answer.waters()) {
            Change change = side.perYear();
            table.add(
                    side.water(),
                    Integer.toString(side.countedSeasons()),
                    number(change.percent()),
                    change.percent().isPresent() ? number(change.lower()) + " – " + number(change.upper()) : "–",
                    change.probabilityFalling().isPresent()
                            ? Texts.of(
                                    "number.probability",
                                    change.probabilityFalling().getAsDouble())
                            : "–");
        }
        table.print(terminal);
        terminal.out().println();
        for (Side side : answer.waters()) {
            told("cli.trend.ofWater", side.water(), Texts.of(side.verdict()));
        }
        terminal.out().println();
    }

    private void difference(Difference difference, double level) {
        difference.why().ifPresent(why -> terminal.out().println(Lines.of(Texts.of(why), 0)));
        if (difference.p().isPresent()) {
            told("cli.trend.difference", limits(difference.percentPerYear(), difference.lower(), difference.upper()));
            double p = difference.p().getAsDouble();
            told(p < 1 - level ? "cli.compare.differ" : "cli.compare.same", p);
        }
    }

    private static String limits(OptionalDouble value, OptionalDouble lower, OptionalDouble upper) {
        return Texts.of("estimate.told.limits", number(value) + " %", number(lower), number(upper));
    }

    private static String number(OptionalDouble number) {
        return number.isPresent() ? Texts.of("cli.trend.limit", number.getAsDouble()) : Texts.of("cli.nests.open");
    }

    private void told(String key, Object... facts) {
        terminal.out().println(Lines.of(Texts.of(key, facts), 0));
    }
}

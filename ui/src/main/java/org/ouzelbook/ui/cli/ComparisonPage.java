package org.ouzelbook.ui.cli;

import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.ouzelbook.ui.app.ComparisonAnswer;
import org.ouzelbook.ui.app.ComparisonAnswer.Limits;
import org.ouzelbook.ui.app.ComparisonAnswer.Side;
import org.ouzelbook.ui.app.Texts;

/** Tells a person about two densities: both, how they differ, how sure that is, and what such counts could have shown. */
final class ComparisonPage {
    private final Terminal terminal;

    ComparisonPage(Terminal terminal) {
        this.terminal = terminal;
    }

    void print(ComparisonAnswer answer) {
        terminal.out().println(terminal.bold(Texts.of("cli.compare.title", answer.species())));
        Table table = Table.of(
                Texts.of("cli.density.season"),
                Texts.of("cli.compare.water"),
                Texts.of("cli.density.km"),
                Texts.of("cli.trend.visits"),
                Texts.of("cli.density.territories"),
                Texts.of("cli.density.perKm"),
                Texts.of("cli.density.limits", answer.level()));
        add(table, answer.from());
        add(table, answer.to());
        table.print(terminal);
        terminal.out().println();
        told("cli.compare.ratio", limits(answer.ratio(), "%.2f"));
        told("cli.compare.difference", limits(answer.difference(), "%+.2f"));
        answer.p().ifPresent(p -> told(p < 1 - answer.level() ? "cli.compare.differ" : "cli.compare.same", p));
        answer.couldShow().ifPresent(this::could);
        terminal.out().println();
        told("cli.compare.reading");
        answer.ratio().method().ifPresent(method -> told("cli.compare.method", method));
        answer.warnings().forEach(warning -> told("estimate.told.warning", Texts.of(warning)));
    }

    private static void add(Table table, Side side) {
        table.add(
                Integer.toString(side.season()),
                String.join(", ", side.waters()),
                String.format(Locale.ROOT, "%.1f", side.surveyedKm()),
                side.effectiveVisits().stream().map(String::valueOf).collect(Collectors.joining(", ")),
                Integer.toString(side.territories()),
                number(side.perKm(), "%.2f"),
                side.perKm().isPresent() ? number(side.lower(), "%.2f") + "–" + number(side.upper(), "%.2f") : "–");
    }

    private void could(ComparisonAnswer.CouldShow could) {
        if (could.fallPercent().isPresent()) {
            told("cli.compare.fall", -could.fallPercent().getAsDouble());
        } else {
            told("cli.compare.noFall");
        }
        could.risePercent().ifPresent(rise -> told("cli.compare.rise", rise));
    }

    private static String limits(Limits one, String form) {
        String open = Texts.of("cli.nests.open");
        if (one.estimate().isEmpty() && one.lower().isEmpty() && one.upper().isEmpty()) {
            return one.why().map(Texts::of).orElse("–");
        }
        return Texts.of(
                "estimate.told.limits",
                number(one.estimate(), form),
                one.lower().isPresent() ? number(one.lower(), form) : open,
                one.upper().isPresent() ? number(one.upper(), form) : open);
    }

    private static String number(OptionalDouble number, String form) {
        return number.isPresent()
                ? String.format(Locale.ROOT, form, number.getAsDouble()).replace('-', '−')
                : "–";
    }

    private void told(String key, Object... facts) {
        terminal.out().println(Lines.of(Texts.of(key, facts), 0));
    }
}

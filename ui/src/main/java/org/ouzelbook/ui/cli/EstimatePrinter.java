package org.ouzelbook.ui.cli;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.estimate.EstimateBends.Bends;
import org.ouzelbook.ui.app.estimate.EstimateCurve.Curve;
import org.ouzelbook.ui.app.estimate.EstimateCurve.Point;
import org.ouzelbook.ui.app.estimate.EstimateLine.Line;
import org.ouzelbook.ui.app.estimate.EstimateNests;
import org.ouzelbook.ui.app.estimate.EstimateNests.Nests;
import org.ouzelbook.ui.app.estimate.EstimateOccupancy.Occupied;
import org.ouzelbook.ui.app.estimate.EstimateProportions.Exact;
import org.ouzelbook.ui.app.estimate.EstimateProportions.Proportions;
import org.ouzelbook.ui.app.estimate.EstimateRankTrend.Ranked;
import org.ouzelbook.ui.app.estimate.EstimateRates.Rates;
import org.ouzelbook.ui.app.estimate.EstimateSeasons.Seasons;
import org.ouzelbook.ui.app.estimate.EstimateSurvival;
import org.ouzelbook.ui.app.estimate.EstimateSurvival.Survival;
import org.ouzelbook.ui.app.estimate.NoAnswer;
import org.ouzelbook.ui.app.estimate.Parameter;
import org.ouzelbook.ui.app.estimate.TableAnswer;
import org.ouzelbook.ui.app.estimate.TrendFigures.Total;

/** Tells a person what an estimator says of a table: the method and its source, the numbers to four digits, the cautions. */
final class EstimatePrinter {
    private static final MathContext FOUR_DIGITS = new MathContext(4);
    private static final String NONE = "–";
    private static final double ROUNDING = 1e-6;

    private final Terminal terminal;

    EstimatePrinter(Terminal terminal) {
        this.terminal = terminal;
    }

    void print(TableAnswer answer) {
        if (answer instanceof Rates rates) {
            rates(rates);
        } else if (answer instanceof Proportions proportions) {
            proportions(proportions);
        } else if (answer instanceof Ranked ranked) {
            ranked(ranked);
        } else if (answer instanceof Line line) {
            line(line);
        } else if (answer instanceof Seasons seasons) {
            seasons(seasons);
        } else if (answer instanceof Nests nests) {
            nests(nests);
        } else if (answer instanceof Survival survival) {
            survival(survival);
        } else if (answer instanceof Curve curve) {
            curve(curve);
        } else if (answer instanceof Bends bends) {
            bends(bends);
        } else if (answer instanceof Occupied occupied) {
            new OccupancyPrinter(terminal, this).print(occupied);
        } else if (answer instanceof NoAnswer none) {
            head(none.model(), none.source());
            told("estimate.told.none", Texts.of(none.why()));
            warnings(none.warnings());
        }
    }

    private void rates(Rates rates) {
        head(rates.model(), rates.source());
        parameters(rates.parameters(), rates.level());
        rates.p().ifPresent(p -> {
            if (rates.ratio().isPresent() || rates.lower().isPresent()) {
                told("estimate.told.ratio", number(rates.ratio()), number(rates.lower()), number(rates.upper()));
            }
            told("estimate.told.ratioP", number(p));
            rates.why().ifPresent(why -> terminal.out().println(Texts.of(why)));
        });
        warnings(rates.warnings());
    }

    private void proportions(Proportions proportions) {
        head(proportions.model(), proportions.source());
        parameters(proportions.parameters(), proportions.level());
        for (Exact exact : proportions.exact()) {
            told("estimate.told.exact", exact.term(), number(exact.lower()), number(exact.upper()));
        }
        warnings(proportions.warnings());
    }

    private void ranked(Ranked ranked) {
        head(ranked.model(), ranked.source());
        parameters(ranked.parameters(), ranked.level());
        told(
                "estimate.told.line",
                number(ranked.intercept()),
                ranked.slope() < 0 ? "−" : "+",
                number(Math.abs(ranked.slope())));
        told("estimate.told.kendall", ranked.s(), number(ranked.tau()), number(ranked.tauB()), ranked.n());
        told("estimate.told.kendallP", number(ranked.p()), number(ranked.z()), number(ranked.exactP()));
        told("estimate.told.ranks", ranked.rankRule());
        ranked.why().ifPresent(why -> terminal.out().println(Texts.of(why)));
        warnings(ranked.warnings());
    }

    private void line(Line line) {
        head(line.model(), line.source());
        parameters(line.parameters(), line.level());
        told(
                "estimate.told.perYear",
                percent(line.perYear().percent()),
                percent(line.perYear().lower()),
                percent(line.perYear().upper()));
        told(
                "estimate.told.wholePeriod",
                percent(line.wholePeriod().percent()),
                percent(line.wholePeriod().lower()),
                percent(line.wholePeriod().upper()));
        told("estimate.told.falling", line.probabilityFalling());
        line.byNegativeBinomial()
                .ifPresent(other -> told(
                        "estimate.told.negativeBinomial",
                        percent(other.perYear().percent()),
                        percent(other.perYear().lower()),
                        percent(other.perYear().upper()),
                        other.probabilityFalling(),
                        number(other.share())));
        told(
                "estimate.told.detectable",
                -line.smallestDetectable().percentPerYear(),
                line.smallestDetectable().power());
        told("estimate.told.fit", line.n(), line.sites(), number(line.deviance()), line.degreesOfFreedom());
        emptySites(line.emptySites(), line.emptySitesCount());
        warnings(line.warnings());
    }

    private void seasons(Seasons seasons) {
        head(seasons.model(), seasons.source());
        parameters(seasons.parameters(), seasons.level());
        totals(seasons.totals());
        told("estimate.told.fit", seasons.n(), seasons.sites(), number(seasons.deviance()), seasons.degreesOfFreedom());
        emptySites(seasons.emptySites(), seasons.emptySitesCount());
        warnings(seasons.warnings());
    }

    private void curve(Curve curve) {
        head(curve.model(), curve.source());
        Table table = Table.of(
                Texts.of("estimate.head.season"),
                Texts.of("estimate.head.ratio"),
                Texts.of("estimate.head.lowerAt", curve.level()),
                Texts.of("estimate.head.upper"),
                Texts.of("estimate.head.bandLower"),
                Texts.of("estimate.head.bandUpper"));
        for (Point point : curve.curve()) {
            table.add(
                    Integer.toString(point.season()),
                    number(point.ratio()),
                    number(point.lower()),
                    number(point.upper()),
                    number(point.bandLower()),
                    number(point.bandUpper()));
        }
        table.print(terminal);
        terminal.out().println();
        told("estimate.told.curve", curve.effectiveCoefficients(), number(curve.smoothing()));
        emptySites(curve.emptySites(), curve.emptySitesCount());
        warnings(curve.warnings());
    }

    private void bends(Bends bends) {
        head(bends.model(), bends.source());
        parameters(bends.parameters(), bends.level());
        bends.pieces()
                .forEach(piece -> told(
                        "estimate.told.piece",
                        Integer.toString(piece.from()),
                        Integer.toString(piece.to()),
                        percent(piece.perYear().percent()),
                        percent(piece.perYear().lower()),
                        percent(piece.perYear().upper())));
        bends.changes()
                .forEach(change -> told("estimate.told.change", Integer.toString(change.season()), number(change.p())));
        emptySites(bends.emptySites(), bends.emptySitesCount());
        warnings(bends.warnings());
    }

    private void totals(List<Total> totals) {
        Table table = Table.of(
                Texts.of("estimate.head.season"),
                Texts.of("estimate.head.observed"),
                Texts.of("estimate.head.counted"),
                Texts.of("estimate.head.total"),
                Texts.of("estimate.head.se"),
                Texts.of("estimate.head.lower"),
                Texts.of("estimate.head.upper"));
        for (Total total : totals) {
            table.add(
                    Integer.toString(total.season()),
                    Long.toString(total.observed()),
                    Integer.toString(total.counted()),
                    number(total.total()),
                    number(total.se()),
                    number(total.lower()),
                    number(total.upper()));
        }
        table.print(terminal);
        terminal.out().println();
    }

    private void emptySites(List<String> empty, boolean count) {
        if (!empty.isEmpty()) {
            told(count ? "estimate.told.emptySitesIn" : "estimate.told.emptySitesOut");
        }
    }

    private void nests(Nests nests) {
        head(nests.model(), nests.source());
        parameters(nests.parameters(), nests.level());
        told("estimate.told.likelihood", number(nests.logLikelihood()), number(nests.aicc()), nests.n());
        told("estimate.told.exposure", nests.exposureDays(), nests.losses());
        told("estimate.told.mayfield", limits(nests.mayfield()));
        nests.success().ifPresent(success -> told("estimate.told.success", limits(success)));
        nests.mayfieldSuccess().ifPresent(success -> told("estimate.told.mayfieldSuccess", limits(success)));
        warnings(nests.warnings());
    }

    static String limits(EstimateNests.Figure one) {
        return one.estimate().isPresent()
                ? Texts.of("estimate.told.limits", number(one.estimate()), number(one.lower()), number(one.upper()))
                : one.why().map(Texts::of).orElse(NONE);
    }

    private void survival(Survival survival) {
        head(survival.model(), survival.source());
        parameters(survival.parameters(), survival.level());
        told("estimate.told.likelihood", number(survival.logLikelihood()), number(survival.aicc()), survival.n());
        told("estimate.told.histories", survival.birds(), survival.occasions(), number(survival.deviance()));
        goodnessOfFit(survival.goodnessOfFit());
        warnings(survival.warnings());
    }

    void goodnessOfFit(EstimateSurvival.Fit fit) {
        fit.components()
                .forEach(test -> told(
                        test.degreesOfFreedom() == 0 ? "estimate.told.testEmpty" : "estimate.told.test",
                        Texts.word(test.test()),
                        number(test.chiSquare()),
                        test.degreesOfFreedom(),
                        number(test.p())));
    }

    void head(Message model, String source) {
        terminal.out().println(terminal.bold(Texts.of(model)));
        terminal.out().println(source);
        terminal.out().println();
    }

    void parameters(List<Parameter> parameters, double level) {
        Table table = Table.of(
                Texts.of("estimate.head.part"),
                Texts.of("estimate.head.term"),
                Texts.of("estimate.head.scale"),
                Texts.of("estimate.head.estimate"),
                Texts.of("estimate.head.se"),
                Texts.of("estimate.head.lowerAt", level),
                Texts.of("estimate.head.upper"));
        for (Parameter parameter : parameters) {
            table.add(
                    parameter.part(),
                    parameter.term(),
                    parameter.scale(),
                    number(withoutRounding(parameter.estimate(), parameter.se())),
                    number(parameter.se()),
                    number(parameter.lower()),
                    number(parameter.upper()));
        }
        table.print(terminal);
        terminal.out().println();
    }

    /** A zero that arithmetic left a trace of: what is a millionth of its standard error is printed as 0. */
    private static OptionalDouble withoutRounding(OptionalDouble estimate, OptionalDouble error) {
        boolean zero = estimate.isPresent()
                && error.isPresent()
                && Math.abs(estimate.getAsDouble()) < ROUNDING * error.getAsDouble();
        return zero ? OptionalDouble.of(0) : estimate;
    }

    private static String percent(OptionalDouble number) {
        return number.isPresent() ? percent(number.getAsDouble()) : Texts.of("cli.nests.open");
    }

    private static String percent(double number) {
        return Texts.of("cli.trend.limit", number);
    }

    void told(String key, Object... facts) {
        terminal.out().println(Texts.of(key, facts));
    }

    void warnings(List<Message> warnings) {
        warnings.forEach(warning -> told("estimate.told.warning", Texts.of(warning)));
    }

    static String number(OptionalDouble number) {
        return number.isPresent() ? number(number.getAsDouble()) : NONE;
    }

    static String number(double number) {
        BigDecimal rounded = new BigDecimal(number).round(FOUR_DIGITS);
        boolean plain = number == 0 || (Math.abs(number) >= 1e-5 && Math.abs(number) < 1e9);
        return plain ? rounded.toPlainString() : rounded.toString();
    }
}

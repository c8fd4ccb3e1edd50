package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.FreeFit;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.interval.GarwoodInterval;
import org.ouzelbook.stats.estimator.rate.RateComparison;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.tracker.domain.Message;

/** Rates of a table with the columns {@code count} and {@code exposure}: one, or two and their ratio. */
public final class EstimateRates {
    private static final long LARGEST_COUNT = 1_000_000_000;
    private static final int MOST_ROWS = 2;

    private EstimateRates() {}

    /**
     * Rates, and the ratio of the first to the second.
     *
     * @param model how they were computed
     * @param source where that was published
     * @param n how many rates
     * @param logLikelihood of Poisson counts, with the log y! terms
     * @param aic Akaike's criterion
     * @param aicc always empty: there are no more counts than parameters
     * @param parameters each rate, as it is and as its logarithm
     * @param ratio first rate over second rate; empty with {@code why}
     * @param lower its lower limit
     * @param upper its upper limit
     * @param p two-sided, of equal rates: twice the smaller tail
     * @param level level of all limits
     * @param why why there is no ratio, or one of its numbers is missing
     * @param warnings what else to know
     */
    public record Rates(
            Message model,
            String source,
            long n,
            double logLikelihood,
            double aic,
            OptionalDouble aicc,
            List<Parameter> parameters,
            OptionalDouble ratio,
            OptionalDouble lower,
            OptionalDouble upper,
            OptionalDouble p,
            double level,
            Optional<Message> why,
            List<Message> warnings)
            implements TableAnswer {}

    private record Row(long count, double exposure) {}

    /**
     * {@return the rates of a table}
     *
     * @param file the table
     * @param level level of the limits, between 0 and 1
     * @throws BadTable if the table must be mended first
     */
    public static TableAnswer of(Path file, double level) {
        PlainTable table = PlainTable.read(file, List.of(), List.of("count", "exposure"), List.of());
        List<Row> rows = table.rows().map(EstimateRates::row).toList();
        if (rows.isEmpty() || rows.size() > MOST_ROWS) {
            table.problem(Message.of("estimate.rate.rows", rows.size()));
        }
        table.check();
        List<Parameter> parameters = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            String term = rows.size() == 1 ? Parameter.INTERCEPT : "row=" + (i + 1);
            Estimate rate = GarwoodInterval.of(rows.get(i).count, rows.get(i).exposure, level)
                    .found()
                    .orElseThrow();
            parameters.add(Parameter.of("rate", term, Parameter.NATURAL, rate));
            parameters.add(logRate(term, rate));
        }
        FreeFit fit = FreeFit.ofCounts(rows.stream().mapToLong(Row::count).toArray());
        return rows.size() == 1 ? one(table, fit, parameters, level) : two(table, fit, parameters, rows, level);
    }

    private static Row row(PlainTable.Row row) {
        long count = row.whole("count", 0, LARGEST_COUNT);
        double exposure = row.needed("exposure");
        if (!row.text("exposure").isEmpty() && !(exposure > 0)) {
            row.problem("exposure", Message.of("estimate.exposure.none"));
        }
        return new Row(count, exposure);
    }

    /** The coefficient of a Poisson model; its standard error is that of log y, 1/√y. */
    private static Parameter logRate(String term, Estimate rate) {
        if (rate.value() == 0) {
            return Parameter.without("rate", term, Parameter.LOG, Parameter.why(rate));
        }
        return Parameter.of(
                "rate", term, Parameter.LOG, rate.on(Math::log), OptionalDouble.of(1 / Math.sqrt((double) rate.n())));
    }

    private static Rates one(PlainTable table, FreeFit fit, List<Parameter> parameters, double level) {
        OptionalDouble none = OptionalDouble.empty();
        return new Rates(
                MethodName.of(Method.GARWOOD),
                Method.GARWOOD.source(),
                1,
                fit.logLikelihood(),
                fit.aic(),
                none,
                parameters,
                none,
                none,
                none,
                none,
                level,
                Optional.of(Message.of("estimate.rate.single")),
                table.warnings());
    }

    private static Rates two(PlainTable table, FreeFit fit, List<Parameter> parameters, List<Row> rows, double level) {
        Row first = rows.get(0);
        Row second = rows.get(1);
        RateComparison comparison = RateComparison.of(first.count, first.exposure, second.count, second.exposure, level)
                .found()
                .orElseThrow();
        Optional<Estimate> ratio = comparison.ratio().found();
        return new Rates(
                MethodName.of(Method.CONDITIONAL_RATE_RATIO),
                Method.CONDITIONAL_RATE_RATIO.source(),
                2,
                fit.logLikelihood(),
                fit.aic(),
                OptionalDouble.empty(),
                parameters,
                ratio.map(found -> Parameter.finite(found.value())).orElse(OptionalDouble.empty()),
                ratio.map(found -> Parameter.finite(found.lower())).orElse(OptionalDouble.empty()),
                ratio.map(found -> Parameter.finite(found.upper())).orElse(OptionalDouble.empty()),
                OptionalDouble.of(comparison.p()),
                level,
                why(comparison.ratio()),
                table.warnings());
    }

    private static Optional<Message> why(Answer<Estimate> ratio) {
        return ratio instanceof Answer.NotEstimable<Estimate> none
                ? Optional.of(CautionMessage.of(none.because()))
                : ratio.found()
                        .flatMap(found -> found.warnings().stream()
                                .map(CautionMessage::of)
                                .findFirst());
    }
}

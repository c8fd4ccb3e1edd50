package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.FreeFit;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.interval.ClopperPearsonInterval;
import org.ouzelbook.stats.estimator.interval.WilsonInterval;
import org.ouzelbook.tracker.domain.Message;

/** Proportions of a table with the columns {@code successes} and {@code trials}, one a row. */
public final class EstimateProportions {
    private static final long LARGEST_COUNT = 1_000_000_000;

    private EstimateProportions() {}

    /**
     * Proportions.
     *
     * @param model how their limits were computed
     * @param source where that was published
     * @param n all trials
     * @param logLikelihood of the single trials, without binomial coefficients
     * @param aic Akaike's criterion
     * @param aicc the same for small samples; empty with too few trials
     * @param parameters each proportion, as it is and as its logit
     * @param exact exact limits of each proportion, for comparison
     * @param level level of all limits
     * @param warnings what else to know
     */
    public record Proportions(
            Message model,
            String source,
            long n,
            double logLikelihood,
            double aic,
            OptionalDouble aicc,
            List<Parameter> parameters,
            List<Exact> exact,
            double level,
            List<Message> warnings)
            implements TableAnswer {}

    /**
     * Clopper and Pearson's exact limits.
     *
     * @param term the row
     * @param lower lower limit
     * @param upper upper limit
     */
    public record Exact(String term, double lower, double upper) {}

    private record Row(long successes, long trials) {}

    /**
     * {@return the proportions of a table}
     *
     * @param file the table
     * @param level level of the limits, between 0 and 1
     * @throws BadTable if the table must be mended first
     */
    public static TableAnswer of(Path file, double level) {
        PlainTable table = PlainTable.read(file, List.of(), List.of("successes", "trials"), List.of());
        List<Row> rows = table.rows().map(EstimateProportions::row).toList();
        if (rows.isEmpty()) {
            table.problem(Message.of("estimate.table.noRows"));
        }
        table.check();
        List<Parameter> parameters = new ArrayList<>();
        List<Exact> exact = new ArrayList<>();
        FreeFit fit = new FreeFit(0, 0);
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            String term = rows.size() == 1 ? Parameter.INTERCEPT : "row=" + (i + 1);
            Estimate wilson =
                    WilsonInterval.of(row.successes, row.trials, level).found().orElseThrow();
            parameters.add(Parameter.of("proportion", term, Parameter.NATURAL, wilson));
            parameters.add(logit(term, wilson));
            Estimate limits = ClopperPearsonInterval.of(row.successes, row.trials, level)
                    .found()
                    .orElseThrow();
            exact.add(new Exact(term, limits.lower(), limits.upper()));
            fit = fit.and(FreeFit.ofTrials(row.successes, row.trials));
        }
        long n = rows.stream().mapToLong(Row::trials).sum();
        double k = fit.parameters();
        double spare = n - k - 1;
        return new Proportions(
                MethodName.of(Method.WILSON),
                Method.WILSON.source(),
                n,
                fit.logLikelihood(),
                fit.aic(),
                spare > 0 ? OptionalDouble.of(fit.aic() + 2 * k * (k + 1) / spare) : OptionalDouble.empty(),
                parameters,
                exact,
                level,
                table.warnings());
    }

    private static Row row(PlainTable.Row row) {
        long trials = row.whole("trials", 1, LARGEST_COUNT);
        long successes = row.whole("successes", 0, LARGEST_COUNT);
        if (successes > trials && !row.text("trials").isEmpty()) {
            row.problem("successes", Message.of("estimate.successes.more", trials));
        }
        return new Row(successes, trials);
    }

    /** The coefficient of a logistic model; its standard error is 1/√(np(1 − p)). */
    private static Parameter logit(String term, Estimate proportion) {
        double p = proportion.value();
        if (p == 0 || p == 1) {
            return Parameter.without("proportion", term, Parameter.LOGIT, Parameter.why(proportion));
        }
        return Parameter.of(
                "proportion",
                term,
                Parameter.LOGIT,
                proportion.on(share -> Math.log(share) - Math.log1p(-share)),
                OptionalDouble.of(1 / Math.sqrt(proportion.n() * p * (1 - p))));
    }
}

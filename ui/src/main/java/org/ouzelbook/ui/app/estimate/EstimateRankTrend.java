package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.trend.RankTrend;
import org.ouzelbook.stats.estimator.trend.RankTrend.Ranks;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.tracker.domain.Message;

/** The trend by ranks of a table with the columns {@code year} and {@code value}; rows without a value are gaps. */
public final class EstimateRankTrend {
    private EstimateRankTrend() {}

    /**
     * A trend by ranks.
     *
     * @param model how it was computed
     * @param source where that was published
     * @param n how many values
     * @param logLikelihood always empty: ranks have no likelihood
     * @param aic always empty
     * @param aicc always empty
     * @param parameters the slope
     * @param s rising pairs less falling pairs
     * @param varS its variance without a trend
     * @param z standardised, with continuity correction
     * @param p two-sided, from the normal law
     * @param exactP two-sided and exact; empty with a warning
     * @param tau Kendall's tau-a
     * @param tauB Kendall's tau-b
     * @param slope Theil–Sen slope a year
     * @param lower its lower limit; empty with {@code why}
     * @param upper its upper limit; empty with {@code why}
     * @param intercept of the line through the medians, at year 0
     * @param level level of the limits
     * @param rankRule where limits stand that fall between two ranks: {@code interpolated} or {@code rounded}
     * @param why why a limit is missing; empty if none is
     * @param warnings what else to know
     */
    public record Ranked(
            Message model,
            String source,
            long n,
            OptionalDouble logLikelihood,
            OptionalDouble aic,
            OptionalDouble aicc,
            List<Parameter> parameters,
            long s,
            double varS,
            double z,
            double p,
            OptionalDouble exactP,
            double tau,
            double tauB,
            double slope,
            OptionalDouble lower,
            OptionalDouble upper,
            double intercept,
            double level,
            String rankRule,
            Optional<Message> why,
            List<Message> warnings)
            implements TableAnswer {}

    private record Point(double year, double value) {}

    /**
     * {@return the trend by ranks of a table, or why it shows none}
     *
     * @param file the table
     * @param level level of the limits, between 0 and 1
     * @param ranks how to read limits between two ranks
     * @throws BadTable if the table must be mended first
     */
    public static TableAnswer of(Path file, double level, Ranks ranks) {
        PlainTable table = PlainTable.read(file, List.of(), List.of("year", "value"), List.of());
        table.needsRows();
        List<Message> warnings = new ArrayList<>(table.warnings());
        List<PlainTable.Row> rows = table.rows().toList();
        List<Point> points = rows.stream()
                .filter(row -> !row.text("value").isEmpty())
                .map(row -> new Point(row.needed("year"), row.needed("value")))
                .toList();
        table.check();
        if (points.size() < rows.size()) {
            warnings.add(Message.of("estimate.rankTrend.gaps", rows.size() - points.size()));
        }
        Answer<RankTrend> answer = RankTrend.of(
                points.stream().mapToDouble(Point::year).toArray(),
                points.stream().mapToDouble(Point::value).toArray(),
                level,
                ranks);
        if (answer instanceof Answer.NotEstimable<RankTrend> none) {
            return NoAnswer.of(Method.KENDALL_THEIL_SEN, points.size(), none.because(), warnings);
        }
        RankTrend trend = answer.found().orElseThrow();
        if (trend.exactP() instanceof Answer.NotEstimable<Double> none) {
            warnings.add(CautionMessage.of(none.because()));
        }
        return ranked(trend, ranks, warnings);
    }

    private static Ranked ranked(RankTrend trend, Ranks ranks, List<Message> warnings) {
        OptionalDouble none = OptionalDouble.empty();
        return new Ranked(
                MethodName.of(trend.slope().method()),
                trend.slope().method().source(),
                trend.n(),
                none,
                none,
                none,
                List.of(Parameter.of("slope", "year", Parameter.NATURAL, trend.slope())),
                trend.s(),
                trend.varS(),
                trend.z(),
                trend.p(),
                trend.exactP().found().map(OptionalDouble::of).orElse(none),
                trend.tau(),
                trend.tauB(),
                trend.slope().value(),
                Parameter.finite(trend.slope().lower()),
                Parameter.finite(trend.slope().upper()),
                trend.intercept(),
                trend.slope().level(),
                ranks.name().toLowerCase(Locale.ROOT),
                trend.slope().warnings().stream().map(CautionMessage::of).findFirst(),
                warnings);
    }
}

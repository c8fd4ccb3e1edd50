package org.ouzelbook.ui.app.estimate;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.exposure.ExposureDays;
import org.ouzelbook.stats.estimator.exposure.LogisticExposure;
import org.ouzelbook.stats.estimator.exposure.WatchedNest;
import org.ouzelbook.stats.estimator.likelihood.Coefficient;
import org.ouzelbook.stats.estimator.likelihood.LikelihoodFit;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.tracker.domain.Message;

/**
 * Daily survival of nests: of a table of intervals with {@code days} and {@code survived}, or of a table of checks with {@code nest},
 * {@code date} and {@code stage}.
 */
public final class EstimateNests {
    private static final int MOST_ROWS_TOLD = 20;

    private EstimateNests() {}

    /**
     * What is asked.
     *
     * @param survivalBy columns that daily survival depends on
     * @param period days of a whole attempt, or of each level of the only covariate; empty if no success is asked for
     * @param lostShare the share of an interval that a nest lost in it counts for in exposure days
     * @param level level of the limits, between 0 and 1
     */
    public record Model(List<String> survivalBy, List<PeriodDays> period, double lostShare, double level) {
        /** {@return the model that options ask for, names with commas between} */
        public static Model of(String survivalBy, String period, double lostShare, double level) {
            return new Model(CovariateColumns.names(survivalBy), PeriodDays.read(period), lostShare, level);
        }
    }

    /**
     * A fitted model.
     *
     * @param model how it was computed
     * @param source where that was published
     * @param n how many intervals
     * @param logLikelihood of the intervals
     * @param aic Akaike's criterion
     * @param aicc the same for small samples; empty with too few intervals
     * @param parameters coefficients, and daily survival by level
     * @param exposureDays all days, those of a lost interval in part
     * @param losses nests lost
     * @param mayfield daily survival from exposure days
     * @param success success of an attempt by the fitted model; empty if no period was told, or with {@code why}
     * @param mayfieldSuccess the same from exposure days; only for a period without levels
     * @param level level of the limits
     * @param warnings what else to know
     */
    public record Nests(
            Message model,
            String source,
            long n,
            double logLikelihood,
            double aic,
            OptionalDouble aicc,
            List<Parameter> parameters,
            double exposureDays,
            long losses,
            Figure mayfield,
            Optional<Figure> success,
            Optional<Figure> mayfieldSuccess,
            double level,
            List<Message> warnings)
            implements TableAnswer {}

    /**
     * A number with its limits.
     *
     * @param estimate the number; empty with {@code why}
     * @param se its standard error
     * @param lower lower limit
     * @param upper upper limit
     * @param why why a number is missing
     */
    public record Figure(
            OptionalDouble estimate,
            OptionalDouble se,
            OptionalDouble lower,
            OptionalDouble upper,
            Optional<Message> why) {
        /** {@return what an answer tells} */
        public static Figure of(Answer<Estimate> answer) {
            if (answer instanceof Answer.NotEstimable<Estimate> not) {
                OptionalDouble none = OptionalDouble.empty();
                return new Figure(none, none, none, none, Optional.of(CautionMessage.of(not.because())));
            }
            Estimate found = answer.found().orElseThrow();
            return new Figure(
                    OptionalDouble.of(found.value()),
                    found.standardError(),
                    OptionalDouble.of(found.lower()),
                    OptionalDouble.of(found.upper()),
                    found.standardError().isPresent() ? Optional.empty() : Optional.of(Parameter.why(found)));
        }
    }

    /**
     * {@return daily survival, or why a table shows none}
     *
     * @param file the table
     * @param model what is asked
     * @throws BadTable if the table must be mended first
     */
    public static TableAnswer of(Path file, Model model) {
        WatchedTable table = WatchedTable.read(file, model.survivalBy());
        Answer<LogisticExposure> answer =
                LogisticExposure.of(table.nests(), table.rows(), table.covariates(), model.level());
        if (answer instanceof Answer.NotEstimable<LogisticExposure> none) {
            return NoAnswer.of(Method.LOGISTIC_EXPOSURE, table.nests().size(), none.because(), table.warnings());
        }
        LogisticExposure found = answer.found().orElseThrow();
        LikelihoodFit fit = found.fit();
        List<Message> warnings = new ArrayList<>(table.warnings());
        fit.cautions().forEach(caution -> warnings.add(CautionMessage.of(caution)));
        Answer<ExposureDays> exposure = ExposureDays.of(
                table.nests().stream().map(WatchedNest::interval).toList(), model.lostShare(), model.level());
        double days = exposure(table.nests(), model.lostShare());
        long losses = table.nests().stream().filter(nest -> !nest.survived()).count();
        if (losses > 0 && losses < 10) {
            warnings.add(Message.of("estimate.nests.fewLosses", losses));
        }
        return new Nests(
                MethodName.of(Method.LOGISTIC_EXPOSURE),
                Method.LOGISTIC_EXPOSURE.source(),
                fit.n(),
                fit.logLikelihood(),
                fit.aic(),
                fit.aicc(),
                parameters(found, model.level()),
                days,
                losses,
                Figure.of(PeriodDays.map(exposure, ExposureDays::dailySurvival)),
                PeriodDays.success(found, table, model).map(Figure::of),
                PeriodDays.whole(model.period())
                        .map(period -> Figure.of(PeriodDays.map(exposure, one -> one.success(period)))),
                model.level(),
                warnings);
    }

    private static double exposure(List<WatchedNest> nests, double lostShare) {
        return nests.stream()
                .mapToDouble(nest -> nest.interval().days() * (nest.survived() ? 1 : lostShare))
                .sum();
    }

    private static List<Parameter> parameters(LogisticExposure found, double level) {
        List<Parameter> parameters = new ArrayList<>();
        found.fit().coefficients(level).forEach(one -> parameters.add(Parameter.of(one, Parameter.LOGIT)));
        List<Coefficient> daily = found.dailySurvival();
        if (daily.size() <= MOST_ROWS_TOLD) {
            daily.forEach(one -> parameters.add(Parameter.of(one, Parameter.NATURAL)));
        }
        return parameters;
    }
}

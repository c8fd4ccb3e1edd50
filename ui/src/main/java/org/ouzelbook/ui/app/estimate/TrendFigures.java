package org.ouzelbook.ui.app.estimate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.trend.SeasonTotal;
import org.ouzelbook.stats.estimator.trend.TrendFit;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.tracker.domain.Message;

/** What the answers of all shapes of a trend have in common. */
public final class TrendFigures {
    private TrendFigures() {}

    /**
     * A change in percent.
     *
     * @param percent −5 is a fall by 5 %
     * @param lower lower limit
     * @param upper upper limit; empty if it lies more than a hundredfold away
     * @param why why there is no upper limit; empty if there is one
     */
    public record Percent(double percent, double lower, OptionalDouble upper, Optional<Message> why) {
        static Percent of(Estimate change) {
            OptionalDouble upper = Parameter.finite(change.upper());
            return new Percent(change.value(), change.lower(), upper, noUpperLimit(upper));
        }
    }

    private static Optional<Message> noUpperLimit(OptionalDouble upper) {
        return upper.isPresent() ? Optional.empty() : Optional.of(CautionMessage.of(Caution.of(Reason.NO_UPPER_LIMIT)));
    }

    /**
     * All sites of a season together.
     *
     * @param season the calendar year
     * @param total expected by the model
     * @param se its standard error; empty in a season of zeros
     * @param lower lower limit
     * @param upper upper limit; empty if it lies more than a hundredfold away
     * @param filled what was counted, with the model’s expectation where nobody did
     * @param observed what was counted
     * @param counted how many sites were counted
     * @param why why there is no upper limit; empty if there is one
     */
    public record Total(
            int season,
            double total,
            OptionalDouble se,
            double lower,
            OptionalDouble upper,
            double filled,
            long observed,
            int counted,
            Optional<Message> why) {
        static Total of(SeasonTotal total) {
            Estimate expected = total.expected();
            return new Total(
                    total.season(),
                    expected.value(),
                    expected.standardError(),
                    expected.lower(),
                    Parameter.finite(expected.upper()),
                    total.filled(),
                    total.observed(),
                    total.counted(),
                    noUpperLimit(Parameter.finite(expected.upper())));
        }
    }

    static List<Parameter> spread(TrendFit fit) {
        List<Parameter> spread = new ArrayList<>();
        dispersion(fit).ifPresent(spread::add);
        fit.negativeBinomial().ifPresent(share -> spread.add(withoutLimits("negative binomial", share)));
        fit.serialCorrelation().ifPresent(correlation -> spread.add(withoutLimits("serial correlation", correlation)));
        return spread;
    }

    private static Optional<Parameter> dispersion(TrendFit fit) {
        return fit.dispersion().isEmpty()
                ? Optional.empty()
                : Optional.of(withoutLimits("dispersion", fit.dispersion().getAsDouble()));
    }

    private static Parameter withoutLimits(String part, double value) {
        OptionalDouble none = OptionalDouble.empty();
        return new Parameter(
                part,
                Parameter.INTERCEPT,
                Parameter.NATURAL,
                OptionalDouble.of(value),
                none,
                none,
                none,
                false,
                Optional.of(Message.of("estimate.trend.withoutLimits")));
    }

    static NoAnswer refused(CountTable table, Caution because) {
        long counted = table.counts().stream()
                .filter(count -> count.count().isPresent())
                .count();
        return NoAnswer.of(Method.LOG_LINEAR_POISSON, counted, because, table.warnings());
    }

    static List<Message> warnings(CountTable table, List<Caution> cautions) {
        return Stream.concat(table.warnings().stream(), cautions.stream().map(CautionMessage::of))
                .toList();
    }
}

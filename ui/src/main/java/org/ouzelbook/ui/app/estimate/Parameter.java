package org.ouzelbook.ui.app.estimate;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.DoubleStream;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.likelihood.Coefficient;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.tracker.domain.Message;

/**
 * One parameter of a model, as the JSON names its parts.
 *
 * @param part what it belongs to, such as {@code rate} or {@code slope}
 * @param term {@code intercept}, a column, or {@code column=value}
 * @param scale {@code natural}, {@code log} or {@code logit}
 * @param estimate its value; empty where it is infinite
 * @param se its standard error; empty where it has none
 * @param lower lower limit; empty where there is none
 * @param upper upper limit; empty where there is none
 * @param boundary whether the estimate lies at the end of its range
 * @param why why a number is missing; empty where none is
 */
public record Parameter(
        String part,
        String term,
        String scale,
        OptionalDouble estimate,
        OptionalDouble se,
        OptionalDouble lower,
        OptionalDouble upper,
        boolean boundary,
        Optional<Message> why) {
    static final String INTERCEPT = "intercept";
    static final String NATURAL = "natural";
    static final String LOG = "log";
    static final String LOGIT = "logit";

    private static final Set<Reason> AT_THE_END =
            Set.of(Reason.AT_BOUNDARY, Reason.FIRST_COUNT_ZERO, Reason.SECOND_COUNT_ZERO);
    private static final Set<Reason> TELL_WHAT_IS_MISSING =
            Set.of(Reason.AT_BOUNDARY, Reason.FIRST_COUNT_ZERO, Reason.SECOND_COUNT_ZERO, Reason.SLOPE_LIMIT_OPEN);

    static Parameter of(String part, String term, String scale, Estimate found) {
        return of(part, term, scale, found, found.standardError());
    }

    static Parameter of(String part, String term, String scale, Estimate found, OptionalDouble error) {
        boolean complete = error.isPresent()
                && DoubleStream.of(found.value(), found.lower(), found.upper()).allMatch(Double::isFinite);
        return new Parameter(
                part,
                term,
                scale,
                finite(found.value()),
                error,
                finite(found.lower()),
                finite(found.upper()),
                found.warnings().stream().map(Caution::reason).anyMatch(AT_THE_END::contains),
                complete ? Optional.empty() : Optional.of(why(found)));
    }

    /** {@return a fitted coefficient or probability} */
    static Parameter of(Coefficient coefficient, String scale) {
        if (coefficient.estimate() instanceof Answer.NotEstimable<Estimate> not) {
            OptionalDouble none = OptionalDouble.empty();
            return new Parameter(
                    coefficient.part(),
                    coefficient.term(),
                    scale,
                    none,
                    none,
                    none,
                    none,
                    false,
                    Optional.of(CautionMessage.of(not.because())));
        }
        return of(
                coefficient.part(),
                coefficient.term(),
                scale,
                coefficient.estimate().found().orElseThrow());
    }

    /** {@return why an estimate lacks a number} */
    static Message why(Estimate found) {
        return found.warnings().stream()
                .filter(caution -> TELL_WHAT_IS_MISSING.contains(caution.reason()))
                .map(CautionMessage::of)
                .findFirst()
                .orElse(Message.of("estimate.noStandardError"));
    }

    /** {@return a parameter without a number} */
    static Parameter without(String part, String term, String scale, Message why) {
        OptionalDouble none = OptionalDouble.empty();
        return new Parameter(part, term, scale, none, none, none, none, true, Optional.of(why));
    }

    /** {@return the number, or nothing where it is infinite} */
    static OptionalDouble finite(double number) {
        return Double.isFinite(number) ? OptionalDouble.of(number) : OptionalDouble.empty();
    }
}

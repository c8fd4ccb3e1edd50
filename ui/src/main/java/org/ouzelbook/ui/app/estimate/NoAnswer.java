package org.ouzelbook.ui.app.estimate;

import java.util.List;
import java.util.OptionalDouble;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.stats.survey.CautionMessage;
import org.ouzelbook.tracker.domain.Message;

/**
 * That a table does not carry the answer that was asked for.
 *
 * @param model what was tried
 * @param source where that was published
 * @param n how many values the table has
 * @param logLikelihood always empty
 * @param aic always empty
 * @param aicc always empty
 * @param parameters none
 * @param why the reason
 * @param warnings what else to know
 */
public record NoAnswer(
        Message model,
        String source,
        long n,
        OptionalDouble logLikelihood,
        OptionalDouble aic,
        OptionalDouble aicc,
        List<Parameter> parameters,
        Message why,
        List<Message> warnings)
        implements TableAnswer {
    static NoAnswer of(Method method, long n, Caution because, List<Message> warnings) {
        OptionalDouble none = OptionalDouble.empty();
        return new NoAnswer(
                MethodName.of(method),
                method.source(),
                n,
                none,
                none,
                none,
                List.of(),
                CautionMessage.of(because),
                List.copyOf(warnings));
    }
}

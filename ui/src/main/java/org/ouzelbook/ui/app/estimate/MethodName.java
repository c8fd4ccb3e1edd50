package org.ouzelbook.ui.app.estimate;

import java.util.List;
import org.ouzelbook.stats.estimator.Method;
import org.ouzelbook.tracker.domain.Message;

/** What a method is called. */
final class MethodName {
    private MethodName() {}

    static Message of(Method method) {
        return new Message("term.Method." + method.name(), List.of());
    }
}

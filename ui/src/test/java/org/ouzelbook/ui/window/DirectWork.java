package org.ouzelbook.ui.window;

import java.util.function.Consumer;
import java.util.function.Function;
import org.ouzelbook.tracker.domain.Progress;

/** Does the work at once, on the same thread. */
final class DirectWork implements Work {
    @Override
    public <T> void start(String what, Function<Progress, T> job, Consumer<T> done, Consumer<Throwable> failed) {
        T result;
        try {
            result = job.apply(Progress.NONE);
        } catch (RuntimeException e) {
            failed.accept(e);
            return;
        }
        done.accept(result);
    }
}

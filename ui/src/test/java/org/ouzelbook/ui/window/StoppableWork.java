package org.ouzelbook.ui.window;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import org.ouzelbook.tracker.domain.Progress;

/** Does the work at once, hears how far it is, and asks it to stop after it has told so a number of times. */
final class StoppableWork implements Work {
    private final List<Double> shares = new ArrayList<>();
    private long patience;

    StoppableWork(long patience) {
        this.patience = patience;
    }

    /** Begins to count anew. */
    void stopAfter(long times) {
        patience = times;
        shares.clear();
    }

    /** {@return the shares that were told, in their order} */
    List<Double> shares() {
        return shares;
    }

    @Override
    public <T> void start(String what, Function<Progress, T> job, Consumer<T> done, Consumer<Throwable> failed) {
        T result;
        try {
            result = job.apply((part, whole) -> {
                if (whole > 0) {
                    shares.add((double) part / whole);
                }
                return patience-- > 0;
            });
        } catch (RuntimeException e) {
            failed.accept(e);
            return;
        }
        done.accept(result);
    }
}

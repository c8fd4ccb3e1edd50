package org.ouzelbook.ui.window;

import java.util.function.Consumer;
import java.util.function.Function;
import org.ouzelbook.tracker.domain.Progress;

/** Does long work without keeping the window waiting. */
interface Work {
    /**
     * Starts a piece of work; pieces are done one after another, in the order in which they were started.
     *
     * @param what what is done, in words; blank for what is too short to be told of
     * @param job the work
     * @param done hears the result, on the window's thread
     * @param failed hears the failure, on the window's thread
     * @param <T> the result
     */
    <T> void start(String what, Function<Progress, T> job, Consumer<T> done, Consumer<Throwable> failed);
}

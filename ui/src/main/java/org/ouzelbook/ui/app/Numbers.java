package org.ouzelbook.ui.app;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/** Numbers of an answer that may have none. */
final class Numbers {
    private Numbers() {}

    /**
     * {@return a number of a finding; empty where there is no finding, or a limit is open}
     *
     * @param finding a finding
     * @param number which of its numbers
     */
    static <T> OptionalDouble of(Optional<T> finding, ToDoubleFunction<T> number) {
        return finding.stream().mapToDouble(number).filter(Double::isFinite).findFirst();
    }
}

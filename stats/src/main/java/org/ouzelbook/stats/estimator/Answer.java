package org.ouzelbook.stats.estimator;

import java.util.Optional;
import java.util.function.Function;

/**
 * What an estimator answers: the finding, or the reason why the data carry none. Thin data are no error.
 *
 * @param <T> what is found
 */
public sealed interface Answer<T> permits Answer.Found, Answer.NotEstimable {
    /** {@return the finding, or nothing} */
    Optional<T> found();

    /**
     * {@return what follows from the finding, or why there is none}
     *
     * @param <R> what follows
     * @param following from a finding to what follows from it
     */
    <R> Answer<R> map(Function<? super T, ? extends R> following);

    /**
     * {@return the answer that holds this finding}
     *
     * @param <T> what is found
     * @param finding the finding
     */
    static <T> Answer<T> of(T finding) {
        return new Found<>(finding);
    }

    /**
     * {@return the answer that the data carry no finding}
     *
     * @param <T> what was asked for
     * @param reason why not
     * @param facts what fills the reason's text
     */
    static <T> Answer<T> notEstimable(Reason reason, Object... facts) {
        return new NotEstimable<>(Caution.of(reason, facts));
    }

    /**
     * A finding.
     *
     * @param <T> what is found
     * @param finding the finding
     */
    record Found<T>(T finding) implements Answer<T> {
        @Override
        public Optional<T> found() {
            return Optional.of(finding);
        }

        @Override
        public <R> Answer<R> map(Function<? super T, ? extends R> following) {
            return new Found<>(following.apply(finding));
        }
    }

    /**
     * No finding.
     *
     * @param <T> what was asked for
     * @param because why the data do not carry it
     */
    record NotEstimable<T>(Caution because) implements Answer<T> {
        @Override
        public Optional<T> found() {
            return Optional.empty();
        }

        @Override
        public <R> Answer<R> map(Function<? super T, ? extends R> following) {
            return new NotEstimable<>(because);
        }
    }
}

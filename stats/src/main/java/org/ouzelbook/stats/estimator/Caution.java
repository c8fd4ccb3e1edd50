package org.ouzelbook.stats.estimator;

import java.util.List;

/**
 * Something that a reader of an answer must know, without the words.
 *
 * @param reason what it is
 * @param facts numbers, names or lists of them, in the order in which {@link Reason} gives them
 */
public record Caution(Reason reason, List<Object> facts) {
    /** Copies the facts. */
    public Caution {
        facts = List.copyOf(facts);
    }

    /**
     * {@return the caution with these facts}
     *
     * @param reason what it is
     * @param facts what fills its text
     */
    public static Caution of(Reason reason, Object... facts) {
        return new Caution(reason, List.of(facts));
    }
}

package org.ouzelbook.tracker.store;

import java.util.Locale;
import java.util.Optional;

/** What a person can answer to a {@link MergeQuestion}. */
public enum MergeAnswer {
    /** It stays as this book has it. */
    MINE,
    /** It becomes as the other book has it. */
    THEIRS,
    /** Both stand: they are two things. */
    BOTH,
    /** The two are one. */
    SAME,
    /** The two are not one. */
    DIFFERENT;

    /** {@return the word by which people and scripts give it} */
    public String written() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * {@return the answer with this word; empty if it is none}
     *
     * @param word a word, in any case
     */
    public static Optional<MergeAnswer> of(String word) {
        for (MergeAnswer answer : values()) {
            if (answer.written().equals(word.strip().toLowerCase(Locale.ROOT))) {
                return Optional.of(answer);
            }
        }
        return Optional.empty();
    }
}

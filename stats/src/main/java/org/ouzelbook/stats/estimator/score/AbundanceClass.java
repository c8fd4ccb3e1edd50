package org.ouzelbook.stats.estimator.score;

import java.util.Optional;

/**
 * How many animals of a group were in a sample, to the power of ten.
 *
 * <p>Source: River Habitat Survey manual, Environment Agency, appendix of biological indices; there D ends at 9,999 and E
 * follows, which sheets in the field put together.
 */
public enum AbundanceClass {
    /** 1 to 9. */
    A(1),
    /** 10 to 99. */
    B(2),
    /** 100 to 999. */
    C(3),
    /** 1,000 or more. */
    D(4);

    private final int rank;

    AbundanceClass(int rank) {
        this.rank = rank;
    }

    /**
     * {@return the class of a count}
     *
     * @param count how many; 1 or more
     * @throws IllegalArgumentException if it is not positive
     */
    public static AbundanceClass of(long count) {
        if (count < 1) {
            throw new IllegalArgumentException("An abundance is 1 or more, but was " + count);
        }
        return count < 10 ? A : count < 100 ? B : count < 1000 ? C : D;
    }

    /**
     * {@return the class that a letter means, in either case; empty if none}
     *
     * @param letter what is written
     */
    static Optional<AbundanceClass> named(String letter) {
        for (AbundanceClass one : values()) {
            if (one.name().equalsIgnoreCase(letter)) {
                return Optional.of(one);
            }
        }
        return Optional.empty();
    }

    /** {@return 1 for A to 4 for D} */
    public int rank() {
        return rank;
    }
}

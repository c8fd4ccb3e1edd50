package org.ouzelbook.stats.estimator.markresight;

import java.util.List;

/**
 * How many animals were released on each occasion, and when they were first seen again: all that histories say of survival and
 * resighting when both depend only on the occasion. Occasions are counted from 0.
 *
 * <p>Source: K. P. Burnham and others (1987), Design and analysis methods for fish survival experiments based on
 * release–recapture, American Fisheries Society Monograph 5.
 */
public final class MArray {
    private final long[][] seenNext;
    private final long[] released;

    private MArray(long[][] seenNext, long[] released) {
        this.seenNext = seenNext;
        this.released = released;
    }

    /**
     * {@return the array of some histories}
     *
     * @param occasions how many occasions
     * @param histories histories of so many occasions
     * @throws IllegalArgumentException if a history has another number of occasions
     */
    public static MArray of(int occasions, List<EncounterHistory> histories) {
        long[][] seenNext = new long[occasions][occasions];
        long[] released = new long[occasions];
        for (EncounterHistory history : histories) {
            if (history.occasions() != occasions) {
                throw new IllegalArgumentException(
                        "A history has " + history.occasions() + " occasions, others " + occasions);
            }
            int at = history.first();
            while (at < occasions) {
                int next = history.next(at);
                released[at] += history.count();
                if (next < occasions) {
                    seenNext[at][next] += history.count();
                }
                at = next;
            }
        }
        return new MArray(seenNext, released);
    }

    /** {@return the number of occasions} */
    public int occasions() {
        return released.length;
    }

    /** {@return how many were released on an occasion, newly marked or met again} */
    public long released(int occasion) {
        return released[occasion];
    }

    /** {@return how many of those released on one occasion were first seen again on another} */
    public long seenNext(int release, int occasion) {
        return seenNext[release][occasion];
    }

    /** {@return how many of those released on an occasion were never seen again} */
    public long never(int release) {
        long seen = 0;
        for (long number : seenNext[release]) {
            seen += number;
        }
        return released[release] - seen;
    }

    /** {@return all releases that could be followed, so without those of the last occasion} */
    public long releases() {
        long all = 0;
        for (int occasion = 0; occasion < occasions() - 1; occasion++) {
            all += released[occasion];
        }
        return all;
    }

    /** {@return all that were seen again} */
    public long seenAgain() {
        long all = 0;
        for (int occasion = 0; occasion < occasions() - 1; occasion++) {
            all += released[occasion] - never(occasion);
        }
        return all;
    }

    /**
     * {@return the highest log-likelihood that any model can reach: each row a multinomial law of its own, without the
     * coefficients that no parameter enters}
     */
    public double saturatedLogLikelihood() {
        double sum = 0;
        for (int release = 0; release < occasions() - 1; release++) {
            for (int next = release + 1; next < occasions(); next++) {
                sum += share(seenNext[release][next], released[release]);
            }
            sum += share(never(release), released[release]);
        }
        return sum;
    }

    private static double share(long some, long all) {
        double number = some;
        return some == 0 ? 0 : number * Math.log(number / all);
    }
}

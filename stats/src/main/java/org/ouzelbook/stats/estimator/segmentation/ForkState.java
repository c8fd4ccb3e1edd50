package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.List;

/**
 * What meets at a confluence: each arm ends there with a territory or with a vacant cell, but for at most two through which one
 * territory reaches.
 *
 * <p>How probable it is before any record: the water goes on through two of the arms as through any place of a line, and the
 * others end there as a line does; each two arms are as likely to be those. So a territory reaches across as probably as across
 * any place of a line, and each two of three arms are as likely to be the ones that it holds.
 */
final class ForkState {
    enum End {
        TERRITORY,
        VACANT,
        CROSSING
    }

    private final Fork fork;
    private final List<End> ends;

    /** The arms through which a territory reaches; −1 for none. */
    final int first;

    final int second;

    private ForkState(Fork fork, List<End> ends) {
        this.fork = fork;
        this.ends = List.copyOf(ends);
        this.first = ends.indexOf(End.CROSSING);
        this.second = ends.lastIndexOf(End.CROSSING);
    }

    /** Everything that can meet there. */
    static List<ForkState> all(Fork fork) {
        List<ForkState> all = new ArrayList<>();
        grow(fork, new ArrayList<>(), 0, all);
        return List.copyOf(all);
    }

    private static void grow(Fork fork, List<End> ends, int crossing, List<ForkState> all) {
        if (ends.size() == fork.arms.size()) {
            if (crossing != 1) {
                all.add(new ForkState(fork, ends));
            }
            return;
        }
        for (End end : End.values()) {
            int more = crossing + (end == End.CROSSING ? 1 : 0);
            if (more <= 2) {
                ends.add(end);
                grow(fork, ends, more, all);
                ends.remove(ends.size() - 1);
            }
        }
    }

    End end(int arm) {
        return ends.get(arm);
    }

    boolean isCrossed() {
        return first >= 0;
    }

    boolean isCrossedBy(int one, int other) {
        return first == one && second == other;
    }

    /** Whether the lower arm of the line takes part in a territory that reaches through. */
    boolean isCrossedFromBelow() {
        return fork.hasBelow && first == 0;
    }

    /**
     * The logarithm of its weight, without what lies on the arms. For arms that go up it is the beginning of what lies on them,
     * for the lower arm of the line it goes on from what lies there.
     *
     * @param steps the probabilities of the steps of a line
     * @param starts for each crossing of the fork, the logarithm of the probability that a territory begins at a given border
     *     of it
     */
    double log(Steps steps, double[] starts) {
        int arms = ends.size();
        double log = Double.NEGATIVE_INFINITY;
        for (int one = 0; one < arms; one++) {
            for (int other = one + 1; other < arms; other++) {
                if (!isCrossed() || isCrossedBy(one, other)) {
                    log = LogSum.of(log, through(one, other, steps, starts));
                }
            }
        }
        log -= Math.log(arms * (arms - 1) / 2.0);
        for (int one = 0; one < arms; one++) {
            for (int other = one + 1; other < arms; other++) {
                log += isLimit(one, other) ? fork.limit(one, other) : 0;
            }
        }
        return log;
    }

    private boolean isLimit(int one, int other) {
        return end(one) != end(other) || end(one) == End.TERRITORY;
    }

    /** If the water goes on through two arms. */
    private double through(int one, int other, Steps steps, double[] starts) {
        boolean fromBelow = fork.hasBelow && one == 0;
        double log = 0;
        if (!fromBelow) {
            log += starts[crossing(one, other)];
        }
        if (!isCrossed()) {
            log += fromBelow ? steps.next(end(one), end(other)) : steps.standing(end(one), end(other));
        }
        for (int arm = fork.hasBelow ? 1 : 0; arm < ends.size(); arm++) {
            if (arm != one && arm != other) {
                log += steps.next(End.TERRITORY, end(arm));
            }
        }
        return log;
    }

    private int crossing(int one, int other) {
        for (int i = 0; i < fork.crossings.size(); i++) {
            if (fork.crossings.get(i).first == one && fork.crossings.get(i).second == other) {
                return i;
            }
        }
        throw new IllegalArgumentException("No way through arms " + one + " and " + other);
    }

    /** The logarithms of the probabilities of the steps of a line. */
    record Steps(double abut, double part, double endVacant, double stayVacant) {
        static Steps of(Nature nature, Cells cells) {
            double end = Recursion.endOfVacancy(nature, cells);
            return new Steps(
                    Math.log(nature.abutting()), Math.log1p(-nature.abutting()), Math.log(end), Math.log1p(-end));
        }

        /** From a territory or a vacant cell to the next. */
        double next(End from, End to) {
            if (from == End.TERRITORY) {
                return to == End.TERRITORY ? abut : part;
            }
            return to == End.TERRITORY ? endVacant : stayVacant;
        }

        /** What lies on both sides of a border far from any end, in units of the probability that a territory begins there. */
        double standing(End one, End other) {
            if (one == End.VACANT && other == End.VACANT) {
                return part + stayVacant - endVacant;
            }
            return one == other ? abut : part;
        }

        /**
         * The logarithm of the probability that a territory begins at a given border far from any end: one over the mean
         * distance of two beginnings.
         *
         * @param logLengths the law of lengths
         * @param lineEnds whether a line ends here from below: so among the maps of which none has a territory across the border
         */
        double start(double[] logLengths, boolean lineEnds) {
            double mean = 1;
            for (int n = 0; n < logLengths.length && !lineEnds; n++) {
                mean += (n - 1) * Math.exp(logLengths[n]);
            }
            return -Math.log(mean + Math.exp(part - endVacant));
        }
    }
}

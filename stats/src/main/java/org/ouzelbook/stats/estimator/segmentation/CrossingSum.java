package org.ouzelbook.stats.estimator.segmentation;

import java.util.List;
import java.util.stream.IntStream;

/** The territories that bend around a confluence from one arm into another, under one nature. */
final class CrossingSum {
    private static final double NONE = Double.NEGATIVE_INFINITY;

    final Crossing crossing;
    final double[] lengths;
    private final double[][] ratio;
    private final Summing summing;

    private CrossingSum(Crossing crossing, double[] lengths, double[][] ratio, Summing summing) {
        this.crossing = crossing;
        this.lengths = lengths;
        this.ratio = ratio;
        this.summing = summing;
    }

    /** {@return the territories under each of several natures} */
    static List<CrossingSum> of(Crossing crossing, List<Nature> natures) {
        List<double[][]> ratios = Recursion.ratios(crossing.cells, natures);
        return IntStream.range(0, natures.size())
                .mapToObj(n -> new CrossingSum(
                        crossing, LengthLaw.of(natures.get(n), crossing.cells), ratios.get(n), Summing.ALL))
                .toList();
    }

    /** The same, for the most probable map. */
    CrossingSum best() {
        return new CrossingSum(crossing, lengths, ratio, Summing.BEST);
    }

    int first() {
        return crossing.first;
    }

    int second() {
        return crossing.second;
    }

    /** The most cells of the first arm that a territory can have. */
    int reach() {
        return Math.min(crossing.one.reach(), crossing.cells.longest - 1);
    }

    /** The most cells of the second arm, with so many of the first. */
    int reachBeyond(int onFirst) {
        return Math.min(crossing.other.reach(), crossing.cells.longest - onFirst);
    }

    /** Weight of a territory with so many cells of either arm; both 1 or more. */
    double log(int onFirst, int onSecond) {
        int length = onFirst + onSecond;
        return length < crossing.cells.shortest
                ? NONE
                : lengths[length] + ratio[crossing.one.reach() - onFirst][length];
    }

    /** Weight of all territories with so many cells of the first arm, with what lies beyond them on the second. */
    double from(int onFirst, double[] beyondSecond) {
        return summing.of(reachBeyond(onFirst), i -> log(onFirst, i + 1) + beyondSecond[i + 1]);
    }

    /** Weight of all territories with so many cells of the second arm, with what lies beyond them on the first. */
    double into(int onSecond, double[] beyondFirst) {
        return summing.of(
                reach(),
                i -> i + 1 + onSecond > crossing.cells.longest ? NONE : log(i + 1, onSecond) + beyondFirst[i + 1]);
    }
}

package org.ouzelbook.stats.estimator.segmentation;

import java.util.Arrays;

/** The sums of {@link StretchWeights} for one nature in logarithms, where they are too large or too small for numbers. */
final class StretchLogarithms {
    private final StretchLanes stretch;
    private final Cells cells;

    StretchLogarithms(StretchLanes stretch) {
        this.stretch = stretch;
        this.cells = stretch.cells;
    }

    /**
     * The logarithms of the sums over focal places, by how many visits found the pair.
     *
     * @param nature which of the natures
     */
    double[] sums(int nature) {
        double[] all = new double[stretch.told + 1];
        Arrays.fill(all, Double.NEGATIVE_INFINITY);
        double[] logWithLast = new double[cells.position.length];
        for (int lane = nature; lane < stretch.size; lane += stretch.of.natures) {
            double[] one = ofLane(lane, logWithLast);
            for (int i = 0; i < all.length; i++) {
                all[i] = LogSum.of(all[i], one[i]);
            }
        }
        return all;
    }

    private double[] ofLane(int lane, double[] logWithLast) {
        double logUnnoted = Math.log(stretch.of.unnoted[lane]);
        double[] logMet = new double[cells.covered.length];
        double[] log = new double[stretch.told + 1];
        Arrays.fill(log, Double.NEGATIVE_INFINITY);
        log[0] = 0;
        for (int i = stretch.first; i < stretch.last; i++) {
            int v = cells.visit[i];
            double weight = stretch.weight(i, lane);
            double before = v < 0 ? log[0] : logMet[v];
            double sets = cells.atOnce.concerns(i)
                    ? addsNoted(i, before, weight, logUnnoted, logWithLast)
                    : before + Math.log1p(weight);
            if (v < 0) {
                log[0] = sets;
            } else {
                logMet[v] = sets;
            }
        }
        for (int t = 0; t < stretch.told; t++) {
            int v = stretch.telling[t];
            double seen = stretch.seen(v, lane);
            double met = logMet[v] > 30 ? logMet[v] : Math.log(Math.expm1(logMet[v]));
            double one = LogSum.of(Math.log1p(-seen), Math.log(seen * stretch.of.perFound[lane]) + met);
            for (int i = t; i >= 0; i--) {
                log[i + 1] = LogSum.of(log[i + 1], one + log[i]);
            }
        }
        return log;
    }

    /** To the sum over sets of registrations below, that of the sets with this one; see {@link NotedSets}. */
    private double addsNoted(int i, double logSets, double weight, double logUnnoted, double[] logWithLast) {
        double others = logSets;
        for (int other : cells.atOnce.notedBelow(i)) {
            if (other >= stretch.first) {
                others = Math.max(0, others + Math.log1p(-Math.min(1, Math.exp(logWithLast[other] - others))));
            }
        }
        int next = cells.atOnce.unnotedBelow(i);
        others = next >= stretch.first ? LogSum.of(others, logUnnoted + logWithLast[next]) : others;
        logWithLast[i] = Math.log(weight) + others;
        return LogSum.of(logSets, logWithLast[i]);
    }
}

package org.ouzelbook.stats.estimator.segmentation;

import java.util.Arrays;
import java.util.List;

/**
 * One stretch at a time, as each focal place and nature has it: which visits tell something of it, what share of a pair's use of
 * it they covered, and how dense a pair's registrations are. In the lanes of {@link NatureLanes}, so that loops over them are
 * plain: nothing in them is shifted, and nothing is asked.
 */
final class StretchLanes {
    /** A visit that covered anything covered no less of the use. */
    private static final double LEAST_SHARE = 1e-9;

    final Cells cells;
    final NatureLanes of;

    /** How many lanes the stretch has. */
    int size;

    /** How many focal places. */
    int foci;

    /** The first registration in it, and the one after the last. */
    int first;

    int last;

    /** How many visits covered any of it. */
    int there;

    /** Those that met anything or did not cover all of it; the others all say the same. */
    final int[] telling;

    /** How many these are. */
    int told;

    /** Whether a visit covered all of it. */
    final boolean[] full;

    /** The density of registrations that lie anywhere, over that of strays. */
    double[] even;

    /** Over what of the normal law lies in the stretch. */
    double[] scale;

    /** For each visit that did not cover all of it: the share of the use that it covered, and its inverse. */
    final double[][] share;

    final double[][] inverseShare;

    /** No share of a visit is smaller in any lane. */
    private final double[] leastSeen;

    /** The lowest visit that covered the same water: its shares are those of all of them. */
    private final int[] twin;

    private final int[] metBy;

    /** For each registration, the lanes of {@link NatureLanes#near} from a focal place on, and which that is. */
    private final double[][] near;

    private final int[] nearFrom;
    private int lowest;
    private int from;
    private int to;

    StretchLanes(Cells cells, List<Nature> natures) {
        this.cells = cells;
        of = new NatureLanes(cells, natures);
        int visits = cells.covered.length;
        telling = new int[visits];
        full = new boolean[visits];
        metBy = new int[visits];
        leastSeen = new double[visits];
        twin = new int[visits];
        share = new double[visits][];
        inverseShare = new double[visits][];
        for (int v = 0; v < visits; v++) {
            while (!Arrays.equals(cells.walked[twin[v]], cells.walked[v])) {
                twin[v]++;
            }
            share[v] = twin[v] < v ? share[twin[v]] : new double[of.lanes];
            inverseShare[v] = twin[v] < v ? inverseShare[twin[v]] : new double[of.lanes];
        }
        near = new double[cells.position.length][of.lanes];
        nearFrom = new int[near.length];
        Arrays.fill(nearFrom, -1);
        even = new double[0];
        scale = even;
    }

    /**
     * Goes to a stretch; false where no territory can be.
     *
     * @param lower its lower border
     * @param upper its upper border
     */
    boolean goTo(int lower, int upper) {
        if (cells.barred[upper] > cells.barred[lower]) {
            return false;
        }
        from = lower;
        to = upper;
        first = cells.below[from];
        last = cells.below[to];
        countVisits();
        if (tells()) {
            lowest = of.lowest(from);
            foci = of.foci(from, to);
            size = foci * of.natures;
            even = of.even(to - from);
            scale = of.scale(from, to);
            for (int t = 0; t < told; t++) {
                int v = telling[t];
                int seen = cells.covered[v][to] - cells.covered[v][from];
                full[v] = seen == to - from;
                leastSeen[v] = full[v] ? 1 : Math.max(LEAST_SHARE, of.leastEvenUse * seen / (to - from));
                // A twin that was there is telling, too, and was looked at before.
                if (!full[v] && twin[v] == v) {
                    share(v);
                }
            }
        }
        return true;
    }

    private void countVisits() {
        Arrays.fill(metBy, 0);
        for (int i = first; i < last; i++) {
            if (cells.visit[i] >= 0) {
                metBy[cells.visit[i]]++;
            }
        }
        there = 0;
        told = 0;
        for (int v = 0; v < metBy.length; v++) {
            int seen = cells.covered[v][to] - cells.covered[v][from];
            if (seen > 0) {
                there++;
                if (metBy[v] > 0 || seen < to - from) {
                    telling[told++] = v;
                }
            }
        }
    }

    /** Whether anything but the finding of pairs matters to the stretch. */
    boolean tells() {
        return told > 0 || first < last;
    }

    /** Whether it holds one of some registrations below another that it holds. */
    boolean holdsAny(int[] below) {
        for (int i : below) {
            if (i >= first) {
                return true;
            }
        }
        return false;
    }

    /** The share of a pair's use of the stretch that a visit covered. */
    private void share(int v) {
        double[] seen = share[v];
        double[] inverse = inverseShare[v];
        int covered = 0;
        Arrays.fill(seen, 0, size, 0);
        int[] walked = cells.walked[v];
        for (int i = 0; i < walked.length; i += 2) {
            int start = Math.max(from, walked[i]);
            int end = Math.min(to, walked[i + 1]);
            if (start < end) {
                covered += end - start;
                of.addBetween(start, end, lowest, size, seen);
            }
        }
        int length = to - from;
        for (int lane = 0; lane < size; lane++) {
            double all = of.evenUse[lane] * covered / length + of.nearUse[lane] * seen[lane] * scale[lane];
            seen[lane] = Math.max(LEAST_SHARE, Math.min(1, all));
            inverse[lane] = 1 / seen[lane];
        }
    }

    /** What each focal place of the stretch adds to the density of a registration, but for {@link #scale}. */
    double[] near(int i) {
        if (nearFrom[i] != lowest) {
            int at = (lowest - of.nearFrom[i]) * of.natures;
            System.arraycopy(of.near[i], at, near[i], 0, Math.min(of.lanes, of.near[i].length - at));
            nearFrom[i] = lowest;
        }
        return near[i];
    }

    /** How much better a pair explains a registration than a stray, in one lane. */
    double weight(int i, int lane) {
        int v = cells.visit[i];
        double density = even[lane] + near(i)[lane] * scale[lane];
        return v < 0 ? of.chanceRatio[lane] * density : density / seen(v, lane);
    }

    /** The share of the use that a visit covered, in one lane. */
    double seen(int v, int lane) {
        return full[v] ? 1 : share[v][lane];
    }

    /** No weight of a registration is larger in any lane. */
    double largestWeight(int i) {
        int v = cells.visit[i];
        double density = of.mostEven / ((to - from) * cells.width) + of.mostNear[i] * of.mostScale(from, to);
        return v < 0 ? of.mostChanceRatio * density : density / leastSeen[v];
    }
}

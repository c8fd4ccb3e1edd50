package org.ouzelbook.stats.estimator.segmentation;

/**
 * The registrations of which notes of birds seen at once speak ({@link AtOnce}). The product {@code ∏(1 + w)} is the sum over all
 * sets of registrations that a pair can have given, each the product of its weights; here sets that hold two birds seen at once are
 * left out, and those with two neighbours that were not noted so weigh more.
 */
final class NotedSets {
    private final StretchLanes stretch;
    private final Cells cells;
    private final double[] unnoted;
    private final double[] weight;

    /** For each registration: the sum over the sets of which it is the uppermost. */
    private final double[][] withLast;

    NotedSets(StretchLanes stretch) {
        this.stretch = stretch;
        cells = stretch.cells;
        unnoted = stretch.of.unnoted;
        weight = new double[stretch.of.lanes];
        withLast = new double[cells.position.length][];
        for (int i = 0; i < withLast.length; i++) {
            withLast[i] = new double[cells.atOnce.concerns(i) ? stretch.of.lanes : 0];
        }
    }

    /**
     * Adds the sets that hold a registration.
     *
     * @param i the registration
     * @param sets the sums over the sets of those of its visit that lie below it in the stretch
     */
    void add(int i, double[] sets) {
        double[] with = withLast[i];
        int[] noted = cells.atOnce.notedBelow(i);
        int next = cells.atOnce.unnotedBelow(i);
        int lanes = stretch.size;
        weigh(i, stretch.even, stretch.near(i), stretch.scale, lanes);
        if (stretch.holdsAny(noted)) {
            System.arraycopy(sets, 0, with, 0, lanes);
            for (int other : noted) {
                if (other >= stretch.first) {
                    takeOff(withLast[other], with, lanes);
                }
            }
            if (next >= stretch.first) {
                addMore(withLast[next], with, lanes);
            }
            addBeside(with, sets, lanes);
        } else if (next >= stretch.first) {
            addBeside(withLast[next], with, sets, lanes);
        } else {
            addAlone(with, sets, lanes);
        }
    }

    private void takeOff(double[] both, double[] with, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            with[lane] -= both[lane];
        }
    }

    private void addMore(double[] both, double[] with, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            with[lane] += unnoted[lane] * both[lane];
        }
    }

    /** The empty set is always left, however much was taken off and rounded. */
    private void addBeside(double[] with, double[] sets, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            with[lane] = weight[lane] * Math.max(1, with[lane]);
            sets[lane] += with[lane];
        }
    }

    private void addBeside(double[] both, double[] with, double[] sets, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            with[lane] = weight[lane] * (sets[lane] + unnoted[lane] * both[lane]);
            sets[lane] += with[lane];
        }
    }

    private void addAlone(double[] with, double[] sets, int lanes) {
        for (int lane = 0; lane < lanes; lane++) {
            with[lane] = weight[lane] * sets[lane];
            sets[lane] += with[lane];
        }
    }

    /** How much better the pair explains a registration than a stray. */
    private void weigh(int i, double[] even, double[] near, double[] scale, int lanes) {
        int v = cells.visit[i];
        for (int lane = 0; lane < lanes; lane++) {
            weight[lane] = even[lane] + near[lane] * scale[lane];
        }
        if (v < 0) {
            for (int lane = 0; lane < lanes; lane++) {
                weight[lane] *= stretch.of.chanceRatio[lane];
            }
        } else if (!stretch.full[v]) {
            double[] seen = stretch.share[v];
            for (int lane = 0; lane < lanes; lane++) {
                weight[lane] /= seen[lane];
            }
        }
    }
}

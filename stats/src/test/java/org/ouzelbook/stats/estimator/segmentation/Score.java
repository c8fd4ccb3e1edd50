package org.ouzelbook.stats.estimator.segmentation;

/**
 * What a partition is judged by, the first that differs deciding; less is better.
 *
 * @param brokenBonds cuts through pairs that belong together
 * @param unassigned points in no accepted cluster
 * @param accepted accepted clusters
 * @param leftover clusters that are not accepted
 * @param spanMillimetres total length of all clusters; a whole number, so that sums are exact and ties are ties
 */
record Score(long brokenBonds, long unassigned, long accepted, long leftover, long spanMillimetres)
        implements Comparable<Score> {
    static final Score NOTHING = new Score(0, 0, 0, 0, 0);

    Score plus(Score other) {
        return new Score(
                brokenBonds + other.brokenBonds,
                unassigned + other.unassigned,
                accepted + other.accepted,
                leftover + other.leftover,
                spanMillimetres + other.spanMillimetres);
    }

    @Override
    public int compareTo(Score other) {
        if (brokenBonds != other.brokenBonds) {
            return Long.compare(brokenBonds, other.brokenBonds);
        }
        if (unassigned != other.unassigned) {
            return Long.compare(unassigned, other.unassigned);
        }
        if (accepted != other.accepted) {
            return Long.compare(accepted, other.accepted);
        }
        if (leftover != other.leftover) {
            return Long.compare(leftover, other.leftover);
        }
        return Long.compare(spanMillimetres, other.spanMillimetres);
    }
}

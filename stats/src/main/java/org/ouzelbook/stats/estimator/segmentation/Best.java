package org.ouzelbook.stats.estimator.segmentation;

import java.util.Arrays;

/**
 * What is best on one side of each cut of a line, and the cluster with which it begins there.
 *
 * <p>Cuts through bonds decide first; then points in no accepted cluster, accepted clusters and other clusters, which lie side by
 * side in one number, the rank; then the length in whole millimetres, so that sums are exact and ties are ties.
 */
final class Best {
    private static final int BITS = 20;
    private static final int MOST = 1 << BITS;
    private static final long ACCEPTED = 1L << BITS;
    private static final long UNASSIGNED = 1L << (2 * BITS);

    private final long[] bonds;
    private final long[] rank;
    private final long[] span;
    private final boolean[] only;
    private final int[] other;
    private final boolean[] accepted;

    private Best(int size) {
        if (size >= MOST) {
            throw new IllegalArgumentException("A line has fewer than " + MOST + " points, but this one had " + size);
        }
        bonds = new long[size + 1];
        rank = new long[size + 1];
        span = new long[size + 1];
        only = new boolean[size + 1];
        other = new int[size + 1];
        accepted = new boolean[size + 1];
        Arrays.fill(other, -1);
    }

    /** What is best above each cut; of partitions that are equally good, the one whose lower clusters take in most. */
    static Best above(LineIndex line, Acceptance acceptance) {
        int size = line.size();
        Best best = new Best(size);
        best.only[size] = true;
        for (int from = size - 1; from >= 0; from--) {
            if (!line.isCut(from)) {
                continue;
            }
            GrowingCluster cluster = new GrowingCluster(line, from);
            for (int to = from + 1; to <= size && cluster.takesIn(to - 1); to++) {
                if (!line.isCut(to) || best.isHopeless(from, to, line.bondsCut[to])) {
                    continue;
                }
                boolean counts = cluster.isAccepted(acceptance);
                best.offer(from, to, line.bondsCut[to], counts, to - from, cluster.spanMillimetres());
            }
        }
        return best;
    }

    /** What is best below each cut. */
    static Best below(LineIndex line, Acceptance acceptance) {
        int size = line.size();
        Best best = new Best(size);
        best.only[0] = true;
        for (int from = 0; from < size; from++) {
            if (!line.isCut(from)) {
                continue;
            }
            GrowingCluster cluster = new GrowingCluster(line, from);
            for (int to = from + 1; to <= size && cluster.takesIn(to - 1); to++) {
                if (!line.isCut(to) || best.isHopeless(to, from, line.bondsCut[to])) {
                    continue;
                }
                boolean counts = cluster.isAccepted(acceptance);
                best.offer(to, from, line.bondsCut[to], counts, to - from, cluster.spanMillimetres());
            }
        }
        return best;
    }

    /** The rank of one cluster of some points. */
    static long rank(boolean accepted, int points) {
        return accepted ? ACCEPTED : UNASSIGNED * points + 1;
    }

    /** Whether a cluster from one cut to another cannot be best, be it ever so good. */
    private boolean isHopeless(int cut, int next, int bondsCut) {
        return other[cut] >= 0
                && compare(bonds[next] + bondsCut, rank[next] + ACCEPTED, 0, bonds[cut], rank[cut], 0) > 0;
    }

    private void offer(int cut, int next, int bondsCut, boolean counts, int points, long newSpan) {
        long b = bonds[next] + bondsCut;
        long r = rank[next] + rank(counts, points);
        long s = span[next] + newSpan;
        int order = other[cut] < 0 ? -1 : compare(b, r, s, bonds[cut], rank[cut], span[cut]);
        if (order <= 0) {
            only[cut] = order < 0 && only[next];
            bonds[cut] = b;
            rank[cut] = r;
            span[cut] = s;
            other[cut] = next;
            accepted[cut] = counts;
        }
    }

    private static int compare(long bonds, long rank, long span, long otherBonds, long otherRank, long otherSpan) {
        if (bonds != otherBonds) {
            return Long.compare(bonds, otherBonds);
        }
        return rank == otherRank ? Long.compare(span, otherSpan) : Long.compare(rank, otherRank);
    }

    /** Whether only one partition is as good as the best from a cut on. */
    boolean isOnly(int cut) {
        return only[cut];
    }

    /** The cut at the other end of the cluster with which the best begins. */
    int next(int cut) {
        return other[cut];
    }

    /** Whether that cluster is accepted. */
    boolean isAccepted(int cut) {
        return accepted[cut];
    }

    /** How good a partition is that is best below one cut and above another, with one cluster between them or none. */
    record Whole(long bonds, long rank, long span) {
        static Whole of(Best below, int from, Best above, int to, long bondsCut, long rank, long span) {
            return new Whole(
                    below.bonds[from] + above.bonds[to] + bondsCut,
                    below.rank[from] + above.rank[to] + rank,
                    below.span[from] + above.span[to] + span);
        }

        int compareTo(Whole other) {
            return compare(bonds, rank, span, other.bonds, other.rank, other.span);
        }

        /** Whether a cluster between two cuts, be it ever so good, would make something worse than this. */
        boolean isOutOfReach(Best below, int from, Best above, int to, long bondsCut) {
            return compare(
                            below.bonds[from] + above.bonds[to] + bondsCut,
                            below.rank[from] + above.rank[to] + ACCEPTED,
                            0,
                            bonds,
                            rank,
                            0)
                    > 0;
        }
    }
}

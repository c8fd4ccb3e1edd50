package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.ouzelbook.stats.estimator.segmentation.Partition.Cluster;

/**
 * The best partition of a line with any one of its points left out, found without cutting the line anew for each.
 *
 * <p>What is best below a cut and what is best above it do not depend on each other. With both worked out once for every cut, a
 * point that is left out asks only for the clusters across its place. Where a bond holds it, within a span that is settled,
 * and where two partitions are equally good, the line is cut anew after all. Not for use by two threads at once.
 */
public final class LeaveOneOut {
    private final Line line;
    private final Acceptance acceptance;
    private final LineIndex index;
    private final Best below;
    private final Best above;
    private final BitSet alone = new BitSet();
    private final Map<Integer, List<PointPair>> apartFromLower;

    private LeaveOneOut(Line line, Acceptance acceptance) {
        this.line = line;
        this.acceptance = acceptance;
        this.index = new LineIndex(line);
        this.below = Best.below(index, acceptance);
        this.above = Best.above(index, acceptance);
        this.apartFromLower = line.apart().stream().collect(Collectors.groupingBy(PointPair::lower));
        for (int i = 0; i < index.size(); i++) {
            alone.set(i, !isSettled(i));
        }
        line.together().forEach(bond -> {
            alone.clear(bond.lower());
            alone.clear(bond.upper());
        });
    }

    /**
     * {@return a line, ready to be asked}
     *
     * @param line the points and what is known of them
     * @param acceptance what makes a cluster acceptable
     */
    public static LeaveOneOut of(Line line, Acceptance acceptance) {
        return new LeaveOneOut(line, acceptance);
    }

    private boolean isSettled(int point) {
        double position = index.position[point];
        return line.decided().together().stream().anyMatch(span -> span.holds(position))
                || line.decided().vacant().stream().anyMatch(span -> span.holds(position));
    }

    /**
     * {@return the best partition of the points without one: just that of {@link Line#without(int)}}
     *
     * @param left place of the point
     */
    public Partition without(int left) {
        if (!alone.get(left)) {
            return cutAnew(left);
        }
        if (!apartFromLower.containsKey(left)) {
            return cutAcross(left);
        }
        int[] apart = index.lastApart.clone();
        partAsIfWithout(left);
        try {
            return cutAcross(left);
        } finally {
            System.arraycopy(apart, 0, index.lastApart, 0, apart.length);
        }
    }

    private Partition cutAnew(int left) {
        return Partition.of(line.without(left), acceptance);
    }

    /** A point above may no longer be kept from those below by the one left out; then by the next lower that it is apart from. */
    private void partAsIfWithout(int left) {
        for (PointPair pair : apartFromLower.getOrDefault(left, List.of())) {
            index.lastApart[pair.upper()] = line.apart().stream()
                    .filter(other -> other.upper() == pair.upper()
                            && other.lower() != left
                            && other.lower() < index.pieceStart[pair.upper()])
                    .mapToInt(PointPair::lower)
                    .max()
                    .orElse(-1);
        }
    }

    /** Tries the cut at the place of the point, and every cluster that reaches across it. */
    private Partition cutAcross(int left) {
        Best.Whole best = Best.Whole.of(below, left, above, left + 1, 0, 0, 0);
        boolean only = below.isOnly(left) && above.isOnly(left + 1);
        List<Cluster> across = List.of();
        int from = left;
        int to = left + 1;
        for (int lower = left - 1; lower >= 0; lower--) {
            if (!index.isCut(lower)) {
                continue;
            }
            GrowingCluster cluster = new GrowingCluster(index, lower);
            int next = lower;
            while (next < left && cluster.takesIn(next)) {
                next++;
            }
            if (next < left) {
                break;
            }
            for (int upper = left + 2; upper <= index.size() && cluster.takesIn(upper - 1); upper++) {
                int bonds = index.bondsCut[upper];
                if (!index.isCut(upper) || best.isOutOfReach(below, lower, above, upper, bonds)) {
                    continue;
                }
                boolean accepted = cluster.isAccepted(acceptance);
                long rank = Best.rank(accepted, upper - lower - 1);
                Best.Whole whole = Best.Whole.of(below, lower, above, upper, bonds, rank, cluster.spanMillimetres());
                int order = whole.compareTo(best);
                if (order < 0) {
                    best = whole;
                    only = below.isOnly(lower) && above.isOnly(upper);
                    across = List.of(new Cluster(lower, upper - 1, accepted));
                    from = lower;
                    to = upper;
                } else if (order == 0) {
                    only = false;
                }
            }
        }
        return only ? partition(from, across, to) : cutAnew(left);
    }

    private Partition partition(int from, List<Cluster> across, int to) {
        List<Cluster> clusters = new ArrayList<>();
        for (int cut = from; cut > 0; cut = below.next(cut)) {
            clusters.add(new Cluster(below.next(cut), cut, below.isAccepted(cut)));
        }
        Collections.reverse(clusters);
        clusters.addAll(across);
        for (int cut = to; cut < index.size(); cut = above.next(cut)) {
            clusters.add(new Cluster(cut - 1, above.next(cut) - 1, above.isAccepted(cut)));
        }
        return new Partition(clusters);
    }
}

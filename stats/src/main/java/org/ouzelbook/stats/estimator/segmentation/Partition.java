package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.List;

/**
 * The best cut of the points of a line into clusters, each an unbroken run of points.
 *
 * <p>Best means, the first that differs deciding: fewest cuts through bonds, most points in accepted clusters, fewest
 * accepted clusters, fewest other clusters, least total length; and among equals the one whose clusters, from the lower end,
 * take in most. It is found exactly, by dynamic programming from the upper end: what is best above a cut does not depend on
 * what lies below it. Time grows with the points times the most points that fit into one maximum length.
 *
 * <p>What is {@link Decided} binds: no limit is reached across, what is together is never cut, whatever its length, and
 * where no cluster may be, points make up clusters of their own that are not accepted.
 *
 * <p>"As many registrations in as few clusters as possible" is the parsimony of the mapping method, R. E. Bult (1995), Limosa
 * 68:29–34, here with a cap on length because with few visits parsimony alone makes clusters too long.
 *
 * @param clusters the clusters, going up the line; every point is in one
 */
public record Partition(List<Cluster> clusters) {
    /** Copies the list. */
    public Partition {
        clusters = List.copyOf(clusters);
    }

    /**
     * A run of points.
     *
     * @param from the first point
     * @param to the point after the last
     * @param accepted whether it is accepted
     */
    public record Cluster(int from, int to, boolean accepted) {}

    /**
     * {@return the best partition of a line}
     *
     * @param line the points and what is known of them
     * @param acceptance what makes a cluster acceptable
     */
    public static Partition of(Line line, Acceptance acceptance) {
        LineIndex index = new LineIndex(line);
        int size = index.size();
        Score[] best = new Score[size + 1];
        best[size] = Score.NOTHING;
        Cluster[] first = new Cluster[size];
        for (int from = size - 1; from >= 0; from--) {
            if (!index.isCut(from)) {
                continue;
            }
            GrowingCluster cluster = new GrowingCluster(index, from);
            for (int to = from + 1; to <= size && cluster.takesIn(to - 1); to++) {
                if (!index.isCut(to)) {
                    continue;
                }
                boolean accepted = cluster.isAccepted(acceptance);
                Score score = best[to].plus(score(cluster, accepted, index.bondsCut[to]));
                if (first[from] == null || score.compareTo(best[from]) <= 0) {
                    best[from] = score;
                    first[from] = new Cluster(from, to, accepted);
                }
            }
        }
        List<Cluster> clusters = new ArrayList<>();
        for (int from = 0; from < size; from = first[from].to()) {
            clusters.add(first[from]);
        }
        return new Partition(clusters);
    }

    private static Score score(GrowingCluster cluster, boolean accepted, int bondsCut) {
        return accepted
                ? new Score(bondsCut, 0, 1, 0, cluster.spanMillimetres())
                : new Score(bondsCut, cluster.size(), 0, 1, cluster.spanMillimetres());
    }

    /**
     * {@return whether this partition cuts a line as another cuts the same line without one point, the cluster of that point
     * being just one shorter}
     *
     * @param without the partition without the point
     * @param left place of the point
     */
    public boolean staysWithout(Partition without, int left) {
        if (clusters.size() != without.clusters.size()) {
            return false;
        }
        for (int i = 0; i < clusters.size(); i++) {
            Cluster one = clusters.get(i);
            int from = one.from > left ? one.from - 1 : one.from;
            int to = one.to > left ? one.to - 1 : one.to;
            if (!without.clusters.get(i).equals(new Cluster(from, to, one.accepted))) {
                return false;
            }
        }
        return true;
    }
}

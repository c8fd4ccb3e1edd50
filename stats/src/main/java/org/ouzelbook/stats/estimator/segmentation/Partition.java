package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The best cut of the points of a line into clusters, each an unbroken run of points.
 *
 * <p>Best means, the first that differs deciding: fewest cuts through bonds, most points in accepted clusters, fewest
 * accepted clusters, fewest other clusters, least total length; and among equals the one whose clusters, from the lower end,
 * take in most. It is found exactly, by dynamic programming from the upper end: what is best above a cut does not depend on
 * what lies below it. Time grows with the points times the most points that fit into one maximum length.
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
        int size = line.points().size();
        int[] lastApart = lastApart(line);
        int[] bondsCut = bondsCut(line);
        int dayZero = line.points().stream()
                .flatMap(point -> point.days().stream())
                .mapToInt(Integer::intValue)
                .min()
                .orElse(0);
        Score[] best = new Score[size + 1];
        best[size] = Score.NOTHING;
        Cluster[] first = new Cluster[size];
        for (int from = size - 1; from >= 0; from--) {
            GrowingCluster cluster = new GrowingCluster(line, lastApart, dayZero, from);
            for (int to = from + 1; to <= size && cluster.takesIn(to - 1); to++) {
                boolean accepted = cluster.isAccepted(acceptance);
                Score score = best[to].plus(score(cluster, accepted, bondsCut[to]));
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

    private static int[] lastApart(Line line) {
        int[] last = new int[line.points().size()];
        Arrays.fill(last, -1);
        for (PointPair pair : line.apart()) {
            last[pair.upper()] = Math.max(last[pair.upper()], pair.lower());
        }
        return last;
    }

    /** Place c counts the bonds that a cut just below point c goes through. */
    private static int[] bondsCut(Line line) {
        int[] cut = new int[line.points().size() + 1];
        for (PointPair pair : line.together()) {
            for (int c = pair.lower() + 1; c <= pair.upper(); c++) {
                cut[c]++;
            }
        }
        return cut;
    }
}

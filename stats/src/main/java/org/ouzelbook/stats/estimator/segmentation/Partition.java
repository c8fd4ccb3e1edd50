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
        Best above = Best.above(new LineIndex(line), acceptance);
        List<Cluster> clusters = new ArrayList<>();
        for (int from = 0; from < line.points().size(); from = above.next(from)) {
            clusters.add(new Cluster(from, above.next(from), above.isAccepted(from)));
        }
        return new Partition(clusters);
    }
}

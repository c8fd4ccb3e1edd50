package org.ouzelbook.tracker.river;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.locationtech.jts.algorithm.CGAlgorithms3D;
import org.locationtech.jts.geom.Coordinate;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.river.ChainedLine.Part;

/**
 * The smallest gaps that join everything apart into one.
 *
 * <p>A minimum spanning tree over the ends, grown from one of them (R. C. Prim 1957, Bell Syst. Tech. J. 36:1389–1401), in
 * which ends that pieces already join are no distance apart.
 */
final class Gaps {
    private Gaps() {}

    static List<Part> closing(List<GeoPoint> nodes, List<Part> parts, double widest) {
        int[] group = groups(nodes, parts);
        Coordinate[] space = nodes.stream().map(Earth::inSpace).toArray(Coordinate[]::new);
        double[] nearest = new double[nodes.size()];
        int[] from = new int[nodes.size()];
        boolean[] joined = new boolean[nodes.size()];
        Arrays.fill(nearest, Double.POSITIVE_INFINITY);
        nearest[0] = 0;
        List<Part> gaps = new ArrayList<>();
        for (int round = 0; round < nodes.size(); round++) {
            int next = -1;
            for (int i = 0; i < nodes.size(); i++) {
                if (!joined[i] && (next < 0 || nearest[i] < nearest[next])) {
                    next = i;
                }
            }
            joined[next] = true;
            if (group[next] != group[from[next]] && nearest[next] <= widest) {
                gaps.add(new Part(-1, List.of(nodes.get(from[next]), nodes.get(next)), true));
            }
            for (int i = 0; i < nodes.size(); i++) {
                double metres = group[i] == group[next] ? 0 : CGAlgorithms3D.distance(space[i], space[next]);
                if (!joined[i] && metres < nearest[i]) {
                    nearest[i] = metres;
                    from[i] = next;
                }
            }
        }
        return gaps;
    }

    /** Numbers the nodes so that those which pieces join have the same number. */
    private static int[] groups(List<GeoPoint> nodes, List<Part> parts) {
        Map<GeoPoint, Integer> index = new HashMap<>();
        nodes.forEach(node -> index.put(node, index.size()));
        int[] parent = new int[nodes.size()];
        Arrays.setAll(parent, i -> i);
        for (Part part : parts) {
            parent[root(parent, index.getOrDefault(part.start(), 0))] = root(parent, index.getOrDefault(part.end(), 0));
        }
        int[] group = new int[nodes.size()];
        Arrays.setAll(group, i -> root(parent, i));
        return group;
    }

    private static int root(int[] parent, int start) {
        int at = start;
        while (parent[at] != at) {
            parent[at] = parent[parent[at]];
            at = parent[at];
        }
        return at;
    }
}

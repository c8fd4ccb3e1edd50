package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Points on a line and what is known for certain of them.
 *
 * @param points the points, by position
 * @param apart pairs that cannot be in one cluster
 * @param together pairs that belong in one cluster; such a bond gives way to the length, to walls and to pairs apart
 * @param walls positions, in metres, that no cluster reaches across; a point no farther from a wall than its uncertainty may
 *     lie on either side
 * @param maximumLength no cluster is longer, in metres; positive
 * @param decided what is settled whatever the rest says
 */
public record Line(
        List<LinePoint> points,
        Set<PointPair> apart,
        Set<PointPair> together,
        List<Double> walls,
        double maximumLength,
        Decided decided) {
    /**
     * Copies the collections, sorts the walls, and checks the rest.
     *
     * @throws IllegalArgumentException if the points are out of order, a pair names a point that is not there, or the length
     *     is not positive
     */
    public Line {
        points = List.copyOf(points);
        apart = Set.copyOf(apart);
        together = Set.copyOf(together);
        walls = walls.stream().sorted().toList();
        if (!(maximumLength > 0)) {
            throw new IllegalArgumentException("The maximum length must be positive, but was " + maximumLength);
        }
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i - 1).position() > points.get(i).position()) {
                throw new IllegalArgumentException(
                        "Points must stand in order along the line, but point " + i + " does not");
            }
        }
        refuseStrangers(points.size(), apart);
        refuseStrangers(points.size(), together);
    }

    private static void refuseStrangers(int size, Set<PointPair> pairs) {
        for (PointPair pair : pairs) {
            if (pair.upper() >= size) {
                throw new IllegalArgumentException("There is no point " + pair.upper() + " among " + size);
            }
        }
    }

    /**
     * {@return this line without one of its points, and without the pairs that it was in}
     *
     * @param left place of the point
     */
    public Line without(int left) {
        List<LinePoint> others = new ArrayList<>(points);
        others.remove(left);
        return new Line(others, without(left, apart), without(left, together), walls, maximumLength, decided);
    }

    private static Set<PointPair> without(int left, Set<PointPair> pairs) {
        return pairs.stream()
                .filter(pair -> pair.lower() != left && pair.upper() != left)
                .map(pair -> new PointPair(
                        pair.lower() > left ? pair.lower() - 1 : pair.lower(),
                        pair.upper() > left ? pair.upper() - 1 : pair.upper()))
                .collect(Collectors.toSet());
    }
}

package org.ouzelbook.stats.estimator.segmentation;

import java.util.Arrays;
import java.util.List;

/** A line made ready for growing millions of clusters: what each step asks for stands in an array. */
final class LineIndex {
    final double maximumLength;
    final double[] position;
    final boolean[] decisive;

    /** The days of each point, counted from the line's first day. */
    final int[][] days;

    /** For each point, the highest point below it that it cannot be with; −1 for none. */
    final int[] lastApart;

    /** For each point, how many bonds a cut just below it goes through. */
    final int[] bondsCut;

    /** For each point, the first wall, from the lower end, that it certainly lies below. */
    final int[] firstWallAbove;

    /** For each point, the wall after the last one that it certainly lies above. */
    final int[] wallsBelow;

    LineIndex(Line line) {
        List<LinePoint> points = line.points();
        int size = points.size();
        maximumLength = line.maximumLength();
        position = points.stream().mapToDouble(LinePoint::position).toArray();
        decisive = new boolean[size];
        days = new int[size][];
        lastApart = new int[size];
        bondsCut = new int[size + 1];
        firstWallAbove = new int[size];
        wallsBelow = new int[size];
        double[] walls = line.walls().stream().mapToDouble(Double::doubleValue).toArray();
        int firstDay = firstDay(points);
        for (int i = 0; i < size; i++) {
            LinePoint point = points.get(i);
            decisive[i] = point.decisive();
            days[i] = point.days().stream().mapToInt(day -> day - firstDay).toArray();
            firstWallAbove[i] = wallsUpTo(walls, point.position() + point.uncertainty());
            wallsBelow[i] = wallsUpTo(walls, Math.nextDown(point.position() - point.uncertainty()));
        }
        Arrays.fill(lastApart, -1);
        for (PointPair pair : line.apart()) {
            lastApart[pair.upper()] = Math.max(lastApart[pair.upper()], pair.lower());
        }
        for (PointPair pair : line.together()) {
            for (int cut = pair.lower() + 1; cut <= pair.upper(); cut++) {
                bondsCut[cut]++;
            }
        }
    }

    private static int firstDay(List<LinePoint> points) {
        return points.stream()
                .flatMap(point -> point.days().stream())
                .mapToInt(Integer::intValue)
                .min()
                .orElse(0);
    }

    /** How many walls stand at a position or below it. */
    private static int wallsUpTo(double[] walls, double position) {
        int low = 0;
        int high = walls.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (walls[middle] <= position) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    int size() {
        return position.length;
    }
}

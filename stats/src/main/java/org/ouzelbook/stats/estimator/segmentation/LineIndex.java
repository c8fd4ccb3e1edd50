package org.ouzelbook.stats.estimator.segmentation;

import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

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

    /** For each point, the first point that must be in its cluster. */
    final int[] pieceStart;

    /** For each point, whether it lies where no cluster is accepted. */
    final boolean[] vacant;

    /** For each point, the first settled limit, from the lower end, that it lies below. */
    final int[] firstLimitAbove;

    /** For each point, the limit after the last one that it lies above. */
    final int[] limitsBelow;

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
        pieceStart = pieceStarts(line.decided().together());
        vacant = new boolean[size];
        firstLimitAbove = new int[size];
        limitsBelow = new int[size];
        double[] walls = line.walls().stream()
                .mapToDouble(Double::doubleValue)
                .filter(wall -> !isInsidePiece(wall))
                .toArray();
        double[] limits = limits(line.decided());
        int firstDay = firstDay(points);
        for (int i = 0; i < size; i++) {
            LinePoint point = points.get(i);
            decisive[i] = point.decisive();
            days[i] = point.days().stream().mapToInt(day -> day - firstDay).toArray();
            firstWallAbove[i] = wallsUpTo(walls, point.position() + point.uncertainty());
            wallsBelow[i] = wallsUpTo(walls, Math.nextDown(point.position() - point.uncertainty()));
            vacant[i] = line.decided().vacant().stream().anyMatch(span -> span.holds(point.position()));
            firstLimitAbove[i] = wallsUpTo(limits, point.position());
            limitsBelow[i] = wallsUpTo(limits, Math.nextDown(point.position()));
        }
        Arrays.fill(lastApart, -1);
        for (PointPair pair : line.apart()) {
            if (pair.lower() < pieceStart[pair.upper()]) {
                lastApart[pair.upper()] = Math.max(lastApart[pair.upper()], pair.lower());
            }
        }
        for (PointPair pair : line.together()) {
            for (int cut = pair.lower() + 1; cut <= pair.upper(); cut++) {
                bondsCut[cut]++;
            }
        }
    }

    private int[] pieceStarts(List<Decided.Span> together) {
        int[] starts = new int[position.length];
        for (int i = 0; i < starts.length; i++) {
            int point = i;
            boolean goesOn = i > 0
                    && together.stream()
                            .anyMatch(span -> span.holds(position[point - 1]) && span.holds(position[point]));
            starts[i] = goesOn ? starts[i - 1] : i;
        }
        return starts;
    }

    /** Whether a position lies between two points that are one piece. */
    private boolean isInsidePiece(double place) {
        for (int i = 1; i < position.length; i++) {
            if (pieceStart[i] < i && position[i - 1] <= place && place <= position[i]) {
                return true;
            }
        }
        return false;
    }

    /** The settled limits in order; a vacant span without a point is one too. */
    private double[] limits(Decided decided) {
        return DoubleStream.concat(
                        decided.limits().stream().mapToDouble(Double::doubleValue),
                        decided.vacant().stream()
                                .filter(span -> Arrays.stream(position).noneMatch(span::holds))
                                .mapToDouble(Decided.Span::middle))
                .sorted()
                .toArray();
    }

    /** Whether a cluster may start at a point, or end just below it. */
    boolean isCut(int point) {
        return point == size() || pieceStart[point] == point;
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

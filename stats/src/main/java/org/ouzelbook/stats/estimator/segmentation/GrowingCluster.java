package org.ouzelbook.stats.estimator.segmentation;

import java.util.BitSet;
import java.util.List;

/** A cluster that takes in one point after another upstream, until something forbids the next. */
final class GrowingCluster {
    private final Line line;
    private final int[] lastApart;
    private final int dayZero;
    private final int first;
    private final BitSet days = new BitSet();
    private int last;
    private boolean decisive;
    private double surelyBelow = Double.POSITIVE_INFINITY;
    private double surelyAbove = Double.NEGATIVE_INFINITY;

    /**
     * A cluster that will start at a point and has none yet.
     *
     * @param line the line
     * @param lastApart for each point, the highest point below it that it cannot be with; −1 for none
     * @param dayZero the earliest day of the line
     * @param first the point that it starts at
     */
    GrowingCluster(Line line, int[] lastApart, int dayZero, int first) {
        this.line = line;
        this.lastApart = lastApart;
        this.dayZero = dayZero;
        this.first = first;
    }

    /**
     * Takes in the next point, if nothing forbids it.
     *
     * @param next the point after the last one taken in
     * @return whether it was taken in; if not, nothing further up can be either
     */
    boolean takesIn(int next) {
        LinePoint point = line.points().get(next);
        if (lastApart[next] >= first || point.position() - lower() > line.maximumLength()) {
            return false;
        }
        double below = Math.min(surelyBelow, point.position() + point.uncertainty());
        double above = Math.max(surelyAbove, point.position() - point.uncertainty());
        if (wallBetween(below, above)) {
            return false;
        }
        surelyBelow = below;
        surelyAbove = above;
        last = next;
        decisive |= point.decisive();
        point.days().forEach(day -> days.set(day - dayZero));
        return true;
    }

    private boolean wallBetween(double below, double above) {
        if (below >= above) {
            return false;
        }
        List<Double> walls = line.walls();
        int low = 0;
        int high = walls.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (walls.get(middle) > below) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low < walls.size() && walls.get(low) < above;
    }

    private double lower() {
        return line.points().get(first).position();
    }

    private double upper() {
        return line.points().get(last).position();
    }

    boolean isAccepted(Acceptance acceptance) {
        int spread = days.length() - 1 - days.nextSetBit(0);
        return acceptance.accepts(decisive, days.cardinality(), spread, lower(), upper());
    }

    int size() {
        return last - first + 1;
    }

    long spanMillimetres() {
        return Math.round((upper() - lower()) * 1000);
    }
}

package org.ouzelbook.stats.estimator.segmentation;

import java.util.BitSet;

/** A cluster that takes in one point after another upstream, until something forbids the next. */
final class GrowingCluster {
    private final LineIndex line;
    private final int first;
    private final BitSet days = new BitSet();
    private int last;
    private int dayCount;
    private int firstDay = Integer.MAX_VALUE;
    private int lastDay = Integer.MIN_VALUE;
    private boolean decisive;
    private int firstWallAbove = Integer.MAX_VALUE;
    private int wallsBelow;
    private int firstLimitAbove = Integer.MAX_VALUE;
    private int limitsBelow;

    /**
     * A cluster that will start at a point and has none yet.
     *
     * @param line the line
     * @param first the point that it starts at
     */
    GrowingCluster(LineIndex line, int first) {
        this.line = line;
        this.first = first;
    }

    /**
     * Takes in the next point, if nothing forbids it.
     *
     * @param next the point after the last one taken in
     * @return whether it was taken in; if not, nothing further up can be either
     */
    boolean takesIn(int next) {
        boolean isOnePiece = line.pieceStart[next] <= first;
        boolean tooLong = line.position[next] - lower() > line.maximumLength && !isOnePiece;
        if (line.lastApart[next] >= first || tooLong || line.vacant[next] != line.vacant[first]) {
            return false;
        }
        firstWallAbove = Math.min(firstWallAbove, line.firstWallAbove[next]);
        wallsBelow = Math.max(wallsBelow, line.wallsBelow[next]);
        firstLimitAbove = Math.min(firstLimitAbove, line.firstLimitAbove[next]);
        limitsBelow = Math.max(limitsBelow, line.limitsBelow[next]);
        if (firstWallAbove < wallsBelow || firstLimitAbove < limitsBelow) {
            return false;
        }
        last = next;
        decisive |= line.decisive[next];
        for (int day : line.days[next]) {
            if (!days.get(day)) {
                days.set(day);
                dayCount++;
                firstDay = Math.min(firstDay, day);
                lastDay = Math.max(lastDay, day);
            }
        }
        return true;
    }

    private double lower() {
        return line.position[first];
    }

    private double upper() {
        return line.position[last];
    }

    boolean isAccepted(Acceptance acceptance) {
        return !line.vacant[first] && acceptance.accepts(decisive, dayCount, lastDay - firstDay, lower(), upper());
    }

    int size() {
        return last - first + 1;
    }

    long spanMillimetres() {
        return Math.round((upper() - lower()) * 1000);
    }
}

package org.ouzelbook.tracker.river;

import java.util.Arrays;

/**
 * Finds the straight pieces of a line in space that are near a point, without looking at all of them.
 *
 * <p>A binary tree of boxes over consecutive pieces: neighbours on the line are neighbours in space, so the tree needs no
 * sorting, and it knows neither poles nor an antimeridian. Box {@code i} has the children {@code 2i + 1} and
 * {@code 2i + 2}; the boxes below it share its pieces in halves.
 */
final class SegmentTree {
    private static final int PIECES_PER_LEAF = 4;
    private static final int BOX = 6;

    private final double[] vertices;
    private final double[] boxes;

    /**
     * Builds the tree.
     *
     * @param vertices x, y and z of each vertex in turn, in metres; two vertices or more
     */
    SegmentTree(double[] vertices) {
        this.vertices = vertices;
        int leaves = Math.max(1, Integer.highestOneBit(Math.max(1, pieces() / PIECES_PER_LEAF)) * 2);
        this.boxes = new double[(2 * leaves - 1) * BOX];
        build(0, 0, pieces());
    }

    private int pieces() {
        return vertices.length / 3 - 1;
    }

    private boolean isLeaf(int box) {
        return (2 * box + 2) * BOX >= boxes.length;
    }

    private void build(int box, int from, int to) {
        int at = box * BOX;
        Arrays.fill(boxes, at, at + 3, Double.POSITIVE_INFINITY);
        Arrays.fill(boxes, at + 3, at + BOX, Double.NEGATIVE_INFINITY);
        for (int vertex = from; vertex <= to; vertex++) {
            for (int axis = 0; axis < 3; axis++) {
                boxes[at + axis] = Math.min(boxes[at + axis], vertices[3 * vertex + axis]);
                boxes[at + 3 + axis] = Math.max(boxes[at + 3 + axis], vertices[3 * vertex + axis]);
            }
        }
        if (!isLeaf(box)) {
            int middle = (from + to) >>> 1;
            build(2 * box + 1, from, middle);
            build(2 * box + 2, middle, to);
        }
    }

    /** Hears of a piece near the point, in the order of the line, and how near: metres squared. */
    interface Visitor {
        /**
         * Hears of one piece.
         *
         * @return the squared distance beyond which nothing more is wanted
         */
        double visit(int piece, double share, double squaredDistance);
    }

    /** Shows the visitor every piece within {@code squaredLimit} of the point, or within the limit that it narrows to. */
    void near(double[] point, double squaredLimit, Visitor visitor) {
        near(0, 0, pieces(), point, squaredLimit, visitor, false);
    }

    /** As {@link #near}, but the nearer half of each box first, so that a narrowing limit cuts off the most. */
    void nearestFirst(double[] point, Visitor visitor) {
        near(0, 0, pieces(), point, Double.POSITIVE_INFINITY, visitor, true);
    }

    private double near(
            int box, int from, int to, double[] point, double squaredLimit, Visitor visitor, boolean nearestFirst) {
        double limit = squaredLimit;
        if (isLeaf(box)) {
            for (int piece = from; piece < to; piece++) {
                double share = share(piece, point);
                double squared = squaredDistance(piece, share, point);
                if (squared <= limit) {
                    limit = Math.min(limit, visitor.visit(piece, share, squared));
                }
            }
            return limit;
        }
        int middle = (from + to) >>> 1;
        double toLower = squaredDistanceToBox(2 * box + 1, point);
        double toUpper = squaredDistanceToBox(2 * box + 2, point);
        boolean upperFirst = nearestFirst && toUpper < toLower;
        if (upperFirst && toUpper <= limit) {
            limit = near(2 * box + 2, middle, to, point, limit, visitor, nearestFirst);
        }
        if (toLower <= limit) {
            limit = near(2 * box + 1, from, middle, point, limit, visitor, nearestFirst);
        }
        if (!upperFirst && toUpper <= limit) {
            limit = near(2 * box + 2, middle, to, point, limit, visitor, nearestFirst);
        }
        return limit;
    }

    private double squaredDistanceToBox(int box, double[] point) {
        double sum = 0;
        for (int axis = 0; axis < 3; axis++) {
            double below = boxes[box * BOX + axis] - point[axis];
            double above = point[axis] - boxes[box * BOX + 3 + axis];
            double outside = Math.max(0, Math.max(below, above));
            sum += outside * outside;
        }
        return sum;
    }

    /** {@return where along the piece the foot of the point lies: 0 to 1 on the piece, outside of it beyond} */
    double unboundedShare(int piece, double[] point) {
        double along = 0;
        double squaredLength = 0;
        for (int axis = 0; axis < 3; axis++) {
            double step = vertices[3 * piece + 3 + axis] - vertices[3 * piece + axis];
            along += step * (point[axis] - vertices[3 * piece + axis]);
            squaredLength += step * step;
        }
        return squaredLength == 0 ? 0 : along / squaredLength;
    }

    private double share(int piece, double[] point) {
        return Math.max(0, Math.min(1, unboundedShare(piece, point)));
    }

    private double squaredDistance(int piece, double share, double[] point) {
        double sum = 0;
        for (int axis = 0; axis < 3; axis++) {
            double start = vertices[3 * piece + axis];
            double gap = point[axis] - start - share * (vertices[3 * piece + 3 + axis] - start);
            sum += gap * gap;
        }
        return sum;
    }
}

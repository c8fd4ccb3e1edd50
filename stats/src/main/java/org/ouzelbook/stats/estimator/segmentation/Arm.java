package org.ouzelbook.stats.estimator.segmentation;

/**
 * One of the waters that meet at a confluence, as cells counted from there outward.
 *
 * @param line which line of the tree it belongs to
 * @param cells that line
 * @param border the confluence, as a border of that line
 * @param up whether the arm goes up the line from there
 */
record Arm(int line, Cells cells, int border, boolean up) {
    int length() {
        return up ? cells.count - border : border;
    }

    /** How far a territory can reach into it, in cells. */
    int reach() {
        return Math.min(length(), cells.longest);
    }

    /** The border of the line that lies so many cells out. */
    int border(int out) {
        return up ? border + out : border - out;
    }

    /** The cell of the line that is this one of the arm, the nearest to the confluence being 0. */
    int cell(int out) {
        return up ? border + out : border - 1 - out;
    }

    /** Which cell of the arm a cell of the line is; negative if it lies on the other side of the confluence. */
    int out(int cell) {
        return up ? cell - border : border - 1 - cell;
    }

    /** Whether a territory from the confluence can reach a cell of the line. */
    boolean reaches(int cell) {
        return out(cell) >= 0 && out(cell) < reach();
    }

    /** How far out a border of the line lies, in cells; negative on the other side. */
    int outOfBorder(int lineBorder) {
        return up ? lineBorder - border : border - lineBorder;
    }

    /** How far out a place lies, in cells; the place above the lower end of the line in metres. */
    double outOf(double aboveLowerEnd) {
        double at = aboveLowerEnd / cells.width;
        return up ? at - border : border - at;
    }

    /** The place on the line that lies so many cells out, in metres along the line. */
    double place(double out) {
        return cells.lower + (up ? border + out : border - out) * cells.width;
    }
}

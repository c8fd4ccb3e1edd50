package org.ouzelbook.stats.estimator.segmentation;

/**
 * How finely a line is cut, and how long a territory can be.
 *
 * @param cell width of a cell, in metres; a line is cut into a whole number of equal cells as near to it as can be
 * @param shortest no territory is shorter, in metres, unless the line is
 * @param longest no territory is longer, in metres
 */
public record Grain(double cell, double shortest, double longest) {
    /**
     * Checks the lengths.
     *
     * @throws IllegalArgumentException if the cell is not positive or the longest territory shorter than the shortest
     */
    public Grain {
        if (!(cell > 0) || !(shortest > 0 && longest >= shortest)) {
            throw new IllegalArgumentException("Not a grain: " + cell + ", " + shortest + " to " + longest + " m");
        }
    }

    /**
     * {@return the same with cells of another width}
     *
     * @param metres the width
     */
    public Grain withCell(double metres) {
        return new Grain(metres, shortest, longest);
    }
}

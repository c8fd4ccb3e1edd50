package org.ouzelbook.tracker.grid;

import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * A square of a grid, as a grid reference names it. A reference is cut off, never rounded: it names the square whose
 * south-western corner its digits give, and what it tells of lies somewhere in that square.
 *
 * @param centre the middle of the square
 * @param sideMetres the length of its side, in metres: 100 for six figures; positive
 */
public record GridSquare(GeoPoint centre, double sideMetres) {

    static GridSquare of(Grid grid, GridPoint corner, double side) {
        return new GridSquare(grid.point(new GridPoint(corner.east() + side / 2, corner.north() + side / 2)), side);
    }

    /**
     * {@return the farthest that a point of the square lies from its middle, in metres: half its diagonal}
     *
     * <p>Source: A. D. Chapman and J. R. Wieczorek (2020), Georeferencing Best Practices, GBIF Secretariat, grids: 71 m for
     * a square of 100 m.
     */
    public double radiusMetres() {
        return sideMetres / Math.sqrt(2);
    }
}

package org.ouzelbook.tracker.grid;

/**
 * A point of a grid.
 *
 * @param east metres east of the grid's false origin
 * @param north metres north of it
 */
record GridPoint(double east, double north) {}

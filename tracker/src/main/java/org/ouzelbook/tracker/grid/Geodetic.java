package org.ouzelbook.tracker.grid;

/**
 * A point of some ellipsoid, not necessarily that of WGS84.
 *
 * @param latitude degrees north
 * @param longitude degrees east
 */
record Geodetic(double latitude, double longitude) {}

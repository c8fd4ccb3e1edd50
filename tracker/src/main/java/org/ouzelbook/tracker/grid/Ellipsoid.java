package org.ouzelbook.tracker.grid;

/**
 * A figure of the earth.
 *
 * <p>Source of the values: EPSG Geodetic Parameter Dataset, ellipsoids 7001, 7002, 7019 and 7030.
 *
 * @param equatorMetres its radius at the equator, in metres
 * @param flattening its flattening
 */
record Ellipsoid(double equatorMetres, double flattening) {
    static final Ellipsoid AIRY_1830 = new Ellipsoid(6_377_563.396, 1 / 299.3249646);
    static final Ellipsoid AIRY_MODIFIED_1849 = new Ellipsoid(6_377_340.189, 1 / 299.3249646);
    static final Ellipsoid GRS_1980 = new Ellipsoid(6_378_137, 1 / 298.257222101);
    static final Ellipsoid WGS_84 = new Ellipsoid(6_378_137, 1 / 298.257223563);

    /** {@return the square of its first eccentricity} */
    double squaredEccentricity() {
        return flattening * (2 - flattening);
    }

    /** {@return its third flattening, (a − b) / (a + b)} */
    double thirdFlattening() {
        return flattening / (2 - flattening);
    }
}

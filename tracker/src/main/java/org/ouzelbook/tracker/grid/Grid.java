package org.ouzelbook.tracker.grid;

import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * A grid of metres over a part of the world.
 *
 * @param projection from its ellipsoid to metres
 * @param datum from its datum to WGS84
 */
record Grid(TransverseMercator projection, DatumShift datum) {
    /** The National Grid of Great Britain; EPSG 27700. */
    static final Grid BRITISH = new Grid(
            new TransverseMercator(Ellipsoid.AIRY_1830, 49, -2, 0.9996012717, new GridPoint(400_000, -100_000)),
            DatumShift.OSGB36);

    /** The Irish Grid; EPSG 29903. */
    static final Grid IRISH = new Grid(
            new TransverseMercator(Ellipsoid.AIRY_MODIFIED_1849, 53.5, -8, 1.000035, new GridPoint(200_000, 250_000)),
            DatumShift.IRELAND_1965);

    /** Irish Transverse Mercator; EPSG 2157. */
    static final Grid IRISH_TRANSVERSE_MERCATOR = new Grid(
            new TransverseMercator(Ellipsoid.GRS_1980, 53.5, -8, 0.99982, new GridPoint(600_000, 750_000)),
            DatumShift.NONE);

    /**
     * {@return the Universal Transverse Mercator grid of a zone, with northings from the equator, negative south of it}
     *
     * <p>Source: NGA.SIG.0012_2.0.0_UTMUPS (2014), section 7.
     *
     * @param zone 1 to 60
     */
    static Grid utm(int zone) {
        return new Grid(
                new TransverseMercator(Ellipsoid.WGS_84, 0, 6 * zone - 183, 0.9996, new GridPoint(500_000, 0)),
                DatumShift.NONE);
    }

    /** {@return the point on WGS84 that lies there on the grid} */
    GeoPoint point(GridPoint there) {
        Geodetic point = datum.toWgs84(projection.unproject(there));
        return new GeoPoint(point.latitude(), Math.IEEEremainder(point.longitude(), 360));
    }
}

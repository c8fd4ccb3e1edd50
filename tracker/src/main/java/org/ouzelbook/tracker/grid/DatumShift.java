package org.ouzelbook.tracker.grid;

/**
 * The way from an older datum to WGS84: a shift, a small turn and a change of scale in space.
 *
 * <p>Position vector transformation, EPSG method 1033 with heights of 0; source of the values: EPSG Geodetic Parameter Dataset.
 *
 * @param ellipsoid the ellipsoid of the older datum
 * @param x shift along the x axis, in metres
 * @param y shift along the y axis, in metres
 * @param z shift along the z axis, in metres
 * @param turnX turn about the x axis, in seconds of arc
 * @param turnY turn about the y axis, in seconds of arc
 * @param turnZ turn about the z axis, in seconds of arc
 * @param partsPerMillion change of scale
 */
record DatumShift(
        Ellipsoid ellipsoid,
        double x,
        double y,
        double z,
        double turnX,
        double turnY,
        double turnZ,
        double partsPerMillion) {
    /** From OSGB36, good to about 5 m; EPSG transformation 1314. */
    static final DatumShift OSGB36 =
            new DatumShift(Ellipsoid.AIRY_1830, 446.448, -125.157, 542.06, 0.15, 0.247, 0.842, -20.489);

    /** From the Irish datum of 1965, good to about 1 m; EPSG transformation 1954. */
    static final DatumShift IRELAND_1965 =
            new DatumShift(Ellipsoid.AIRY_MODIFIED_1849, 482.5, -130.6, 564.6, -1.042, -0.214, -0.631, 8.15);

    /** No shift: grids that stand on WGS84, or on ETRS89, which is the same to well under 1 m. */
    static final DatumShift NONE = new DatumShift(Ellipsoid.WGS_84, 0, 0, 0, 0, 0, 0, 0);

    private static final int STEPS = 5;

    /** {@return the point on WGS84} */
    Geodetic toWgs84(Geodetic point) {
        double latitude = Math.toRadians(point.latitude());
        double longitude = Math.toRadians(point.longitude());
        double squared = ellipsoid.squaredEccentricity();
        double normal = ellipsoid.equatorMetres() / Math.sqrt(1 - squared * Math.pow(Math.sin(latitude), 2));
        double px = normal * Math.cos(latitude) * Math.cos(longitude);
        double py = normal * Math.cos(latitude) * Math.sin(longitude);
        double pz = normal * (1 - squared) * Math.sin(latitude);
        double scale = 1 + partsPerMillion / 1e6;
        double rx = Math.toRadians(turnX / 3600);
        double ry = Math.toRadians(turnY / 3600);
        double rz = Math.toRadians(turnZ / 3600);
        return onWgs84(
                x + scale * (px - rz * py + ry * pz),
                y + scale * (rz * px + py - rx * pz),
                z + scale * (-ry * px + rx * py + pz));
    }

    private static Geodetic onWgs84(double px, double py, double pz) {
        double squared = Ellipsoid.WGS_84.squaredEccentricity();
        double fromAxis = Math.hypot(px, py);
        double latitude = Math.atan2(pz, fromAxis * (1 - squared));
        for (int i = 0; i < STEPS; i++) {
            double sine = Math.sin(latitude);
            double normal = Ellipsoid.WGS_84.equatorMetres() / Math.sqrt(1 - squared * sine * sine);
            latitude = Math.atan2(pz + squared * normal * sine, fromAxis);
        }
        return new Geodetic(Math.toDegrees(latitude), Math.toDegrees(Math.atan2(py, px)));
    }
}

package org.ouzelbook.tracker.river;

import net.sf.geographiclib.Geodesic;
import net.sf.geographiclib.GeodesicData;
import net.sf.geographiclib.GeodesicMask;
import org.locationtech.jts.geom.Coordinate;
import org.ouzelbook.tracker.domain.GeoPoint;

/** The WGS84 ellipsoid: shortest lines over it, and positions in space relative to its centre. */
final class Earth {
    private static final double EQUATOR_METRES = Geodesic.WGS84.EquatorialRadius();
    private static final double SQUARED_ECCENTRICITY = Geodesic.WGS84.Flattening() * (2 - Geodesic.WGS84.Flattening());

    private Earth() {}

    /** {@return the length of the geodesic between two points, in metres} */
    static double distance(GeoPoint one, GeoPoint other) {
        return Geodesic.WGS84.Inverse(
                        one.latitude(), one.longitude(), other.latitude(), other.longitude(), GeodesicMask.DISTANCE)
                .s12;
    }

    /** {@return the point at this share of the geodesic from one point to another, 0 to 1} */
    static GeoPoint between(GeoPoint one, GeoPoint other, double share) {
        GeodesicData line = Geodesic.WGS84.Inverse(
                one.latitude(),
                one.longitude(),
                other.latitude(),
                other.longitude(),
                GeodesicMask.DISTANCE | GeodesicMask.AZIMUTH);
        GeodesicData there = Geodesic.WGS84.Direct(
                one.latitude(),
                one.longitude(),
                line.azi1,
                line.s12 * share,
                GeodesicMask.LATITUDE | GeodesicMask.LONGITUDE);
        return new GeoPoint(there.lat2, there.lon2);
    }

    /** {@return the point's place in space: metres from the centre towards 0° E on the equator, 90° E, and the north pole} */
    static Coordinate inSpace(GeoPoint point) {
        double latitude = Math.toRadians(point.latitude());
        double longitude = Math.toRadians(point.longitude());
        double sine = Math.sin(latitude);
        double normal = EQUATOR_METRES / Math.sqrt(1 - SQUARED_ECCENTRICITY * sine * sine);
        return new Coordinate(
                normal * Math.cos(latitude) * Math.cos(longitude),
                normal * Math.cos(latitude) * Math.sin(longitude),
                normal * (1 - SQUARED_ECCENTRICITY) * sine);
    }
}

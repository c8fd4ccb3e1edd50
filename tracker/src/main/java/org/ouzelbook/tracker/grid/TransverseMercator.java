package org.ouzelbook.tracker.grid;

/**
 * The transverse Mercator projection of an ellipsoid, from the grid back to the ground.
 *
 * <p>The series of Krüger to the fourth order in the third flattening, exact to less than a micrometre within a few degrees
 * of the central meridian. Source: C. F. F. Karney (2011), Transverse Mercator with an accuracy of a few nanometers, J. Geod.
 * 85:475–485, equations 7–21, 35 and 36.
 */
final class TransverseMercator {
    private static final int NEWTON_STEPS = 5;

    private final double eccentricity;
    private final double radius;
    private final double[] inverse;
    private final double centralMeridian;
    private final double falseEast;
    private final double falseNorth;

    /**
     * Makes a projection.
     *
     * @param ellipsoid the figure of the earth
     * @param latitude latitude of the true origin, in degrees
     * @param longitude longitude of the true origin, in degrees
     * @param scale scale on the central meridian
     * @param origin the true origin on the grid
     */
    TransverseMercator(Ellipsoid ellipsoid, double latitude, double longitude, double scale, GridPoint origin) {
        double n = ellipsoid.thirdFlattening();
        double n2 = n * n;
        double n3 = n2 * n;
        double n4 = n2 * n2;
        eccentricity = Math.sqrt(ellipsoid.squaredEccentricity());
        radius = scale * ellipsoid.equatorMetres() / (1 + n) * (1 + n2 / 4 + n4 / 64);
        double[] forward = {
            n / 2 - 2 * n2 / 3 + 5 * n3 / 16 + 41 * n4 / 180,
            13 * n2 / 48 - 3 * n3 / 5 + 557 * n4 / 1440,
            61 * n3 / 240 - 103 * n4 / 140,
            49561 * n4 / 161280
        };
        inverse = new double[] {
            -(n / 2 - 2 * n2 / 3 + 37 * n3 / 96 - n4 / 360),
            -(n2 / 48 + n3 / 15 - 437 * n4 / 1440),
            -(17 * n3 / 480 - 37 * n4 / 840),
            -(4397 * n4 / 161280)
        };
        centralMeridian = longitude;
        falseEast = origin.east();
        falseNorth = origin.north() - radius * series(forward, conformal(Math.toRadians(latitude)), 0)[0];
    }

    /** {@return the point of the ellipsoid that lies there on the grid} */
    Geodetic unproject(GridPoint point) {
        double[] there = series(inverse, (point.north() - falseNorth) / radius, (point.east() - falseEast) / radius);
        double sinh = Math.sinh(there[1]);
        double cosine = Math.cos(there[0]);
        double conformal = Math.sin(there[0]) / Math.hypot(sinh, cosine);
        return new Geodetic(
                Math.toDegrees(Math.atan(geographic(conformal))),
                centralMeridian + Math.toDegrees(Math.atan2(sinh, cosine)));
    }

    private static double[] series(double[] coefficients, double xi, double eta) {
        double north = xi;
        double east = eta;
        for (int j = 1; j <= coefficients.length; j++) {
            north += coefficients[j - 1] * Math.sin(2 * j * xi) * Math.cosh(2 * j * eta);
            east += coefficients[j - 1] * Math.cos(2 * j * xi) * Math.sinh(2 * j * eta);
        }
        return new double[] {north, east};
    }

    private double conformal(double latitude) {
        return Math.atan(conformalTangent(Math.tan(latitude)));
    }

    private double conformalTangent(double tangent) {
        double secant = Math.hypot(1, tangent);
        double sigma = Math.sinh(eccentricity * atanh(eccentricity * tangent / secant));
        return tangent * Math.hypot(1, sigma) - sigma * secant;
    }

    /** {@return the tangent of the latitude whose conformal latitude has this tangent, by Newton's method} */
    private double geographic(double conformal) {
        double squared = eccentricity * eccentricity;
        double tangent = conformal;
        for (int i = 0; i < NEWTON_STEPS; i++) {
            double reached = conformalTangent(tangent);
            tangent += (conformal - reached)
                    / Math.hypot(1, reached)
                    * (1 + (1 - squared) * tangent * tangent)
                    / ((1 - squared) * Math.hypot(1, tangent));
        }
        return tangent;
    }

    private static double atanh(double x) {
        return Math.log((1 + x) / (1 - x)) / 2;
    }
}

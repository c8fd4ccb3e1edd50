package org.ouzelbook.stats.simulate.skerra;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * Draws a river that meanders.
 *
 * <p>Its direction swings about a valley like a sine of the distance along it: the sine-generated curve of Langbein and
 * Leopold (1966), U.S. Geological Survey Professional Paper 422-H. Swing and wavelength drift on the way.
 */
final class Meander {
    private static final double STEP_METRES = 40;
    private static final double METRES_PER_DEGREE = 111_270;
    private static final double DEGREES_TO_MICRO = 1e6;

    private Meander() {}

    /**
     * {@return the line from its mouth to its source, to the sixth decimal of a degree}
     *
     * @param mouth its first point
     * @param lengthMetres about how long it is
     * @param headings directions of the valley from the mouth up, in degrees from north, evenly spaced
     */
    static List<GeoPoint> line(GeoPoint mouth, double lengthMetres, List<Double> headings, Draws draws) {
        List<GeoPoint> points = new ArrayList<>();
        double latitude = mouth.latitude();
        double longitude = mouth.longitude();
        double phase = draws.between(0, 2 * StrictMath.PI);
        double swing = 0.75;
        double wavelength = 620;
        int steps = (int) Math.round(lengthMetres / STEP_METRES);
        points.add(mouth);
        for (int i = 1; i <= steps; i++) {
            swing = Math.min(1.15, Math.max(0.3, swing + draws.normal(0, 0.05)));
            wavelength = Math.min(950, Math.max(380, wavelength + draws.normal(0, 18)));
            phase += 2 * StrictMath.PI * STEP_METRES / wavelength;
            double heading = StrictMath.toRadians(valley(headings, (double) i / steps)) + swing * StrictMath.sin(phase);
            latitude += STEP_METRES * StrictMath.cos(heading) / METRES_PER_DEGREE;
            longitude += STEP_METRES
                    * StrictMath.sin(heading)
                    / (METRES_PER_DEGREE * StrictMath.cos(StrictMath.toRadians(latitude)));
            points.add(new GeoPoint(rounded(latitude), rounded(longitude)));
        }
        return points;
    }

    private static double valley(List<Double> headings, double share) {
        double at = share * (headings.size() - 1);
        int below = Math.min((int) at, headings.size() - 2);
        return headings.get(below) + (at - below) * (headings.get(below + 1) - headings.get(below));
    }

    private static double rounded(double degrees) {
        return Math.round(degrees * DEGREES_TO_MICRO) / DEGREES_TO_MICRO;
    }
}

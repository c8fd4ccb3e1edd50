package org.ouzelbook.tracker.domain;

/**
 * A point on the ground, WGS84.
 *
 * @param latitude degrees north, −90 to 90
 * @param longitude degrees east, −180 to 180
 */
public record GeoPoint(double latitude, double longitude) {
    /**
     * Checks the coordinates.
     *
     * @throws IllegalArgumentException if one is out of range or NaN
     */
    public GeoPoint {
        if (!(latitude >= -90 && latitude <= 90)) {
            throw new IllegalArgumentException("Latitude must lie between -90 and 90 degrees, but was " + latitude);
        }
        if (!(longitude >= -180 && longitude <= 180)) {
            throw new IllegalArgumentException("Longitude must lie between -180 and 180 degrees, but was " + longitude);
        }
    }
}

package org.ouzelbook.tracker.place;

/**
 * How near to the river a point must lie, and how well a place is known when nobody wrote it down.
 *
 * @param acceptMetres a point on the ground at most this far from the line is taken, in metres
 * @param askMetres one at most this far is asked about, in metres; one farther off is held back; not below
 *     {@code acceptMetres}
 * @param landmarkMetres uncertainty of a place told by a landmark, in metres; positive
 * @param gpsMetres uncertainty of coordinates that came without an accuracy, in metres; positive
 */
public record PlaceSettings(double acceptMetres, double askMetres, double landmarkMetres, double gpsMetres) {
    /**
     * The usual limits: take up to 50 m, ask up to 250 m, landmark 20 m (common practice, no source); coordinates 30 m (A. D.
     * Chapman and J. R. Wieczorek 2020, Georeferencing Best Practices, GBIF Secretariat: a receiver of unknown accuracy).
     */
    public static final PlaceSettings USUAL = new PlaceSettings(50, 250, 20, 30);

    /**
     * Checks the order and the signs.
     *
     * @throws IllegalArgumentException if a limit is negative or out of order, or an uncertainty is not positive
     */
    public PlaceSettings {
        if (!(acceptMetres >= 0 && askMetres >= acceptMetres)) {
            throw new IllegalArgumentException(
                    "Limits must be 0 <= accept <= ask, but were " + acceptMetres + " and " + askMetres);
        }
        if (!(landmarkMetres > 0 && gpsMetres > 0)) {
            throw new IllegalArgumentException("Uncertainties must be positive");
        }
    }
}

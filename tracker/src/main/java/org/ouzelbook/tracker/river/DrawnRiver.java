package org.ouzelbook.tracker.river;

import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * A river as somebody drew it: pieces of line in any order and direction.
 *
 * @param name its name; not blank
 * @param mouthOn the name of the river that it joins, if the drawing says
 * @param kmOrigin river km of its lower end; 0 where the drawing says nothing; finite and not negative
 * @param pieces the pieces, each of one point or more
 * @param walked whether it is the track of a walk, whose direction says nothing of the water's
 * @param source where it came from, such as a file name
 */
public record DrawnRiver(
        String name,
        Optional<String> mouthOn,
        double kmOrigin,
        List<List<GeoPoint>> pieces,
        boolean walked,
        String source) {
    /**
     * Copies the pieces and checks the name and the origin.
     *
     * @throws IllegalArgumentException if the name is blank, or the origin is negative or not finite
     */
    public DrawnRiver {
        pieces = pieces.stream().map(List::copyOf).toList();
        if (name.isBlank()) {
            throw new IllegalArgumentException("A river needs a name");
        }
        if (!(kmOrigin >= 0 && kmOrigin < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("The origin must be finite and >= 0 km, but was " + kmOrigin);
        }
    }
}

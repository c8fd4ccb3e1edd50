package org.ouzelbook.tracker.river;

import java.util.Optional;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * A place on a river's line that is nearest to a point on the ground.
 *
 * @param chainage distance from the river's mouth
 * @param point the place on the line
 * @param offsetMetres how far the point on the ground lies from it, in metres
 * @param beyond the end of the line past which the point lies; empty where it lies beside the line
 */
public record Snap(Chainage chainage, GeoPoint point, double offsetMetres, Optional<End> beyond) {
    /** An end of a river's line. */
    public enum End {
        /** The end nearer the mouth. */
        LOWER,
        /** The end nearer the source. */
        UPPER
    }
}

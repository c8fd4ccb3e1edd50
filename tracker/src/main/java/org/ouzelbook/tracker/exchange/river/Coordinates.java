package org.ouzelbook.tracker.exchange.river;

import java.util.Optional;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;

/**
 * Two numbers of a file taken as degrees, or what is wrong with them.
 *
 * @param point the point; empty if the numbers are no degrees
 * @param problem what is wrong
 */
record Coordinates(Optional<GeoPoint> point, Optional<Message> problem) {

    static Coordinates of(double longitude, double latitude, String file, Message where) {
        if (Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180) {
            return new Coordinates(Optional.of(new GeoPoint(latitude, longitude)), Optional.empty());
        }
        String key = "river.file.noDegrees";
        if (Math.abs(latitude) > 1000 || Math.abs(longitude) > 1000) {
            key = "river.file.metres";
        } else if (Math.abs(longitude) <= 90 && Math.abs(latitude) <= 180) {
            key = "river.file.swapped";
        }
        String numbers = longitude + ", " + latitude;
        return new Coordinates(Optional.empty(), Optional.of(Message.of(key, file, where, numbers)));
    }
}

package org.ouzelbook.tracker.exchange.trip;

import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * A track as a file tells it.
 *
 * @param line the line of the file that it begins in
 * @param name its name; blank if none
 * @param segments its points, segment by segment
 * @param start the time of its first point that has one, as written
 * @param end the time of its last point that has one
 */
record Track(int line, String name, List<List<GeoPoint>> segments, Optional<String> start, Optional<String> end) {
    Track {
        segments = segments.stream().map(List::copyOf).toList();
    }

    /** {@return whether none of its points tells where it is} */
    boolean isNowhere() {
        return segments.stream().allMatch(List::isEmpty);
    }
}

package org.ouzelbook.tracker.exchange.export;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * Something on a map.
 *
 * @param layer what sort of thing it is: {@code rivers}, {@code landmarks} …
 * @param name what it is called
 * @param points one point, or the points of a line
 * @param properties what else is told of it, in order: texts, numbers and days
 */
public record Feature(String layer, String name, List<GeoPoint> points, Map<String, Object> properties) {
    /**
     * Copies the points and properties.
     *
     * @throws IllegalArgumentException if there is no point
     */
    public Feature {
        points = List.copyOf(points);
        properties = Collections.unmodifiableMap(new LinkedHashMap<>(properties));
        if (points.isEmpty()) {
            throw new IllegalArgumentException(name + " has no place");
        }
    }

    /** {@return whether it is a point and no line} */
    boolean isPoint() {
        return points.size() == 1;
    }
}

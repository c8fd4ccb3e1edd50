package org.ouzelbook.tracker.domain;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;

/**
 * One version of the line of a river, from its lower end upstream. A corrected line is a new version; the old one stays,
 * because old records were measured on it.
 *
 * @param riverId the {@link River}
 * @param version counts from 1
 * @param lowerEnd chainage of the first point: 0 m where the line starts at the mouth
 * @param points the line going upstream; two or more
 * @param source where the line came from, such as a file name
 */
public record RiverLine(UUID riverId, int version, Chainage lowerEnd, List<GeoPoint> points, String source)
        implements Entry {
    /**
     * Copies the points and checks their number.
     *
     * @throws IllegalArgumentException if there are fewer than two points, or the version is below 1
     */
    public RiverLine {
        points = List.copyOf(points);
        if (points.size() < 2) {
            throw new IllegalArgumentException("A river line needs at least two points, but had " + points.size());
        }
        if (version < 1) {
            throw new IllegalArgumentException("Line versions count from 1, but was " + version);
        }
    }

    /** {@return its key, made from the river's and the version, so the same version has the same key in every book} */
    @Override
    public UUID id() {
        return UUID.nameUUIDFromBytes((riverId + " line " + version).getBytes(StandardCharsets.UTF_8));
    }
}

package org.ouzelbook.tracker.river;

import java.util.Optional;
import java.util.stream.IntStream;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.GeometryFactory;
import org.locationtech.jts.operation.valid.IsSimpleOp;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.RiverLine;

/**
 * Where a river line crosses or touches itself, as no river does: a point out of place, or a piece drawn twice. Whether lines
 * cross does not depend on the projection, so degrees will do.
 */
public final class SelfCrossing {
    private SelfCrossing() {}

    /**
     * {@return the chainage of one place where the line meets itself; empty if it does not}
     *
     * @param line a river line
     */
    public static Optional<Chainage> of(RiverLine line) {
        double first = line.points().get(0).longitude();
        Coordinate[] path = line.points().stream()
                .map(point -> new Coordinate(unwrapped(point.longitude(), first), point.latitude()))
                .toArray(Coordinate[]::new);
        boolean moves = IntStream.range(1, path.length).anyMatch(i -> !path[i].equals2D(path[0]));
        if (!moves) {
            return Optional.empty();
        }
        IsSimpleOp simple = new IsSimpleOp(new GeometryFactory().createLineString(path));
        if (simple.isSimple()) {
            return Optional.empty();
        }
        Coordinate meeting = simple.getNonSimpleLocation();
        GeoPoint place = new GeoPoint(meeting.y, Math.IEEEremainder(meeting.x, 360));
        return Optional.of(MeasuredLine.of(line).nearest(place).chainage());
    }

    /** The longitude beside the first one, also across the antimeridian. */
    private static double unwrapped(double longitude, double first) {
        return longitude - 360 * Math.rint((longitude - first) / 360);
    }
}

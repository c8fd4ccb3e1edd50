package org.ouzelbook.tracker.river;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.locationtech.jts.algorithm.CGAlgorithms3D;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.locationtech.jts.math.Vector3D;
import org.ouzelbook.tracker.domain.GeoPoint;

/**
 * The straight pieces of a line in space, of which an index (JTS) finds those near a point.
 *
 * <p>The index is flat: it sees space from straight above the middle of the line. Seen so, nothing looks farther apart than
 * it is; therefore no piece is missed, at a pole or the antimeridian neither.
 */
final class Pieces {
    private final STRtree index = new STRtree();
    private final Coordinate east;
    private final Coordinate north;

    private Pieces(List<GeoPoint> vertices) {
        GeoPoint middle = vertices.get(vertices.size() / 2);
        double latitude = Math.toRadians(middle.latitude());
        double longitude = Math.toRadians(middle.longitude());
        this.east = new Coordinate(-Math.sin(longitude), Math.cos(longitude), 0);
        this.north = new Coordinate(
                -Math.sin(latitude) * Math.cos(longitude),
                -Math.sin(latitude) * Math.sin(longitude),
                Math.cos(latitude));
        List<Coordinate> space = vertices.stream().map(Earth::inSpace).toList();
        for (int i = 0; i + 1 < space.size(); i++) {
            Piece piece = new Piece(i, space.get(i), space.get(i + 1));
            index.insert(new Envelope(flat(piece.from), flat(piece.to)), piece);
        }
        index.build();
    }

    /** {@return the pieces between vertices in their order; two vertices or more} */
    static Pieces between(List<GeoPoint> vertices) {
        return new Pieces(vertices);
    }

    private Coordinate flat(Coordinate place) {
        return new Coordinate(Vector3D.dot(place, east), Vector3D.dot(place, north));
    }

    /** {@return the piece nearest to the point} */
    Piece nearest(Coordinate point) {
        return (Piece) index.nearestNeighbour(
                new Envelope(flat(point)), point, (piece, sought) -> ((Piece) piece.getItem()).distance(point));
    }

    /** {@return every piece within so many metres of the point, the nearest first} */
    List<Piece> within(Coordinate point, double metres) {
        Envelope around = new Envelope(flat(point));
        around.expandBy(metres);
        List<Piece> near = new ArrayList<>();
        index.query(around, found -> {
            Piece piece = (Piece) found;
            if (piece.distance(point) <= metres) {
                near.add(piece);
            }
        });
        near.sort(Comparator.<Piece>comparingDouble(piece -> piece.distance(point))
                .thenComparing(Piece::number));
        return near;
    }

    /** One piece; pieces count from 0 at the lower end. */
    record Piece(int number, Coordinate from, Coordinate to) {
        /** {@return how far the point lies from the piece, in metres} */
        double distance(Coordinate point) {
            return CGAlgorithms3D.distancePointSegment(point, from, to);
        }

        /** {@return where on the piece the point's nearest place lies: 0 at its start, 1 at its end} */
        double share(Coordinate point) {
            return Math.max(0, Math.min(1, unboundedShare(point)));
        }

        /** {@return the share on the piece drawn on without end: below 0 and above 1 past its ends} */
        double unboundedShare(Coordinate point) {
            double squaredLength = Vector3D.dot(from, to, from, to);
            return squaredLength == 0 ? 0 : Vector3D.dot(from, to, from, point) / squaredLength;
        }
    }
}

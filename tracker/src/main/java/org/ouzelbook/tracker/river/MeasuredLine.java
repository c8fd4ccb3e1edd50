package org.ouzelbook.tracker.river;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.locationtech.jts.geom.Coordinate;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.river.Pieces.Piece;

/**
 * A river's line with its measure: how long it is, which point lies at a chainage, and which place on it is nearest to a
 * point on the ground.
 *
 * <p>Lengths are geodesic on WGS84 (GeographicLib; C. F. F. Karney 2013, J. Geod. 87:43–55). Long segments are cut into
 * pieces of at most 500 m, between which the earth bulges by 5 mm; the nearest place is sought in space, so a line may cross
 * the antimeridian or pass near a pole. Within 10 km of the line the chainage found is good to a centimetre.
 */
public final class MeasuredLine {
    private static final double PIECE_METRES = 500;

    private final List<GeoPoint> vertices;
    private final double[] chainages;
    private final Pieces pieces;

    private MeasuredLine(List<GeoPoint> vertices, double lowerEnd) {
        this.vertices = vertices;
        this.chainages = new double[vertices.size()];
        this.pieces = Pieces.between(vertices);
        chainages[0] = lowerEnd;
        for (int i = 1; i < vertices.size(); i++) {
            chainages[i] = chainages[i - 1] + Earth.distance(vertices.get(i - 1), vertices.get(i));
        }
    }

    /**
     * {@return the measured line of a river}
     *
     * @param line a version of a river's line
     */
    public static MeasuredLine of(RiverLine line) {
        return new MeasuredLine(cut(line.points()), line.lowerEnd().metres());
    }

    /**
     * {@return the geodesic length of a line of points, in metres}
     *
     * @param points points in their order
     */
    public static double length(List<GeoPoint> points) {
        double length = 0;
        for (int i = 1; i < points.size(); i++) {
            length += Earth.distance(points.get(i - 1), points.get(i));
        }
        return length;
    }

    static MeasuredLine of(List<GeoPoint> points) {
        return new MeasuredLine(cut(points), 0);
    }

    private static List<GeoPoint> cut(List<GeoPoint> points) {
        List<GeoPoint> cut = new ArrayList<>();
        cut.add(points.get(0));
        for (int i = 1; i < points.size(); i++) {
            GeoPoint from = points.get(i - 1);
            GeoPoint to = points.get(i);
            int parts = (int) Math.ceil(Earth.distance(from, to) / PIECE_METRES);
            for (int part = 1; part < parts; part++) {
                cut.add(Earth.between(from, to, (double) part / parts));
            }
            cut.add(to);
        }
        return List.copyOf(cut);
    }

    /** {@return the part of the river that the line covers} */
    public Stretch extent() {
        return new Stretch(new Chainage(chainages[0]), new Chainage(chainages[chainages.length - 1]));
    }

    /** {@return the length of the line, in metres} */
    public double length() {
        return extent().length();
    }

    /**
     * {@return the point on the line at this chainage; empty beyond the ends of the line}
     *
     * @param chainage distance from the river's mouth
     */
    public Optional<GeoPoint> point(Chainage chainage) {
        if (!extent().contains(chainage)) {
            return Optional.empty();
        }
        int found = Arrays.binarySearch(chainages, chainage.metres());
        if (found >= 0) {
            return Optional.of(vertices.get(found));
        }
        int piece = -found - 2;
        double share = (chainage.metres() - chainages[piece]) / (chainages[piece + 1] - chainages[piece]);
        return Optional.of(Earth.between(vertices.get(piece), vertices.get(piece + 1), share));
    }

    /**
     * {@return the place on the line that is nearest to a point on the ground}
     *
     * @param ground any point
     */
    public Snap nearest(GeoPoint ground) {
        Coordinate point = Earth.inSpace(ground);
        return snap(pieces.nearest(point), ground, point);
    }

    /**
     * {@return every place on the line that may be the nearest one, the nearest first: more than one at a tight bend, where
     * two places lie far apart along the water and about as near to the point}
     *
     * @param ground any point
     * @param toleranceMetres how much farther than the nearest place a candidate may lie, in metres: the accuracy of the
     *     point; not negative
     */
    public List<Snap> candidates(GeoPoint ground, double toleranceMetres) {
        Snap nearest = nearest(ground);
        double radius = nearest.offsetMetres() + toleranceMetres;
        Coordinate point = Earth.inSpace(ground);
        List<Snap> candidates = new ArrayList<>(List.of(nearest));
        for (Piece piece : pieces.within(point, radius)) {
            Chainage here = chainage(piece, piece.share(point));
            if (candidates.stream().allMatch(other -> other.chainage().distanceTo(here) > 2 * radius)) {
                candidates.add(snap(piece, ground, point));
            }
        }
        return List.copyOf(candidates);
    }

    private Chainage chainage(Piece piece, double share) {
        double from = chainages[piece.number()];
        return new Chainage(from + share * (chainages[piece.number() + 1] - from));
    }

    private Snap snap(Piece piece, GeoPoint ground, Coordinate point) {
        double share = piece.share(point);
        GeoPoint from = vertices.get(piece.number());
        GeoPoint there = share == 0 ? from : Earth.between(from, vertices.get(piece.number() + 1), share);
        return new Snap(chainage(piece, share), there, Earth.distance(ground, there), beyond(piece, point));
    }

    private Optional<Snap.End> beyond(Piece piece, Coordinate point) {
        double unbounded = piece.unboundedShare(point);
        if (piece.number() == 0 && unbounded < 0) {
            return Optional.of(Snap.End.LOWER);
        }
        return piece.number() == chainages.length - 2 && unbounded > 1 ? Optional.of(Snap.End.UPPER) : Optional.empty();
    }
}

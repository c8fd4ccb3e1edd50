package org.ouzelbook.tracker.river;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Stretch;

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
    private final SegmentTree tree;

    private MeasuredLine(List<GeoPoint> vertices, double lowerEnd) {
        this.vertices = vertices;
        this.chainages = new double[vertices.size()];
        double[] space = new double[3 * vertices.size()];
        chainages[0] = lowerEnd;
        for (int i = 0; i < vertices.size(); i++) {
            if (i > 0) {
                chainages[i] = chainages[i - 1] + Earth.distance(vertices.get(i - 1), vertices.get(i));
            }
            System.arraycopy(Earth.inSpace(vertices.get(i)), 0, space, 3 * i, 3);
        }
        this.tree = new SegmentTree(space);
    }

    /**
     * {@return the measured line of a river}
     *
     * @param line a version of a river's line
     */
    public static MeasuredLine of(RiverLine line) {
        return new MeasuredLine(pieces(line.points()), line.lowerEnd().metres());
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
        return new MeasuredLine(pieces(points), 0);
    }

    private static List<GeoPoint> pieces(List<GeoPoint> points) {
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
        double[] point = Earth.inSpace(ground);
        Foot[] best = new Foot[1];
        tree.nearestFirst(point, (piece, share, squared) -> {
            best[0] = new Foot(piece, share, squared);
            return squared;
        });
        return snap(best[0], ground, point);
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
        double[] point = Earth.inSpace(ground);
        List<Foot> feet = new ArrayList<>();
        tree.near(point, radius * radius, (piece, share, squared) -> {
            feet.add(new Foot(piece, share, squared));
            return Double.POSITIVE_INFINITY;
        });
        feet.sort(Comparator.comparingDouble(Foot::squaredDistance));
        List<Snap> candidates = new ArrayList<>(List.of(nearest));
        for (Foot foot : feet) {
            Chainage here = chainage(foot);
            if (candidates.stream().allMatch(other -> other.chainage().distanceTo(here) > 2 * radius)) {
                candidates.add(snap(foot, ground, point));
            }
        }
        return List.copyOf(candidates);
    }

    private record Foot(int piece, double share, double squaredDistance) {}

    private Chainage chainage(Foot foot) {
        double from = chainages[foot.piece];
        return new Chainage(from + foot.share * (chainages[foot.piece + 1] - from));
    }

    private Snap snap(Foot foot, GeoPoint ground, double[] point) {
        GeoPoint there = foot.share == 0
                ? vertices.get(foot.piece)
                : Earth.between(vertices.get(foot.piece), vertices.get(foot.piece + 1), foot.share);
        return new Snap(chainage(foot), there, Earth.distance(ground, there), beyond(foot, point));
    }

    private Optional<Snap.End> beyond(Foot foot, double[] point) {
        double unbounded = tree.unboundedShare(foot.piece, point);
        if (foot.piece == 0 && unbounded < 0) {
            return Optional.of(Snap.End.LOWER);
        }
        return foot.piece == chainages.length - 2 && unbounded > 1 ? Optional.of(Snap.End.UPPER) : Optional.empty();
    }
}

package org.ouzelbook.ui.app.leak;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.locationtech.jts.geom.Coordinate;
import org.locationtech.jts.geom.Envelope;
import org.locationtech.jts.index.strtree.STRtree;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.exchange.export.PublicGrid;
import org.ouzelbook.tracker.river.MeasuredLine;

/**
 * Where the nests of a book are, and which places near them anybody may know: landmarks, kick samples, and the limits and middles of
 * public cells. Distances are in metres on a sphere; at the few hundred metres that matter here that is good to one percent.
 */
final class NestPlaces {
    /** A point nearer to a nest than half a public cell tells more than the cell does. */
    static final double NEAR_METRES = PublicGrid.CELL_METRES / 2;

    private static final double METRES_PER_DEGREE = 111_195;

    /** Public lines are drawn with a point at least so often. */
    private static final double STEP_METRES = 50;

    /** Public stretches of neighbouring cells are not longer than this many. */
    private static final int LONGEST_STRETCH = 6;

    /**
     * One nest.
     *
     * @param label what it is called; private
     * @param riverId its river
     * @param chainage where on it
     * @param point where on the ground
     */
    record Nest(String label, UUID riverId, Chainage chainage, GeoPoint point) {}

    private final List<Nest> nests = new ArrayList<>();
    private final STRtree nestTree = new STRtree();
    private final STRtree publicTree = new STRtree();
    private final STRtree lineTree = new STRtree();
    private final NavigableSet<Double> publicKm = new TreeSet<>();

    NestPlaces(SurveyRecords records) {
        records.nests()
                .forEach(nest -> point(
                                records, nest.place().riverId(), nest.place().chainage())
                        .ifPresent(point -> {
                            Nest place = new Nest(
                                    nest.label(),
                                    nest.place().riverId(),
                                    nest.place().chainage(),
                                    point);
                            nests.add(place);
                            nestTree.insert(new Envelope(coordinate(point)), place);
                        }));
        records.landmarks().forEach(landmark -> addPublic(records, landmark.place()));
        records.kickSamples().forEach(sample -> addPublic(records, sample.place()));
        records.reaches().forEach(reach -> {
            addPublic(records, reach.riverId(), reach.stretch().lower());
            addPublic(records, reach.riverId(), reach.stretch().upper());
        });
        records.rivers().rivers().forEach(river -> addCells(records, river));
        nestTree.build();
        publicTree.build();
        lineTree.build();
    }

    private static Optional<GeoPoint> point(SurveyRecords records, UUID riverId, Chainage chainage) {
        return records.rivers().measuredLine(riverId).flatMap(line -> line.point(chainage));
    }

    private void addPublic(SurveyRecords records, Place place) {
        addPublic(records, place.riverId(), place.chainage());
    }

    private void addPublic(SurveyRecords records, UUID riverId, Chainage chainage) {
        publicKm.add(chainage.km());
        point(records, riverId, chainage).ifPresent(point -> insert(publicTree, point));
    }

    private static void insert(STRtree tree, GeoPoint point) {
        tree.insert(new Envelope(coordinate(point)), point);
    }

    private void addCells(SurveyRecords records, River river) {
        Optional<MeasuredLine> line = records.rivers().measuredLine(river.id());
        if (line.isEmpty()) {
            return;
        }
        records.rivers().line(river.id()).ifPresent(drawn -> drawn.points().forEach(point -> insert(lineTree, point)));
        List<Stretch> cells =
                cells(new PublicGrid(records.rivers()), river.id(), line.get().extent());
        for (int first = 0; first < cells.size(); first++) {
            for (int last = first; last < Math.min(cells.size(), first + LONGEST_STRETCH); last++) {
                Stretch stretch =
                        new Stretch(cells.get(first).lower(), cells.get(last).upper());
                addPublic(records, river.id(), stretch.lower());
                addPublic(records, river.id(), stretch.upper());
                addPublic(records, river.id(), stretch.middle());
                steps(line.get(), stretch);
            }
        }
    }

    private static List<Stretch> cells(PublicGrid grid, UUID riverId, Stretch extent) {
        List<Stretch> cells = new ArrayList<>();
        for (Stretch cell = grid.cell(riverId, extent.lower());
                cells.isEmpty() || !cell.equals(cells.get(cells.size() - 1));
                cell = grid.cell(riverId, cell.upper())) {
            cells.add(cell);
        }
        return cells;
    }

    private void steps(MeasuredLine line, Stretch stretch) {
        int steps = (int) Math.ceil(Math.max(1, stretch.length() / STEP_METRES));
        for (int i = 0; i <= steps; i++) {
            double metres = stretch.lower().metres() + stretch.length() * i / steps;
            line.point(new Chainage(metres)).ifPresent(point -> insert(lineTree, point));
        }
    }

    private static Coordinate coordinate(GeoPoint point) {
        return new Coordinate(point.longitude(), point.latitude());
    }

    List<Nest> nests() {
        return nests;
    }

    /** {@return the whole degrees of longitude in which nests lie} */
    Set<Double> longitudes() {
        return nests.stream().map(nest -> Math.floor(nest.point().longitude())).collect(Collectors.toSet());
    }

    /** {@return the nest nearest to a point, if one is as near as this} */
    Optional<Nest> near(double latitude, double longitude, double metres) {
        return nearest(nestTree, latitude, longitude, metres).map(Nest.class::cast);
    }

    /** {@return whether anybody may know the point for itself} */
    boolean isPublic(double latitude, double longitude, double metres) {
        return nearest(publicTree, latitude, longitude, metres).isPresent();
    }

    /** {@return whether the point is one of those by which rivers and public stretches are drawn} */
    boolean isOnPublicLine(double latitude, double longitude, double metres) {
        return isPublic(latitude, longitude, metres)
                || nearest(lineTree, latitude, longitude, metres).isPresent();
    }

    private static Optional<Object> nearest(STRtree tree, double latitude, double longitude, double metres) {
        double high = metres / METRES_PER_DEGREE;
        double wide = high / Math.max(0.01, Math.cos(Math.toRadians(latitude)));
        Object best = null;
        double least = metres;
        for (Object found :
                tree.query(new Envelope(longitude - wide, longitude + wide, latitude - high, latitude + high))) {
            GeoPoint point = found instanceof Nest nest ? nest.point() : (GeoPoint) found;
            double distance = distance(latitude, longitude, point.latitude(), point.longitude());
            if (distance <= least) {
                least = distance;
                best = found;
            }
        }
        return Optional.ofNullable(best);
    }

    /** {@return the distance of two points that are near each other, in metres} */
    static double distance(double latitude, double longitude, double otherLatitude, double otherLongitude) {
        double north = (latitude - otherLatitude) * METRES_PER_DEGREE;
        double east = (longitude - otherLongitude) * METRES_PER_DEGREE * Math.cos(Math.toRadians(latitude));
        return Math.hypot(north, east);
    }

    /** {@return whether a river km stands for a landmark, a sample or a public limit, as far as it was written out} */
    boolean isPublicKm(double km, double tolerance) {
        return !publicKm.subSet(km - tolerance, true, km + tolerance, true).isEmpty();
    }
}

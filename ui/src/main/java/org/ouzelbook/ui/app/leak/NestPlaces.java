package org.ouzelbook.ui.app.leak;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.NavigableMap;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
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
    private final Set<Double> longitudes;
    private final STRtree nestTree = new STRtree();
    private final NavigableMap<Double, Nest> nestsByKm = new TreeMap<>();
    private final STRtree publicTree = new STRtree();
    private final STRtree lineTree = new STRtree();
    private final NavigableSet<Double> publicKm = new TreeSet<>();

    NestPlaces(SurveyRecords records) {
        Set<GeoPoint> nestPoints = new HashSet<>();
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
                            nestsByKm.putIfAbsent(place.chainage().km(), place);
                            if (nestPoints.add(point)) {
                                nestTree.insert(new Envelope(coordinate(point)), place);
                            }
                        }));
        longitudes =
                nestPoints.stream().map(point -> Math.floor(point.longitude())).collect(Collectors.toUnmodifiableSet());
        Set<GeoPoint> known = new HashSet<>();
        publicSpots(records).forEach(spot -> {
            publicKm.add(spot.chainage().km());
            point(records, spot.riverId(), spot.chainage())
                    .filter(known::add)
                    .ifPresent(point -> insert(publicTree, point));
        });
        records.rivers().rivers().forEach(river -> addLines(records, river));
        nestTree.build();
        publicTree.build();
        lineTree.build();
    }

    private static Optional<GeoPoint> point(SurveyRecords records, UUID riverId, Chainage chainage) {
        return records.rivers().measuredLine(riverId).flatMap(line -> line.point(chainage));
    }

    /** A place on a river. */
    private record Spot(UUID riverId, Chainage chainage) {
        Spot(Place place) {
            this(place.riverId(), place.chainage());
        }
    }

    /** {@return every place that anybody may know, each once: samples are taken at the same places year after year} */
    private static Set<Spot> publicSpots(SurveyRecords records) {
        Set<Spot> spots = new LinkedHashSet<>();
        records.landmarks().forEach(landmark -> spots.add(new Spot(landmark.place())));
        records.kickSamples().forEach(sample -> spots.add(new Spot(sample.place())));
        records.reaches().forEach(reach -> {
            spots.add(new Spot(reach.riverId(), reach.stretch().lower()));
            spots.add(new Spot(reach.riverId(), reach.stretch().upper()));
        });
        for (River river : records.rivers().rivers()) {
            for (Stretch stretch : publicStretches(records, river.id())) {
                spots.add(new Spot(river.id(), stretch.lower()));
                spots.add(new Spot(river.id(), stretch.upper()));
                spots.add(new Spot(river.id(), stretch.middle()));
            }
        }
        return spots;
    }

    private static void insert(STRtree tree, GeoPoint point) {
        tree.insert(new Envelope(coordinate(point)), point);
    }

    /** {@return the stretches of neighbouring cells of a river that has a line} */
    private static List<Stretch> publicStretches(SurveyRecords records, UUID riverId) {
        List<Stretch> cells = records.rivers()
                .measuredLine(riverId)
                .map(line -> cells(new PublicGrid(records.rivers()), riverId, line.extent()))
                .orElse(List.of());
        List<Stretch> stretches = new ArrayList<>();
        for (int first = 0; first < cells.size(); first++) {
            for (int last = first; last < Math.min(cells.size(), first + LONGEST_STRETCH); last++) {
                stretches.add(
                        new Stretch(cells.get(first).lower(), cells.get(last).upper()));
            }
        }
        return stretches;
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

    /** Takes up the points by which a river and its public stretches are drawn. Most stretches share most of their points. */
    private void addLines(SurveyRecords records, River river) {
        records.rivers().line(river.id()).ifPresent(drawn -> drawn.points().forEach(point -> insert(lineTree, point)));
        records.rivers().measuredLine(river.id()).ifPresent(line -> {
            Set<Long> millimetres = new HashSet<>();
            for (Stretch stretch : publicStretches(records, river.id())) {
                int steps = (int) Math.ceil(Math.max(1, stretch.length() / STEP_METRES));
                for (int i = 0; i <= steps; i++) {
                    double metres = stretch.lower().metres() + stretch.length() * i / steps;
                    if (millimetres.add(Math.round(metres * 1000))) {
                        line.point(new Chainage(metres)).ifPresent(point -> insert(lineTree, point));
                    }
                }
            }
        });
    }

    private static Coordinate coordinate(GeoPoint point) {
        return new Coordinate(point.longitude(), point.latitude());
    }

    List<Nest> nests() {
        return nests;
    }

    /** {@return the whole degrees of longitude in which nests lie} */
    Set<Double> longitudes() {
        return longitudes;
    }

    /** {@return the nest nearest to a point, if one is as near as this} */
    Optional<Nest> near(double latitude, double longitude, double metres) {
        return nearest(nestTree, latitude, longitude, metres).map(Nest.class::cast);
    }

    /** {@return whether a nest lies so near to a place along the water that the place tells more than a public cell does} */
    boolean hasNestAt(Place place) {
        return nests.stream()
                .anyMatch(nest -> nest.riverId().equals(place.riverId())
                        && Math.abs(nest.chainage().metres() - place.chainage().metres()) < NEAR_METRES);
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
        double shrunk = Math.cos(Math.toRadians(latitude));
        double wide = high / Math.max(0.01, shrunk);
        Object best = null;
        double least = metres * metres;
        for (Object found :
                tree.query(new Envelope(longitude - wide, longitude + wide, latitude - high, latitude + high))) {
            GeoPoint point = found instanceof Nest nest ? nest.point() : (GeoPoint) found;
            double squared = squared(latitude - point.latitude(), longitude - point.longitude(), shrunk);
            if (squared <= least) {
                least = squared;
                best = found;
            }
        }
        return Optional.ofNullable(best);
    }

    /** {@return the distance of two points that are near each other, in metres} */
    static double distance(double latitude, double longitude, double otherLatitude, double otherLongitude) {
        return Math.sqrt(
                squared(latitude - otherLatitude, longitude - otherLongitude, Math.cos(Math.toRadians(latitude))));
    }

    /** The square of a distance, in metres, from differences in degrees; degrees of longitude are shrunk. */
    private static double squared(double ofLatitude, double ofLongitude, double shrunk) {
        double north = ofLatitude * METRES_PER_DEGREE;
        double east = ofLongitude * METRES_PER_DEGREE * shrunk;
        return north * north + east * east;
    }

    /** {@return a nest at a river km, as far as it was written out, whatever the river} */
    Optional<Nest> atKm(double km, double tolerance) {
        return nestsByKm.subMap(km - tolerance, true, km + tolerance, true).values().stream()
                .findFirst();
    }

    /** {@return whether a river km stands for a landmark, a sample or a public limit, as far as it was written out} */
    boolean isPublicKm(double km, double tolerance) {
        return !publicKm.subSet(km - tolerance, true, km + tolerance, true).isEmpty();
    }
}

package org.ouzelbook.tracker.exchange.darwin;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.river.MeasuredLine;
import org.ouzelbook.tracker.river.RiverNetwork;
import org.ouzelbook.tracker.river.Snap;

/**
 * Where on a river an event was, told by the line of its footprint or by its point.
 *
 * @param river the river that it lies along
 * @param stretch the water between the lowest and the highest place of its footprint; empty for a point
 */
record Footprint(River river, Optional<Stretch> stretch) {
    /** Farther from a river nothing on it was surveyed. Common practice, no source. */
    private static final double FARTHEST_METRES = 250;

    private static final int MOST_POINTS = 20_000;
    private static final Pattern POSITION =
            Pattern.compile("(-?\\d{1,3}(?:\\.\\d{1,15})?)\\s+(-?\\d{1,3}(?:\\.\\d{1,15})?)");

    /** {@return the river beside which all of an event lies; empty if none, or if the event has no place} */
    static Optional<Footprint> of(ArchiveEvent event, RiverNetwork rivers) {
        List<GeoPoint> line = line(event.value("footprintWKT"));
        List<GeoPoint> points = line.isEmpty()
                ? point(event.value("decimalLongitude"), event.value("decimalLatitude"))
                        .map(List::of)
                        .orElse(List.of())
                : line;
        return rivers.rivers().stream()
                .filter(river -> isNamed(river, event.value("waterBody")) || !isNamed(rivers, event))
                .map(river -> beside(river, points, rivers))
                .flatMap(Optional::stream)
                .min(Comparator.comparingDouble(Near::metres))
                .map(near -> new Footprint(near.river, line.size() < 2 ? Optional.empty() : Optional.of(near.stretch)));
    }

    private static boolean isNamed(River river, String name) {
        return river.name().strip().equalsIgnoreCase(name.strip());
    }

    private static boolean isNamed(RiverNetwork rivers, ArchiveEvent event) {
        return rivers.rivers().stream().anyMatch(river -> isNamed(river, event.value("waterBody")));
    }

    private record Near(River river, Stretch stretch, double metres) {}

    private static Optional<Near> beside(River river, List<GeoPoint> points, RiverNetwork rivers) {
        Optional<MeasuredLine> line = rivers.measuredLine(river.id());
        if (line.isEmpty() || points.isEmpty()) {
            return Optional.empty();
        }
        List<Snap> snaps = points.stream().map(line.get()::nearest).toList();
        double farthest = snaps.stream().mapToDouble(Snap::offsetMetres).max().orElseThrow();
        Comparator<Snap> upstream = Comparator.comparing(Snap::chainage);
        return farthest > FARTHEST_METRES
                ? Optional.empty()
                : Optional.of(new Near(
                        river,
                        new Stretch(
                                snaps.stream().min(upstream).orElseThrow().chainage(),
                                snaps.stream().max(upstream).orElseThrow().chainage()),
                        farthest));
    }

    private static List<GeoPoint> line(String text) {
        List<GeoPoint> points = new ArrayList<>();
        if (text.strip().toUpperCase(Locale.ROOT).matches("(?s)(MULTI)?LINESTRING.*")) {
            Matcher position = POSITION.matcher(text);
            while (position.find() && points.size() < MOST_POINTS) {
                point(position.group(1), position.group(2)).ifPresent(points::add);
            }
        }
        return points;
    }

    private static Optional<GeoPoint> point(String longitude, String latitude) {
        try {
            return Optional.of(new GeoPoint(Double.parseDouble(latitude), Double.parseDouble(longitude)));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}

package org.ouzelbook.tracker.exchange.darwin;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.exchange.export.Degrees;
import org.ouzelbook.tracker.exchange.export.Numbers;
import org.ouzelbook.tracker.exchange.export.PublicGrid;
import org.ouzelbook.tracker.exchange.export.Records;
import org.ouzelbook.tracker.river.MeasuredLine;

/**
 * How places are told: exactly in private; in public by the cell of the {@link PublicGrid}, of which a nest's is told in hundredths
 * of a degree. What is told depends on the cell alone, so that nothing can be narrowed down between a nest and the sightings around
 * it.
 */
final class ToldPlaces {
    private static final double STEP_METRES = 50;
    private static final double FOOTPRINT_STEP_METRES = 200;
    private static final double HUNDREDTHS = 100;
    private static final String DATUM = "EPSG:4326";

    private final Records records;
    private final Publication publication;
    private final PublicGrid grid;
    private final Map<Shown, Double> farthest = new HashMap<>();
    private final Map<GeoPoint, Double> farthestNest = new HashMap<>();

    /** By the water that they show: in public many walks cover the same whole kilometres. */
    private final Map<Water, String> footprints = new HashMap<>();

    private record Water(UUID riverId, Stretch stretch) {}

    private record Shown(UUID riverId, Stretch cell, GeoPoint point) {}

    ToldPlaces(Records records, Publication publication) {
        this.records = records;
        this.publication = publication;
        this.grid = new PublicGrid(records.rivers());
    }

    /** Tells where a bird was. */
    void bird(ArchiveRow row, Place place) {
        if (!row.isHeard()) {
            return;
        }
        river(row, place.riverId());
        if (publication.isPublic()) {
            Stretch cell = grid.cell(place.riverId(), place.chainage());
            grid.middle(place.riverId(), cell)
                    .ifPresent(point -> point(row, point, farthest(place.riverId(), cell, point)));
            row.with("dwc:verbatimLocality", km(cell))
                    .with("dwc:dataGeneralizations", publication.words().generalised())
                    .with("dwc:informationWithheld", publication.words().withheld());
        } else {
            exactly(row, place);
        }
    }

    /** Tells where a nest is: in public not even the river's name, nor by how far its kilometre reaches which of them it is. */
    void nest(ArchiveRow row, Place place) {
        if (!row.isHeard()) {
            return;
        }
        if (publication.isPublic()) {
            Stretch cell = grid.cell(place.riverId(), place.chainage());
            grid.middle(place.riverId(), cell)
                    .map(ToldPlaces::hundredths)
                    .ifPresent(point -> point(row, point, farthestNest(point)));
            row.with("dwc:dataGeneralizations", publication.words().generalisedNest())
                    .with("dwc:informationWithheld", publication.words().withheldNest());
        } else {
            river(row, place.riverId());
            exactly(row, place);
        }
    }

    /** Tells where something is that is no secret. */
    void openly(ArchiveRow row, Place place) {
        if (!row.isHeard()) {
            return;
        }
        river(row, place.riverId());
        exactly(row, place);
    }

    private void exactly(ArchiveRow row, Place place) {
        point(place).ifPresent(point -> point(row, point, place.uncertaintyMetres()));
        String bank = place.bank() == Bank.LEFT ? ", left bank" : place.bank() == Bank.RIGHT ? ", right bank" : "";
        row.with(
                "dwc:verbatimLocality",
                "km " + Numbers.text(Math.round(place.chainage().metres()) / 1000.0) + " from the mouth" + bank);
    }

    private Optional<GeoPoint> point(Place place) {
        return records.rivers().measuredLine(place.riverId()).flatMap(line -> line.point(place.chainage()));
    }

    private static void point(ArchiveRow row, GeoPoint point, double uncertaintyMetres) {
        row.with("dwc:decimalLatitude", Degrees.of(point.latitude()))
                .with("dwc:decimalLongitude", Degrees.of(point.longitude()))
                .with("dwc:geodeticDatum", DATUM)
                .with("dwc:coordinateUncertaintyInMeters", Math.max(1, Math.ceil(uncertaintyMetres)));
    }

    private static GeoPoint hundredths(GeoPoint point) {
        return new GeoPoint(
                Math.round(point.latitude() * HUNDREDTHS) / HUNDREDTHS,
                Math.round(point.longitude() * HUNDREDTHS) / HUNDREDTHS);
    }

    /** {@return how far the water of a cell lies from a point at most, in metres} */
    private double farthest(UUID riverId, Stretch cell, GeoPoint point) {
        return farthest.computeIfAbsent(
                new Shown(riverId, cell, point),
                shown -> points(riverId, cell, STEP_METRES).stream()
                        .mapToDouble(there -> there.equals(point) ? 0 : MeasuredLine.length(List.of(point, there)))
                        .max()
                        .orElse(PublicGrid.CELL_METRES));
    }

    /** {@return how far any water that is told by a point in hundredths of a degree lies from it at most, in metres} */
    private double farthestNest(GeoPoint point) {
        if (farthestNest.isEmpty()) {
            records.rivers()
                    .rivers()
                    .forEach(river -> records.rivers()
                            .measuredLine(river.id())
                            .ifPresent(line -> grid.list(river.id(), line.extent())
                                    .forEach(cell -> grid.middle(river.id(), cell)
                                            .map(ToldPlaces::hundredths)
                                            .ifPresent(told -> farthestNest.merge(
                                                    told, farthest(river.id(), cell, told), Math::max)))));
        }
        return farthestNest.getOrDefault(point, PublicGrid.CELL_METRES);
    }

    /** Tells what stretch an event covered. */
    void stretch(ArchiveRow row, UUID riverId, Optional<Stretch> covered) {
        if (!row.isHeard()) {
            return;
        }
        river(row, riverId);
        Optional<Stretch> told = covered.map(walked -> told(riverId, walked));
        told.ifPresent(stretch -> {
            String footprint = publication.isPublic()
                    ? footprints.computeIfAbsent(new Water(riverId, stretch), water -> footprint(riverId, stretch))
                    : footprint(riverId, stretch);
            if (!footprint.isEmpty()) {
                row.with("dwc:footprintWKT", footprint).with("dwc:footprintSRS", DATUM);
            }
            row.with("dwc:verbatimLocality", km(stretch));
        });
    }

    /** {@return a stretch as it may be told} */
    Stretch told(UUID riverId, Stretch stretch) {
        return publication.isPublic() ? grid.cells(riverId, stretch) : stretch;
    }

    private static String km(Stretch stretch) {
        return "km " + Numbers.text(Math.round(stretch.lower().metres()) / 1000.0) + " to "
                + Numbers.text(Math.round(stretch.upper().metres()) / 1000.0) + " from the mouth";
    }

    private String footprint(UUID riverId, Stretch stretch) {
        List<GeoPoint> points = points(riverId, stretch, FOOTPRINT_STEP_METRES);
        return points.size() > 1 ? line(points) : "";
    }

    private static String line(List<GeoPoint> points) {
        return points.stream()
                .map(point ->
                        Numbers.text(Degrees.of(point.longitude())) + " " + Numbers.text(Degrees.of(point.latitude())))
                .collect(Collectors.joining(", ", "LINESTRING (", ")"));
    }

    private void river(ArchiveRow row, UUID riverId) {
        row.with("dwc:waterBody", records.rivers().river(riverId).name());
    }

    private List<GeoPoint> points(UUID riverId, Stretch stretch, double stepMetres) {
        Optional<MeasuredLine> line = records.rivers().measuredLine(riverId);
        List<GeoPoint> points = new ArrayList<>();
        int steps = (int) Math.ceil(Math.max(1, stretch.length() / stepMetres));
        for (int i = 0; i <= steps; i++) {
            double share = (double) i / steps;
            line.flatMap(water -> water.point(new Chainage(stretch.lower().metres() + share * stretch.length())))
                    .ifPresent(points::add);
        }
        return points;
    }
}

package org.ouzelbook.ui.app.export;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.stats.survey.TerritoryOutline;
import org.ouzelbook.tracker.domain.BreedingCode;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.exchange.export.Audience;
import org.ouzelbook.tracker.exchange.export.Feature;
import org.ouzelbook.tracker.exchange.export.PublicGrid;
import org.ouzelbook.tracker.exchange.export.Records;

/**
 * What of a book goes on a map. In public, territories and sightings are told by the cells of the {@link PublicGrid} that they
 * touch, and nests not at all.
 */
final class MapFeatures {
    private static final double STEP_METRES = 50;

    private final Records records;
    private final Audience audience;
    private final PublicGrid grid;
    private final List<Feature> features = new ArrayList<>();

    private MapFeatures(Records records, Audience audience) {
        this.records = records;
        this.audience = audience;
        this.grid = new PublicGrid(records.rivers());
    }

    /** {@return the rivers alone, so that they can be read again} */
    static List<Feature> rivers(Records records) {
        MapFeatures map = new MapFeatures(records, Audience.PUBLIC);
        map.addRivers();
        return map.features;
    }

    /** {@return landmarks and the middles of territories, for the next visit; privately nests too} */
    static List<Feature> forTheField(Records records, List<TerritoryOutline> territories, Audience audience) {
        MapFeatures map = new MapFeatures(records, audience);
        map.addLandmarks();
        territories.forEach(territory -> map.addTerritory(territory, true));
        map.addNests();
        map.addRivers();
        return map.features;
    }

    /** {@return everything that has a place} */
    static List<Feature> all(Records records, List<TerritoryOutline> territories, Audience audience) {
        MapFeatures map = new MapFeatures(records, audience);
        map.addRivers();
        map.addLandmarks();
        territories.forEach(territory -> map.addTerritory(territory, false));
        map.addSightings();
        map.addNests();
        return map.features;
    }

    /** River lines run downstream, as rivers are drawn. */
    private void addRivers() {
        for (River river : records.rivers().rivers()) {
            Optional<RiverLine> line = records.rivers().line(river.id());
            if (line.isPresent()) {
                List<GeoPoint> downstream = new ArrayList<>(line.get().points());
                Collections.reverse(downstream);
                Map<String, Object> told = new LinkedHashMap<>();
                river.mouth()
                        .ifPresent(mouth -> told.put(
                                "mouth_on",
                                records.rivers().river(mouth.riverId()).name()));
                told.put("km_origin", km(line.get().lowerEnd()));
                features.add(new Feature("rivers", river.name(), downstream, told));
            }
        }
    }

    private void addLandmarks() {
        records.landmarks()
                .forEach(landmark -> point(
                                landmark.place().riverId(), landmark.place().chainage())
                        .ifPresent(point -> {
                            Map<String, Object> told = place(landmark.place());
                            told.put("kind", word(landmark.kind()));
                            if (audience == Audience.PRIVATE) {
                                told.put("nest_site", landmark.nestSite() ? "yes" : "no");
                            }
                            features.add(new Feature("landmarks", landmark.name(), List.of(point), told));
                        }));
    }

    private void addTerritory(TerritoryOutline territory, boolean byItsMiddle) {
        UUID riverId = territory.river().id();
        boolean all = audience == Audience.PRIVATE;
        Stretch told = all ? territory.stretch() : grid.cells(riverId, territory.stretch());
        Chainage middle = all ? territory.centre() : told.middle();
        List<GeoPoint> points = byItsMiddle ? point(riverId, middle).stream().toList() : line(riverId, told);
        if (!points.isEmpty()) {
            features.add(territory(territory, told, points));
        }
    }

    private static Feature territory(TerritoryOutline territory, Stretch stretch, List<GeoPoint> points) {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("species", territory.species().englishName());
        told.put("season", territory.season());
        told.put("river", territory.river().name());
        told.put("from_km", km(stretch.lower()));
        told.put("to_km", km(stretch.upper()));
        territory
                .evidence()
                .flatMap(evidence -> evidence.code().evidenceClass())
                .ifPresent(evidence -> told.put("evidence", word(evidence)));
        String name = territory.species().englishName() + " " + territory.id() + " " + territory.season();
        return new Feature("territories", name, points, told);
    }

    private void addSightings() {
        List<Feature> sightings = new ArrayList<>();
        records.sightings().forEach(sighting -> sighting(sighting).ifPresent(sightings::add));
        // the order in which birds were met along a walk would tell where
        features.addAll(audience == Audience.PUBLIC ? sorted(sightings) : sightings);
    }

    private record Keyed(String key, Feature feature) {}

    private static List<Feature> sorted(List<Feature> features) {
        return features.stream()
                .map(feature -> new Keyed(feature.properties() + feature.name(), feature))
                .sorted(Comparator.comparing(Keyed::key))
                .map(Keyed::feature)
                .toList();
    }

    private Optional<Feature> sighting(Sighting sighting) {
        UUID riverId = sighting.place().riverId();
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("date", sighting.date());
        told.put("count", sighting.count());
        Optional<GeoPoint> point;
        if (audience == Audience.PRIVATE) {
            told.putAll(place(sighting.place()));
            sighting.breedingCode().ifPresent(code -> told.put("breeding_code", code.number()));
            point = point(riverId, sighting.place().chainage());
        } else {
            Stretch cell = grid.cell(riverId, sighting.place().chainage());
            told.put("river", records.rivers().river(riverId).name());
            told.put("from_km", km(cell.lower()));
            told.put("to_km", km(cell.upper()));
            sighting.breedingCode()
                    .flatMap(BreedingCode::evidenceClass)
                    .ifPresent(evidence -> told.put("evidence", word(evidence)));
            point = grid.middle(riverId, cell);
        }
        return point.map(where -> new Feature("sightings", sighting.species().englishName(), List.of(where), told));
    }

    private void addNests() {
        if (audience == Audience.PRIVATE) {
            records.nests()
                    .forEach(nest -> point(nest.place().riverId(), nest.place().chainage())
                            .ifPresent(point -> {
                                Map<String, Object> told = place(nest.place());
                                told.put("species", nest.species().englishName());
                                told.put("site", word(nest.site()));
                                features.add(new Feature("nests", nest.label(), List.of(point), told));
                            }));
        }
    }

    private Map<String, Object> place(Place place) {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("river", records.rivers().river(place.riverId()).name());
        told.put("km", km(place.chainage()));
        return told;
    }

    private Optional<GeoPoint> point(UUID riverId, Chainage chainage) {
        return records.rivers().measuredLine(riverId).flatMap(line -> line.point(chainage));
    }

    private List<GeoPoint> line(UUID riverId, Stretch stretch) {
        List<GeoPoint> points = new ArrayList<>();
        int steps = (int) Math.ceil(Math.max(1, stretch.length() / STEP_METRES));
        for (int i = 0; i <= steps; i++) {
            double metres = stretch.lower().metres() + stretch.length() * i / steps;
            point(riverId, new Chainage(metres)).ifPresent(points::add);
        }
        return points;
    }

    private static String word(Enum<?> term) {
        return term.name().toLowerCase(Locale.ROOT);
    }

    private static double km(Chainage chainage) {
        return Math.round(chainage.metres()) / 1000.0;
    }
}

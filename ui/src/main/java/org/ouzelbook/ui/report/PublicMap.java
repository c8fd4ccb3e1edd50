package org.ouzelbook.ui.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.exchange.export.PublicGrid;
import org.ouzelbook.tracker.river.RiverNetwork;
import org.ouzelbook.ui.strip.SeasonsScene;
import org.ouzelbook.ui.strip.Water;
import org.ouzelbook.ui.strip.Waters;

/**
 * What may be told in public of a map, so that no nest can be found from it: of a territory the cells of the public grid that it touches, and of no record anything. What is drawn
 * depends on those cells alone: territories that touch the same cell share it in equal parts, in the order of the water, so that
 * bars stay apart to the eye and tell nothing that the cells do not.
 *
 * <p>Walked water is told by whole cells, too, by those that come nearest: a walk may have ended at a nest, and two walks may have left one out.
 *
 * <p>Landmarks stay, whether birds nest there or not: leaving out the nest sites would tell them.
 */
public final class PublicMap {
    /** The part of a cell that a bar leaves free at either end, so that neighbours stay apart to the eye. */
    private static final double APART = 0.08;

    /** Tells the water that one visit covered. */
    private static final String THIN_WATER = "map.warning.thinWater";

    /** Warnings that name neither a record nor a nest. */
    private static final Set<String> TOLD = Set.of(
            "map.warning.noEffort",
            "map.warning.fewVisits",
            THIN_WATER,
            "map.warning.otherEffort",
            "map.warning.otherRules",
            "map.warning.roundedPlaces",
            "map.warning.lowEfficiency",
            "map.warning.fairEfficiency");

    private final RiverNetwork rivers;
    private final PublicGrid grid;

    /**
     * Makes it for maps of these rivers.
     *
     * @param rivers the rivers
     */
    public PublicMap(RiverNetwork rivers) {
        this.rivers = rivers;
        this.grid = new PublicGrid(rivers);
    }

    /**
     * {@return the map with every territory drawn to the grid and without its records}
     *
     * @param map a map
     */
    public TerritoryMap of(TerritoryMap map) {
        return new TerritoryMap(
                map.species(),
                map.season(),
                map.settings(),
                map.rivers().stream().map(this::river).toList(),
                warnings(map.warnings()));
    }

    /**
     * {@return the picture of all seasons; its waters begin and end with whole cells, not with the outermost record}
     *
     * @param records the records of the book
     * @param maps the maps of one species
     */
    public SeasonsScene scene(SurveyRecords records, List<TerritoryMap> maps) {
        SeasonsScene scene =
                SeasonsScene.of(records, maps.stream().map(this::of).toList());
        return scene.on(new Waters(scene.waters().list().stream()
                .map(water ->
                        new Water(water.river(), grid.cells(water.river().id(), water.extent()), water.mouthMetres()))
                .toList()));
    }

    /** {@return the warnings that may be told} */
    List<Message> warnings(List<Message> warnings) {
        return warnings.stream()
                .filter(warning -> warning.key().startsWith("trend.") || TOLD.contains(warning.key()))
                .map(warning -> warning.key().equals(THIN_WATER) ? thinWater(warning) : warning)
                .toList();
    }

    private Message thinWater(Message warning) {
        Object name = warning.facts().get(0);
        List<Stretch> pieces = ((List<?>) warning.facts().get(1))
                .stream().map(Stretch.class::cast).toList();
        return rivers.rivers().stream()
                .filter(river -> river.name().equals(name))
                .findFirst()
                .map(river -> Message.of(THIN_WATER, name, walked(river.id(), pieces)))
                .orElse(warning);
    }

    private List<Stretch> walked(UUID riverId, List<Stretch> pieces) {
        return Stretch.union(
                pieces.stream().map(piece -> grid.nearest(riverId, piece)).toList());
    }

    private TerritoryMap.RiverMap river(TerritoryMap.RiverMap river) {
        UUID riverId = river.river().id();
        List<Stretch> walked = new ArrayList<>(walked(riverId, river.surveyed()));
        // a bird beyond the nearest whole kilometre would be known to be in the half that was walked
        river.territories().forEach(territory -> walked.add(grid.cells(riverId, territory.stretch())));
        return new TerritoryMap.RiverMap(
                river.river(),
                Stretch.union(walked),
                river.visits(),
                river.effectiveVisits(),
                river.visitEfficiency(),
                river.count(),
                territories(river.river().id(), river.territories()),
                List.of());
    }

    private List<Territory> territories(UUID riverId, List<Territory> goingUpstream) {
        List<List<Stretch>> touched = goingUpstream.stream()
                .map(territory -> grid.list(riverId, territory.stretch()))
                .toList();
        Map<Stretch, Integer> sharing = new HashMap<>();
        touched.forEach(cells -> cells.forEach(cell -> sharing.merge(cell, 1, Integer::sum)));
        Map<Stretch, Integer> given = new HashMap<>();
        List<Territory> told = new ArrayList<>();
        for (int i = 0; i < goingUpstream.size(); i++) {
            List<Stretch> shares = touched.get(i).stream()
                    .map(cell -> share(cell, given.merge(cell, 1, Integer::sum), sharing.getOrDefault(cell, 1)))
                    .toList();
            told.add(territory(goingUpstream.get(i), drawn(shares)));
        }
        return told;
    }

    /** One of so many equal parts of a cell, counted from 1. */
    private static Stretch share(Stretch cell, int number, int of) {
        double part = cell.length() / of;
        double lower = cell.lower().metres() + (number - 1) * part;
        return new Stretch(new Chainage(lower), new Chainage(lower + part));
    }

    private static Stretch drawn(List<Stretch> shares) {
        Stretch first = shares.get(0);
        Stretch last = shares.get(shares.size() - 1);
        return new Stretch(
                new Chainage(first.lower().metres() + first.length() * APART),
                new Chainage(last.upper().metres() - last.length() * APART));
    }

    private Territory territory(Territory territory, Stretch stretch) {
        return new Territory(
                territory.id(),
                stretch,
                territory.arm().map(arm -> new Territory.Arm(arm.riverId(), grid.cells(arm.riverId(), arm.stretch()))),
                stretch.middle(),
                territory.standing(),
                territory.edge(),
                territory.evidence().map(evidence -> new Territory.Evidence(evidence.code(), List.of(), List.of())),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }
}

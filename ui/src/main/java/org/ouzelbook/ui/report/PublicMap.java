package org.ouzelbook.ui.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * What may be told in public of a map, so that no nest can be found from it: territories are drawn on a grid of half kilometres, outwards, and no record is named. Places are generalised to a grid and never shifted at random: A. D. Chapman (2020), Current
 * Best Practices for Generalizing Sensitive Species Occurrence Data.
 *
 * <p>Landmarks stay, whether birds nest there or not: leaving out the nest sites would tell them.
 */
final class PublicMap {
    /** The grid along the water. */
    static final double GRID_METRES = 500;

    /** What a bar leaves free at either end, so that neighbours stay apart to the eye. */
    private static final double APART_METRES = 75;

    /** Warnings that name neither a record nor a nest. */
    private static final Set<String> TOLD = Set.of(
            "map.warning.noEffort",
            "map.warning.fewVisits",
            "map.warning.thinWater",
            "map.warning.otherEffort",
            "map.warning.otherRules",
            "map.warning.roundedPlaces",
            "map.warning.lowEfficiency",
            "map.warning.fairEfficiency");

    private PublicMap() {}

    /** {@return the map with every territory drawn to the grid and without its records} */
    static TerritoryMap of(TerritoryMap map) {
        return new TerritoryMap(
                map.species(),
                map.season(),
                map.settings(),
                map.rivers().stream().map(PublicMap::river).toList(),
                warnings(map.warnings()));
    }

    /** {@return the warnings that may be told} */
    static List<Message> warnings(List<Message> warnings) {
        return warnings.stream()
                .filter(warning -> warning.key().startsWith("trend.") || TOLD.contains(warning.key()))
                .toList();
    }

    private static TerritoryMap.RiverMap river(TerritoryMap.RiverMap river) {
        return new TerritoryMap.RiverMap(
                river.river(),
                river.surveyed(),
                river.visits(),
                river.effectiveVisits(),
                river.visitEfficiency(),
                river.count(),
                territories(river.territories()),
                List.of());
    }

    private static List<Territory> territories(List<Territory> goingUpstream) {
        List<Territory> told = new ArrayList<>();
        double free = 0;
        for (Territory territory : goingUpstream) {
            Stretch grid = outwards(territory.stretch());
            double lower =
                    Math.min(Math.max(grid.lower().metres(), free), grid.upper().metres() - GRID_METRES);
            Stretch shown = new Stretch(
                    new Chainage(Math.max(0, lower) + APART_METRES),
                    new Chainage(grid.upper().metres() - APART_METRES));
            told.add(territory(territory, shown));
            free = grid.upper().metres();
        }
        return told;
    }

    private static Territory territory(Territory territory, Stretch stretch) {
        return new Territory(
                territory.id(),
                stretch,
                territory.arm().map(arm -> new Territory.Arm(arm.riverId(), outwards(arm.stretch()))),
                stretch.middle(),
                territory.standing(),
                territory.edge(),
                territory.evidence().map(evidence -> new Territory.Evidence(evidence.code(), List.of(), List.of())),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    /** {@return the stretch, drawn outwards to the grid} */
    static Stretch outwards(Stretch stretch) {
        double lower = Math.floor(stretch.lower().metres() / GRID_METRES) * GRID_METRES;
        double upper = Math.ceil(stretch.upper().metres() / GRID_METRES) * GRID_METRES;
        return new Stretch(new Chainage(lower), new Chainage(Math.max(upper, lower + GRID_METRES)));
    }
}

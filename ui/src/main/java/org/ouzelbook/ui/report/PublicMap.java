package org.ouzelbook.ui.report;

import java.util.List;
import java.util.Set;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Stretch;

/**
 * What may be told in public of a map, so that no nest can be found from it: territories end at whole half kilometres, always
 * outwards, and no record is named. Places are generalised to a grid and never shifted at random: A. D. Chapman (2020), Current
 * Best Practices for Generalizing Sensitive Species Occurrence Data.
 *
 * <p>Landmarks stay, whether birds nest there or not: leaving out the nest sites would tell them.
 */
final class PublicMap {
    /** The grid along the water. */
    static final double GRID_METRES = 500;

    /** Warnings that name neither a record nor a nest. */
    private static final Set<String> TOLD = Set.of(
            "map.warning.noEffort",
            "map.warning.fewVisits",
            "map.warning.partVisits",
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
                river.territories().stream().map(PublicMap::territory).toList(),
                List.of());
    }

    private static Territory territory(Territory territory) {
        Stretch stretch = outwards(territory.stretch());
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

    private static Stretch outwards(Stretch stretch) {
        double lower = Math.floor(stretch.lower().metres() / GRID_METRES) * GRID_METRES;
        double upper = Math.ceil(stretch.upper().metres() / GRID_METRES) * GRID_METRES;
        return new Stretch(new Chainage(lower), new Chainage(Math.max(upper, lower + GRID_METRES)));
    }
}

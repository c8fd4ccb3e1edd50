package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.ouzelbook.stats.survey.CountTrend.Counted;
import org.ouzelbook.stats.survey.TerritoryMap.RiverMap;
import org.ouzelbook.tracker.domain.Message;

/** Counts territories by season and water, and finds the seasons that cannot be counted. */
final class SeasonCounts {
    private SeasonCounts() {}

    static List<Counted> of(List<WaterMap> maps, ModelledCounts modelled) {
        List<Counted> counts = new ArrayList<>();
        for (WaterMap one : maps) {
            for (RiverMap river : one.map().rivers()) {
                counts.add(counted(one.map().season(), river, one.water(), modelled));
            }
        }
        return counts;
    }

    private static Counted counted(int season, RiverMap map, Water water, ModelledCounts modelled) {
        Optional<Message> gap = gap(map);
        return new Counted(
                season,
                name(map, water),
                gap.isPresent()
                        ? OptionalLong.empty()
                        : OptionalLong.of(map.count().likely()),
                map.count().min(),
                map.count().max(),
                map.surveyedKm(),
                map.visits(),
                map.effectiveVisits(),
                gap.isPresent()
                        ? Optional.empty()
                        : modelled.on(season, map.river().id(), water),
                gap);
    }

    private static Optional<Message> gap(RiverMap map) {
        if (map.visits() == 0) {
            return Optional.of(Message.of("trend.gap.noVisit"));
        }
        return !map.isCounted() || map.surveyedKm() == 0
                ? Optional.of(Message.of("trend.gap.fewVisits", map.effectiveVisits(), map.visits()))
                : Optional.empty();
    }

    private static String name(RiverMap map, Water water) {
        return water.name()
                .map(reach -> map.river().name() + ", " + reach)
                .orElse(map.river().name());
    }
}

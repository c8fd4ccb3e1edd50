package org.ouzelbook.ui.app;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.CancellationException;
import org.ouzelbook.stats.estimator.segmentation.LinePosterior;
import org.ouzelbook.stats.survey.ModelCount;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.stats.survey.Territory;
import org.ouzelbook.stats.survey.TerritoryMap;
import org.ouzelbook.stats.survey.TerritoryModel;
import org.ouzelbook.stats.survey.Water;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Stretch;

/** Counts maps by the model, so that a drawing can show how sure each territory and each end is. Takes seconds. */
public final class ShadeByModel {
    /** The limits that are shown, of numbers and of ends alike. */
    public static final double LEVEL = 0.9;

    private ShadeByModel() {}

    /**
     * {@return what the model makes of each map, by season}
     *
     * @param records the records that the maps were made from
     * @param maps maps of one species by the same settings; none or more
     * @param progress hears how far it is, and may stop it
     * @throws CancellationException if it is stopped
     */
    public static Map<Integer, ModelShading> of(
            SurveyRecords records, Collection<TerritoryMap> maps, Progress progress) {
        Optional<TerritoryMap> any = maps.stream().findAny();
        if (any.isEmpty()) {
            return Map.of();
        }
        // Learning takes about as long as counting all seasons.
        TerritoryModel model = TerritoryModel.of(
                records, any.get().species(), any.get().settings(), (done, of) -> progress.goOn(done, 2L * of));
        return of(model, maps, (done, of) -> progress.goOn(of + done, 2L * of));
    }

    /**
     * {@return what a model makes of each map, by season}
     *
     * @param model the model of the records that the maps were made from
     * @param maps maps of the model's species by the same settings; none or more
     * @param progress hears how far it is, and may stop it
     * @throws CancellationException if it is stopped
     */
    public static Map<Integer, ModelShading> of(
            TerritoryModel model, Collection<TerritoryMap> maps, Progress progress) {
        Map<Integer, ModelShading> shadings = new TreeMap<>();
        for (TerritoryMap map : maps) {
            if (!progress.goOn(shadings.size(), maps.size())) {
                throw new CancellationException();
            }
            List<ModelShading.OnRiver> rivers = new ArrayList<>();
            for (TerritoryMap.RiverMap river : map.rivers()) {
                model.count(map.season(), river.river().id(), Water.ALL)
                        .ifPresent(count -> rivers.add(river(river, count)));
            }
            shadings.put(map.season(), new ModelShading(map.season(), rivers));
        }
        return shadings;
    }

    private static ModelShading.OnRiver river(TerritoryMap.RiverMap map, ModelCount count) {
        Map<String, ModelShading.Ground> grounds = new HashMap<>();
        for (Territory territory : map.territories()) {
            LinePosterior.Ground ground = count.ground(territory.centre(), LEVEL);
            grounds.put(
                    territory.id(),
                    new ModelShading.Ground(ground.probability(), limits(ground.lower()), limits(ground.upper())));
        }
        return new ModelShading.OnRiver(
                map.river().id(),
                LEVEL,
                count.expected(),
                count.lower(LEVEL),
                count.upper(LEVEL),
                grounds,
                count.roomForUnseen());
    }

    private static Stretch limits(List<Double> metres) {
        return Stretch.between(
                new Chainage(Math.max(0, metres.get(0))), new Chainage(Math.max(0, metres.get(metres.size() - 1))));
    }
}

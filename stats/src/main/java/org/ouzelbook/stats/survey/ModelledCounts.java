package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CancellationException;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.River;

/** What the model counts on several waters in several seasons: each line is looked at once, however many waters lie on it. */
public final class ModelledCounts {
    /** Nothing counted by the model. */
    public static final ModelledCounts NONE = new ModelledCounts(Map.of());

    private final Map<Key, ModelledCount> counts;

    record Key(int season, UUID river, Water water) {}

    ModelledCounts(Map<Key, ModelledCount> counts) {
        this.counts = Map.copyOf(counts);
    }

    /** {@return whether the model counted nothing at all} */
    boolean isEmpty() {
        return counts.isEmpty();
    }

    /**
     * {@return the model's counts; where no effective visit went, or what is known contradicts itself, there is none}
     *
     * @param model the model
     * @param rivers the rivers
     * @param seasons calendar years
     * @param waters the waters; {@link Water#ALL} counts each river by itself
     * @param level probability that a number lies between its limits, at least
     * @param progress hears how many lines are done, and may stop the work
     * @throws CancellationException if it is stopped
     */
    public static ModelledCounts of(
            TerritoryModel model,
            List<River> rivers,
            List<Integer> seasons,
            List<Water> waters,
            double level,
            Progress progress) {
        Map<Key, ModelledCount> counts = new HashMap<>();
        long line = 0;
        for (int season : seasons) {
            Map<UUID, Long> seeds = new HashMap<>();
            for (River river : rivers) {
                long seeded = line;
                List<Water> here = waters.stream()
                        .filter(water -> water.riverId().map(river.id()::equals).orElse(true))
                        .toList();
                // Rivers that meet share their chance, so that the same draw of each is of the same map.
                long seed = seeds.computeIfAbsent(model.lowest(season, river.id()), any -> seeded);
                List<ModelCount> counted = model.counts(season, river.id(), here);
                for (int i = 0; i < counted.size(); i++) {
                    counts.put(new Key(season, river.id(), here.get(i)), ModelledCount.of(counted.get(i), level, seed));
                }
                if (!progress.goOn(++line, (long) seasons.size() * rivers.size())) {
                    throw new CancellationException("Stopped while the model counted");
                }
            }
        }
        return new ModelledCounts(counts);
    }

    /** {@return the count of a river's part of a water; empty if the model has none} */
    Optional<ModelledCount> on(int season, UUID river, Water water) {
        return Optional.ofNullable(counts.get(new Key(season, river, water)));
    }

    /**
     * {@return the count of all rivers of a map that had visits enough, as {@link TerritoryMap#total()} has it by rule; empty if none
     * had, or if the model does not tell one of them}
     *
     * @param map a map of all water in a season
     */
    public Optional<ModelledCount> total(TerritoryMap map) {
        return together(map.rivers().stream()
                .filter(TerritoryMap.RiverMap::isCounted)
                .map(river -> on(map.season(), river.river().id(), Water.ALL))
                .toList());
    }

    /** {@return the counts of several waters together; empty if one of them has none} */
    static Optional<ModelledCount> together(List<Optional<ModelledCount>> waters) {
        List<ModelledCount> all = new ArrayList<>();
        waters.forEach(water -> water.ifPresent(all::add));
        return all.isEmpty() || all.size() < waters.size() ? Optional.empty() : Optional.of(ModelledCount.sum(all));
    }
}

package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import org.ouzelbook.stats.estimator.trend.SeasonCount;

/**
 * The number of territories on one water in one season, drawn several times from what the records leave open.
 *
 * @param season the calendar year
 * @param water its name, as {@link CountTrend.Counted} has it
 * @param counts one number a draw, 0 or more; two draws or more
 */
public record DrawnCounts(int season, String water, List<Long> counts) {
    /**
     * Copies the counts.
     *
     * @throws IllegalArgumentException if there are fewer than two, or one is negative
     */
    public DrawnCounts {
        counts = List.copyOf(counts);
        if (counts.size() < 2 || counts.stream().anyMatch(count -> count < 0)) {
            throw new IllegalArgumentException(
                    "Two drawn counts or more, each 0 or more, are needed for " + water + " in " + season);
        }
    }

    private record Key(String water, int season) {}

    /**
     * {@return the counts once for each draw; where nobody counted, that stays so}
     *
     * @throws IllegalArgumentException if a count was not drawn, or not as often as another
     */
    static List<List<SeasonCount>> sets(List<DrawnCounts> drawn, List<SeasonCount> counts) {
        Map<Key, List<Long>> byKey =
                drawn.stream().collect(Collectors.toMap(one -> new Key(one.water, one.season), DrawnCounts::counts));
        List<List<SeasonCount>> sets = new ArrayList<>();
        for (int draw = 0; draw < drawn.get(0).counts.size(); draw++) {
            List<SeasonCount> set = new ArrayList<>();
            for (SeasonCount count : counts) {
                set.add(count.count().isEmpty() ? count : drawn(byKey, count, draw));
            }
            sets.add(set);
        }
        return sets;
    }

    private static SeasonCount drawn(Map<Key, List<Long>> byKey, SeasonCount count, int draw) {
        List<Long> draws = byKey.getOrDefault(new Key(count.site(), count.season()), List.of());
        if (draw >= draws.size()) {
            throw new IllegalArgumentException(
                    "Draw " + (draw + 1) + " of " + count.site() + " in " + count.season() + " is missing");
        }
        return new SeasonCount(count.site(), count.season(), OptionalLong.of(draws.get(draw)), count.km());
    }
}

package org.ouzelbook.stats.survey;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.stats.estimator.Estimate;

/**
 * How many territories there were on some water in one season by the model, pairs that no visit found included.
 *
 * @param expected the expected number
 * @param unseen the expected number of those that no visit found
 * @param lower lower limit of the number
 * @param upper upper limit
 * @param level probability that the number lies between the limits, at least
 * @param draws the number on each of several maps drawn with their probabilities; the same draw of every water and season is by
 *     the same nature of the species
 */
public record ModelledCount(double expected, double unseen, int lower, int upper, double level, List<Long> draws) {
    /** How many maps are drawn. */
    static final int DRAWS = 200;

    /** Copies the list. */
    public ModelledCount {
        draws = List.copyOf(draws);
    }

    static ModelledCount of(ModelCount count, double level, long seed) {
        return new ModelledCount(
                count.expected(),
                count.expectedUnseen(),
                count.lower(level),
                count.upper(level),
                level,
                count.draws(DRAWS, seed));
    }

    /** {@return the number on several waters together, its limits from the draws; of one, that one} */
    static ModelledCount sum(List<ModelledCount> waters) {
        ModelledCount first = waters.get(0);
        if (waters.size() == 1) {
            return first;
        }
        List<Long> sums = new ArrayList<>();
        for (int i = 0; i < first.draws.size(); i++) {
            int draw = i;
            sums.add(waters.stream().mapToLong(water -> water.draws.get(draw)).sum());
        }
        List<Long> sorted = sums.stream().sorted().toList();
        int below = (int) Math.floor(Estimate.tail(first.level) * sorted.size());
        return new ModelledCount(
                waters.stream().mapToDouble(ModelledCount::expected).sum(),
                waters.stream().mapToDouble(ModelledCount::unseen).sum(),
                sorted.get(below).intValue(),
                sorted.get(sorted.size() - 1 - below).intValue(),
                first.level,
                sums);
    }
}

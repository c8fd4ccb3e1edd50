package org.ouzelbook.stats.estimator.markresight;

import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.ouzelbook.stats.estimator.likelihood.Covariate;

/**
 * The histories of marked animals, by group, and on which occasions anybody looked for them.
 *
 * <p>A model of them has a row for each group and interval: row {@code g·(T − 1) + t} is interval t of group g, after occasion t and
 * before occasion t + 1, all counted from 0. Survival has its value over the interval, resighting on the occasion that ends it.
 *
 * @param groups histories by group; all of the same number of occasions
 * @param looked whether anybody looked, by occasion
 */
public record MarkedAnimals(List<List<EncounterHistory>> groups, List<Boolean> looked) {
    /**
     * Copies the lists.
     *
     * @throws IllegalArgumentException if a history has another number of occasions, or an animal was seen when nobody looked
     */
    public MarkedAnimals {
        groups = groups.stream().map(List::copyOf).toList();
        looked = List.copyOf(looked);
        for (List<EncounterHistory> group : groups) {
            for (EncounterHistory history : group) {
                if (history.occasions() != looked.size()) {
                    throw new IllegalArgumentException(
                            "A history has " + history.occasions() + " occasions, not " + looked.size());
                }
                for (int occasion = 0; occasion < looked.size(); occasion++) {
                    if (history.seen().get(occasion) && !looked.get(occasion)) {
                        throw new IllegalArgumentException("An animal was seen when nobody looked");
                    }
                }
            }
        }
    }

    /** {@return animals that were looked for on every occasion} */
    public static MarkedAnimals of(int occasions, List<List<EncounterHistory>> groups) {
        return new MarkedAnimals(groups, Collections.nCopies(occasions, true));
    }

    /** {@return the number of occasions} */
    public int occasions() {
        return looked.size();
    }

    /** {@return the number of animals} */
    public long animals() {
        return groups.stream()
                .flatMap(List::stream)
                .mapToLong(EncounterHistory::count)
                .sum();
    }

    int intervals() {
        return Math.max(0, occasions() - 1);
    }

    int rows() {
        return groups.size() * intervals();
    }

    List<MArray> arrays() {
        return groups.stream().map(group -> MArray.of(occasions(), group)).toList();
    }

    /**
     * {@return a covariate of the rows that has a level for each interval or occasion}
     *
     * @param name what it is called
     * @param labels one an interval
     */
    public Covariate byInterval(String name, List<String> labels) {
        return byInterval(Covariate.levels(name, labels));
    }

    /**
     * {@return a covariate of the rows from one of the intervals}
     *
     * @param intervals with a value for each interval
     */
    public Covariate byInterval(Covariate intervals) {
        return new Covariate(
                intervals.name(),
                rowValues((group, interval) -> intervals.values().get(interval)),
                intervals.numeric());
    }

    /**
     * {@return a covariate of the rows that has a level for each group}
     *
     * @param name what it is called
     * @param levels one a group
     */
    public Covariate byGroup(String name, List<String> levels) {
        return Covariate.levels(name, rowValues((group, interval) -> levels.get(group)));
    }

    private List<String> rowValues(RowValue value) {
        return IntStream.range(0, rows())
                .mapToObj(row -> value.of(row / intervals(), row % intervals()))
                .toList();
    }

    private interface RowValue {
        String of(int group, int interval);
    }
}

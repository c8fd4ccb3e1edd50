package org.ouzelbook.stats.estimator.markresight;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Whether survival and resighting depend on the occasion alone, whatever an animal's past: the assumption of every model here.
 *
 * <p>Test 3 compares, on each occasion, animals just marked with those marked before. Test 2 compares animals met on an occasion
 * with those missed on it but met later. Each table is tested by Pearson's chi-square,
 * columns of small expected counts put together where there are several; their sum has the sum of their degrees of
 * freedom. Divided by them it is ĉ, which says how many times too small the variances are.
 *
 * <p>Source: K. P. Burnham and others (1987), American Fisheries Society Monograph 5; J.-D. Lebreton and others (1992), Ecol.
 * Monogr. 62:67–118, Table 10 ff.
 *
 * @param tables every table that could be tested, by occasion
 */
public record GoodnessOfFit(List<Tested> tables) {
    /** Copies the list. */
    public GoodnessOfFit {
        tables = List.copyOf(tables);
    }

    /** What a table compares. */
    public enum Component {
        /** Test 3.SR: newly marked and marked before, by whether they were ever seen again. */
        NEW_SEEN_AGAIN,
        /** Test 3.Sm: the same of those seen again, by when that was. */
        NEW_SEEN_WHEN,
        /** Test 2.C: missed on the occasion and met on it, of those seen later, by when that was. */
        MISSED_SEEN_WHEN
    }

    /**
     * One table.
     *
     * @param component what it compares
     * @param occasion on which occasion, from 0
     * @param table the counts
     */
    public record Tested(Component component, int occasion, ContingencyTable table) {}

    /**
     * {@return the tests of the animals of one group}
     *
     * @param occasions how many occasions
     * @param histories their histories
     */
    public static GoodnessOfFit of(int occasions, List<EncounterHistory> histories) {
        MArray all = MArray.of(occasions, histories);
        List<Tested> tables = new ArrayList<>();
        for (int occasion = 1; occasion < occasions - 1; occasion++) {
            long[] fresh = new long[occasions + 1];
            long[] known = new long[occasions + 1];
            for (EncounterHistory history : histories) {
                if (history.seen().get(occasion)) {
                    long[] row = history.first() == occasion ? fresh : known;
                    row[history.next(occasion)] += history.count();
                }
            }
            int at = occasion;
            ContingencyTable.of(everOrNever(fresh), everOrNever(known))
                    .forEach(table -> tables.add(new Tested(Component.NEW_SEEN_AGAIN, at, table)));
            ContingencyTable.pooled(seen(fresh), seen(known))
                    .forEach(table -> tables.add(new Tested(Component.NEW_SEEN_WHEN, at, table)));
            ContingencyTable.pooled(missed(all, occasion), met(all, occasion))
                    .forEach(table -> tables.add(new Tested(Component.MISSED_SEEN_WHEN, at, table)));
        }
        return new GoodnessOfFit(tables);
    }

    /** {@return the tests of several groups together} */
    public static GoodnessOfFit together(Collection<GoodnessOfFit> groups) {
        return new GoodnessOfFit(
                groups.stream().flatMap(group -> group.tables().stream()).toList());
    }

    /** Histories by the next occasion on which they were seen, the last place being for never. */
    private static long[] everOrNever(long[] next) {
        return new long[] {Arrays.stream(seen(next)).sum(), next[next.length - 1]};
    }

    private static long[] seen(long[] next) {
        return Arrays.copyOf(next, next.length - 1);
    }

    private static long[] missed(MArray all, int occasion) {
        long[] later = new long[all.occasions()];
        for (int next = occasion + 1; next < all.occasions(); next++) {
            for (int release = 0; release < occasion; release++) {
                later[next] += all.seenNext(release, next);
            }
        }
        return later;
    }

    private static long[] met(MArray all, int occasion) {
        long[] later = new long[all.occasions()];
        for (int next = occasion + 1; next < all.occasions(); next++) {
            later[next] = all.seenNext(occasion, next);
        }
        return later;
    }

    /** {@return the tables of one component} */
    public GoodnessOfFit only(Component component) {
        return new GoodnessOfFit(
                tables.stream().filter(one -> one.component() == component).toList());
    }

    /** {@return the sum of the tables' chi-squares} */
    public double chiSquare() {
        return tables.stream().mapToDouble(one -> one.table().chiSquare()).sum();
    }

    /** {@return the sum of their degrees of freedom} */
    public int degreesOfFreedom() {
        return tables.stream().mapToInt(one -> one.table().degreesOfFreedom()).sum();
    }

    /** {@return the probability of so large a sum if the assumption holds; empty without a table} */
    public OptionalDouble p() {
        return tables.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(ContingencyTable.p(chiSquare(), degreesOfFreedom()));
    }

    /** {@return chi-square by its degrees of freedom; empty without a table} */
    public OptionalDouble cHat() {
        return tables.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(chiSquare() / degreesOfFreedom());
    }
}

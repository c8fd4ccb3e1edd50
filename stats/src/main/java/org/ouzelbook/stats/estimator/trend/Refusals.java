package org.ouzelbook.stats.estimator.trend;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.trend.CountGrid.Row;

/** Counts whose likelihood has no maximum, and why. */
final class Refusals {
    private static final int MOST_SEASONS = 500;

    private Refusals() {}

    static Optional<Caution> ofAnyTrend(CountGrid grid) {
        if (grid.size() == 0) {
            return Optional.of(Caution.of(Reason.NOTHING_COUNTED));
        }
        if (grid.size() == 1) {
            return Optional.of(Caution.of(Reason.ONE_SEASON, grid.year(0)));
        }
        if (grid.size() > MOST_SEASONS) {
            return Optional.of(Caution.of(Reason.TOO_MANY_SEASONS, grid.size(), MOST_SEASONS));
        }
        return grid.rows().isEmpty() ? Optional.of(Caution.of(Reason.ALL_COUNTS_ZERO)) : Optional.empty();
    }

    /** A slope is finite if not all birds that say anything of it stand at one end of their site's seasons. */
    static Optional<Caution> ofALine(CountGrid grid) {
        boolean birdsAfterFirst = false;
        boolean birdsBeforeLast = false;
        boolean comparable = false;
        for (Row row : grid.rows()) {
            int[] counted = row.countedSeasons();
            if (counted.length > 1) {
                comparable = true;
                birdsAfterFirst |= row.total() > row.count(counted[0]);
                birdsBeforeLast |= row.total() > row.count(counted[counted.length - 1]);
            }
        }
        if (!comparable) {
            return Optional.of(Caution.of(Reason.NO_SITE_IN_TWO_SEASONS));
        }
        if (!birdsAfterFirst) {
            return Optional.of(Caution.of(Reason.ONLY_IN_FIRST_SEASONS));
        }
        return birdsBeforeLast ? Optional.empty() : Optional.of(Caution.of(Reason.ONLY_IN_LAST_SEASONS));
    }

    /**
     * A slope can only change at a season that has others with counts before and after it, and after the change before; without birds
     * before the first change, or after the last, the slope there is infinite.
     */
    static Optional<Caution> ofChanges(CountGrid grid, int[] changes) {
        List<Integer> outside = new ArrayList<>();
        for (int k = 0; k < changes.length; k++) {
            int after = k == 0 ? grid.year(0) - 1 : changes[k - 1];
            int change = changes[k];
            int[] before = grid.seasonsWhere(season -> grid.year(season) > after && grid.year(season) <= change);
            boolean later = grid.year(grid.size() - 1) > change;
            if (!later || before.length < (k == 0 ? 2 : 1)) {
                outside.add(change);
            }
        }
        if (!outside.isEmpty()) {
            return Optional.of(Caution.of(Reason.CHANGE_NOT_BETWEEN_SEASONS, outside));
        }
        int first = changes[0];
        int last = changes[changes.length - 1];
        if (isEmpty(grid, year -> year < first)) {
            return Optional.of(Caution.of(Reason.NO_BIRDS_BEYOND_CHANGE, 0, first));
        }
        return isEmpty(grid, year -> year > last)
                ? Optional.of(Caution.of(Reason.NO_BIRDS_BEYOND_CHANGE, 1, last))
                : Optional.empty();
    }

    private static boolean isEmpty(CountGrid grid, IntPredicate years) {
        return IntStream.of(grid.seasonsWhere(season -> years.test(grid.year(season))))
                .allMatch(season -> grid.observed(season) == 0);
    }

    /**
     * Season effects are finite if, for every split of the seasons in two, some site counted on both sides has birds on the
     * one and some site, it or another, has birds on the other: L. R. Ford (1957), Am. Math. Monthly 64(8, part 2):28–33, cited
     * from memory. That is, if every season can be reached from every other by steps from a season with birds at a site to
     * another in which that site was counted.
     */
    static Optional<Caution> ofSeasonEffects(CountGrid grid) {
        int seasons = grid.size();
        boolean[][] step = new boolean[seasons][seasons];
        for (Row row : grid.rows()) {
            int[] counted = row.countedSeasons();
            for (int from : counted) {
                for (int to : counted) {
                    step[from][to] |= row.count(from) > 0;
                }
            }
        }
        boolean[] forward = reached(step, false);
        boolean[] backward = reached(step, true);
        List<Integer> apart = IntStream.range(0, seasons)
                .filter(season -> !(forward[season] && backward[season]))
                .mapToObj(season -> grid.year(season))
                .toList();
        return apart.isEmpty() ? Optional.empty() : Optional.of(Caution.of(Reason.SEASONS_NOT_LINKED, apart));
    }

    /** The seasons that can be reached from the first, or from which it can be reached. */
    private static boolean[] reached(boolean[][] step, boolean backward) {
        boolean[] reached = new boolean[step.length];
        List<Integer> open = new ArrayList<>(List.of(0));
        reached[0] = true;
        while (!open.isEmpty()) {
            int from = open.remove(open.size() - 1);
            for (int to = 0; to < step.length; to++) {
                if (!reached[to] && (backward ? step[to][from] : step[from][to])) {
                    reached[to] = true;
                    open.add(to);
                }
            }
        }
        return reached;
    }
}

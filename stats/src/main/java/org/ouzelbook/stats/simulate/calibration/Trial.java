package org.ouzelbook.stats.simulate.calibration;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.stats.simulate.mechanism.BookPlan;
import org.ouzelbook.stats.simulate.mechanism.FieldPlan;
import org.ouzelbook.stats.simulate.mechanism.ForkedBook;
import org.ouzelbook.stats.simulate.mechanism.Mechanism.Kind;
import org.ouzelbook.stats.simulate.mechanism.SimulatedBook;

/**
 * One simulated book of the grid.
 *
 * @param plan what it is made from
 * @param seed its chance
 * @param water which water
 */
record Trial(BookPlan plan, long seed, Waters water) {
    private static final double RIVER_METRES = 12_000;
    private static final List<Integer> VISITS = List.of(3, 4, 6, 8);
    private static final List<Double> MEDIANS = List.of(600.0, 900.0, 1300.0);
    private static final int MANY_SEASONS = 10;

    /** Which water a book is of. */
    enum Waters {
        /** One river. */
        RIVER,
        /** A river and a tributary, known to meet. */
        FORKED,
        /** The same book, each counted as if they did not meet. */
        APART
    }

    /** {@return the book, counted} */
    CountedBook counted() {
        return water == Waters.RIVER
                ? BookCounter.of(SimulatedBook.of(plan, seed))
                : BookCounter.of(ForkedBook.of(plan, seed), water == Waters.FORKED);
    }

    /** {@return whether the book is large enough for the targets to be asked of it, and of one river} */
    boolean isLarge() {
        return water == Waters.RIVER && plan.seasons() >= MANY_SEASONS;
    }

    /** {@return a name for it, one a trial} */
    String name() {
        FieldPlan field = plan.field();
        return String.join(
                        " ",
                        plan.kind().name(),
                        String.valueOf(plan.medianMetres()),
                        String.valueOf(plan.seasons()),
                        String.valueOf(field.visits()),
                        field.piece() ? "piece" : "whole",
                        field.together() > 0 ? "marks" : "plain",
                        String.valueOf(seed))
                + (water == Waters.RIVER ? "" : " " + water);
    }

    /**
     * {@return the grid: every mechanism at 3 to 8 visits and three lengths over ten seasons, and the ends of the range, with two
     * or nine visits and one, two or twenty seasons}
     *
     * <p>Every second book is of a piece of a longer river, and every second one has birds marked as seen at once and places
     * where they turned back. Books of a river and a tributary are counted twice: joined, and each water by itself.
     *
     * @param books books of each kind
     * @param seed any number
     */
    static List<Trial> grid(int books, long seed) {
        List<Trial> grid = new ArrayList<>();
        for (int book = 0; book < books; book++) {
            for (Kind kind : Kind.values()) {
                for (int visits : VISITS) {
                    for (double median : MEDIANS) {
                        add(grid, kind, median, MANY_SEASONS, visits, seed);
                    }
                }
                for (int visits : List.of(2, 9)) {
                    add(grid, kind, 900, MANY_SEASONS, visits, seed);
                }
                add(grid, kind, 900, 2 * MANY_SEASONS, 5, seed);
                for (int seasons : List.of(1, 2)) {
                    for (int visits : List.of(2, 3, 5, 8)) {
                        add(grid, kind, 900, seasons, visits, seed);
                    }
                }
            }
            for (Kind kind : List.of(Kind.MODELLED, Kind.NEST_CENTRED, Kind.CLUSTERED)) {
                for (int visits : List.of(3, 5, 8)) {
                    FieldPlan field = new FieldPlan(RIVER_METRES, false, visits, 0.2, 0, 0);
                    BookPlan plan = new BookPlan(kind, 900, MANY_SEASONS, field);
                    long chance = seed * 100_000 + 90_000 + grid.size();
                    grid.add(new Trial(plan, chance, Waters.FORKED));
                    grid.add(new Trial(plan, chance, Waters.APART));
                }
            }
        }
        return grid;
    }

    private static void add(List<Trial> grid, Kind kind, double median, int seasons, int visits, long seed) {
        int nr = grid.size();
        boolean piece = nr % 2 == 1;
        boolean marks = nr / 2 % 2 == 1;
        FieldPlan field = new FieldPlan(RIVER_METRES, piece, visits, 0.2, marks ? 0.3 : 0, marks ? 0.1 : 0);
        grid.add(new Trial(new BookPlan(kind, median, seasons, field), seed * 100_000 + nr, Waters.RIVER));
    }
}

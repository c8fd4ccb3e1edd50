package org.ouzelbook.stats.simulate.mechanism;

import java.util.List;
import java.util.stream.IntStream;
import org.ouzelbook.stats.simulate.Draws;

/**
 * Some seasons of one river, made by one mechanism whose habits were drawn for this book.
 *
 * @param mechanism the mechanism
 * @param seasons its seasons, in order
 */
public record SimulatedBook(Mechanism mechanism, List<RiverSeason> seasons) {
    /** Copies the list. */
    public SimulatedBook {
        seasons = List.copyOf(seasons);
    }

    /**
     * {@return a book; the same plan and seed make the same one}
     *
     * @param plan what it is made from
     * @param seed any number
     */
    public static SimulatedBook of(BookPlan plan, long seed) {
        Draws draws = Draws.of(seed)
                .branch(
                        plan.kind(),
                        plan.medianMetres(),
                        plan.seasons(),
                        plan.field().visits());
        Mechanism mechanism = plan.kind().drawn(plan.medianMetres(), draws.branch("habits"));
        return new SimulatedBook(
                mechanism,
                IntStream.range(0, plan.seasons())
                        .mapToObj(season -> mechanism.season(plan.field(), draws.branch("season", season)))
                        .toList());
    }
}

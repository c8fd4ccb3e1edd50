package org.ouzelbook.stats.simulate.mechanism;

import java.util.List;
import java.util.stream.IntStream;
import org.ouzelbook.stats.simulate.Draws;

/**
 * Some seasons of a river and a tributary, made by one mechanism whose habits were drawn for this book.
 *
 * @param waters the lengths of the waters
 * @param seasons its seasons, in order
 */
public record ForkedBook(ForkedSeason.Fork waters, List<ForkedSeason> seasons) {
    /** Copies the list. */
    public ForkedBook {
        seasons = List.copyOf(seasons);
    }

    /**
     * {@return a book; the same plan and seed make the same one}
     *
     * <p>The tributary has a third of all water, and joins where the river is half done.
     *
     * @param plan what it is made from; its water is that of both together
     * @param seed any number
     */
    public static ForkedBook of(BookPlan plan, long seed) {
        Draws draws = Draws.of(seed)
                .branch(
                        "forked",
                        plan.kind(),
                        plan.medianMetres(),
                        plan.seasons(),
                        plan.field().visits());
        Mechanism mechanism = plan.kind().drawn(plan.medianMetres(), draws.branch("habits"));
        double third = plan.field().riverMetres() / 3;
        ForkedSeason.Fork waters = new ForkedSeason.Fork(third, third, third);
        return new ForkedBook(
                waters,
                IntStream.range(0, plan.seasons())
                        .mapToObj(season ->
                                ForkedSeason.of(mechanism, plan.field(), waters, draws.branch("season", season)))
                        .toList());
    }
}

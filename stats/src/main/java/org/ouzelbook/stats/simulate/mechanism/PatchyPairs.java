package org.ouzelbook.stats.simulate.mechanism;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.stats.simulate.Draws;

/**
 * Good water and empty water. On good water grounds follow each other with hardly a gap; then comes a long empty stretch. The
 * nest may lie anywhere on the ground, some pairs are shy, and some visits are poor for every pair.
 *
 * @param medianMetres median length of a ground
 * @param logSd standard deviation of its logarithm
 * @param neighbour probability that another ground follows before the next empty stretch
 * @param emptyMetres mean length of an empty stretch beyond its first 500 m
 * @param found probability that a common pair is found on a common visit
 * @param shy share of pairs that are found half as often
 * @param poor share of visits on which every pair is found half as often
 * @param nearNest share of registrations near the nest
 * @param nestMetres standard deviation of their distance from it
 * @param repeats mean number of further registrations
 * @param straysPerKm strays met on one km of one visit
 */
public record PatchyPairs(
        double medianMetres,
        double logSd,
        double neighbour,
        double emptyMetres,
        double found,
        double shy,
        double poor,
        double nearNest,
        double nestMetres,
        double repeats,
        double straysPerKm)
        implements Mechanism {
    private static final double SHORTEST_METRES = 150;
    private static final double LEAST_EMPTY_METRES = 500;
    private static final double HARDLY_METRES = 60;

    static PatchyPairs clustered(double medianMetres, Draws draws) {
        return drawn(medianMetres, draws.between(0.7, 0.85), draws.between(1000, 2500), draws);
    }

    static PatchyPairs sparse(double medianMetres, Draws draws) {
        return drawn(medianMetres, draws.between(0.05, 0.25), draws.between(2500, 5000), draws);
    }

    private static PatchyPairs drawn(double medianMetres, double neighbour, double emptyMetres, Draws draws) {
        return new PatchyPairs(
                medianMetres,
                draws.between(0.2, 0.4),
                neighbour,
                emptyMetres,
                draws.between(0.6, 0.9),
                draws.between(0, 0.25),
                draws.between(0, 0.2),
                draws.between(0.3, 0.6),
                draws.between(70, 150),
                draws.between(0.1, 0.5),
                draws.between(0.01, 0.05));
    }

    @Override
    public RiverSeason season(FieldPlan plan, Draws draws) {
        Draws ground = draws.branch("ground");
        List<Pair> pairs = new ArrayList<>();
        long visits = ground.branch("visits").below(Integer.MAX_VALUE);
        for (Ground one : Row.of(plan, () -> length(ground), () -> gap(ground))) {
            double chance = ground.happens(shy) ? found / 2 : found;
            pairs.add(new Dweller(one, chance, ground.between(one.fromMetres(), one.toMetres()), visits));
        }
        return FieldNotes.of(plan, pairs, straysPerKm, draws.branch("notes"));
    }

    private double length(Draws draws) {
        return Math.max(SHORTEST_METRES, draws.logNormal(medianMetres, logSd));
    }

    private double gap(Draws draws) {
        return draws.happens(neighbour)
                ? draws.exponential(HARDLY_METRES)
                : LEAST_EMPTY_METRES + draws.exponential(emptyMetres);
    }

    private final class Dweller implements Pair {
        private final Ground ground;
        private final double chance;
        private final double nest;
        private final long visits;

        Dweller(Ground ground, double chance, double nest, long visits) {
            this.ground = ground;
            this.chance = chance;
            this.nest = nest;
            this.visits = visits;
        }

        @Override
        public Ground ground() {
            return ground;
        }

        @Override
        public List<Double> met(int day, Draws draws) {
            boolean poorDay = Draws.of(visits).branch(day).happens(poor);
            List<Double> places = new ArrayList<>();
            if (draws.happens(poorDay ? chance / 2 : chance)) {
                int times = 1 + draws.poisson(repeats);
                for (int time = 0; time < times; time++) {
                    places.add(place(draws));
                }
            }
            return places;
        }

        private double place(Draws draws) {
            while (true) {
                double place = draws.happens(nearNest)
                        ? draws.normal(nest, nestMetres)
                        : draws.between(ground.fromMetres(), ground.toMetres());
                if (ground.contains(place)) {
                    return place;
                }
            }
        }
    }
}

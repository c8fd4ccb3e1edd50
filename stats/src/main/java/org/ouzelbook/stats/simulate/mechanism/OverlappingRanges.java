package org.ouzelbook.stats.simulate.mechanism;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.stats.simulate.Draws;

/**
 * Home ranges around a centre that overlap those of the neighbours, in which no boundary is kept: use is normal or triangular
 * around the centre, and a pair that is found may be met once more beyond the end of its range, in pursuit of a neighbour. How
 * often a pair is met on one visit is its own habit.
 *
 * @param medianMetres median length of a range
 * @param logSd standard deviation of its logarithm
 * @param overlap neighbours overlap by up to this share of their mean length
 * @param apart share of ranges with free water before them
 * @param gapMetres mean of that free water
 * @param found mean probability that a pair is found on a visit
 * @param concentration how alike pairs are in that
 * @param repeats mean number of further registrations of a common pair
 * @param normal whether use is normal, with a standard deviation of a quarter of the range; otherwise triangular
 * @param chases probability that a pair that is found is also met beyond its range
 * @param straysPerKm strays met on one km of one visit
 */
public record OverlappingRanges(
        double medianMetres,
        double logSd,
        double overlap,
        double apart,
        double gapMetres,
        double found,
        double concentration,
        double repeats,
        boolean normal,
        double chases,
        double straysPerKm)
        implements Mechanism {
    private static final double FARTHEST_CHASE_METRES = 250;
    private static final double HABIT_LOG_SD = 0.5;

    static OverlappingRanges drawn(double medianMetres, Draws draws) {
        return new OverlappingRanges(
                medianMetres,
                draws.between(0.15, 0.35),
                0.2,
                draws.between(0.2, 0.6),
                draws.between(200, 800),
                draws.between(0.55, 0.85),
                draws.between(6, 20),
                draws.between(0.15, 0.6),
                draws.happens(0.5),
                draws.between(0.02, 0.12),
                draws.between(0.01, 0.05));
    }

    @Override
    public RiverSeason season(FieldPlan plan, Draws draws) {
        Draws range = draws.branch("range");
        List<Pair> pairs = new ArrayList<>();
        for (Ground one : Row.of(plan, () -> range.logNormal(medianMetres, logSd), () -> gap(range))) {
            pairs.add(new Roamers(one, range.beta(found, concentration), range.logNormal(repeats, HABIT_LOG_SD)));
        }
        return FieldNotes.of(plan, pairs, straysPerKm, draws.branch("notes"));
    }

    private double gap(Draws draws) {
        return draws.happens(apart) ? draws.exponential(gapMetres) : -draws.between(0, overlap) * medianMetres;
    }

    private final class Roamers implements Pair {
        private final Ground ground;
        private final double chance;
        private final double habit;

        Roamers(Ground ground, double chance, double habit) {
            this.ground = ground;
            this.chance = chance;
            this.habit = habit;
        }

        @Override
        public Ground ground() {
            return ground;
        }

        @Override
        public List<Double> met(int day, Draws draws) {
            List<Double> places = new ArrayList<>();
            if (draws.happens(chance)) {
                int times = 1 + draws.poisson(habit);
                for (int time = 0; time < times; time++) {
                    places.add(place(draws));
                }
                if (draws.happens(chases)) {
                    double beyond = draws.between(0, FARTHEST_CHASE_METRES);
                    places.add(draws.happens(0.5) ? ground.fromMetres() - beyond : ground.toMetres() + beyond);
                }
            }
            return places;
        }

        private double place(Draws draws) {
            while (true) {
                double place = normal
                        ? draws.normal(ground.middle(), ground.length() / 4)
                        : ground.fromMetres() + ground.length() * (draws.uniform() + draws.uniform()) / 2;
                if (ground.contains(place)) {
                    return place;
                }
            }
        }
    }
}

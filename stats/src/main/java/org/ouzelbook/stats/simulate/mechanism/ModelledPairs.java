package org.ouzelbook.stats.simulate.mechanism;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.stats.simulate.Draws;

/**
 * Pairs just as the segmentation model supposes them: log-normal lengths, grounds that abut or leave geometric vacancies, a
 * chance of being found that is each pair's own, zero-truncated Poisson numbers of registrations, places partly anywhere on
 * the ground and partly around a focal point that may lie anywhere on it, and strays.
 *
 * @param medianMetres median length of a ground
 * @param logSd standard deviation of its logarithm
 * @param longestMetres no ground is longer, and none is shorter than 150 m
 * @param abut probability that the next ground begins where one ends
 * @param vacancyMetres mean length of a vacancy
 * @param found mean probability that a pair is found on a visit
 * @param concentration how alike pairs are in that: the sum of the two parameters of the beta law
 * @param repeats parameter of the zero-truncated Poisson law of registrations on a visit that finds the pair
 * @param anywhere share of registrations that lie anywhere on the ground
 * @param spreadMetres standard deviation of the others around the focal point
 * @param straysPerKm strays met on one km of one visit
 */
public record ModelledPairs(
        double medianMetres,
        double logSd,
        double longestMetres,
        double abut,
        double vacancyMetres,
        double found,
        double concentration,
        double repeats,
        double anywhere,
        double spreadMetres,
        double straysPerKm)
        implements Mechanism {
    private static final double SHORTEST_METRES = 150;
    private static final double CELL_METRES = 25;

    static ModelledPairs drawn(double medianMetres, Draws draws) {
        return new ModelledPairs(
                medianMetres,
                draws.between(0.25, 0.45),
                2500,
                draws.between(0.3, 0.7),
                draws.between(200, 800),
                draws.between(0.55, 0.85),
                draws.between(5, 20),
                draws.between(0.2, 0.9),
                draws.between(0.3, 0.7),
                draws.between(60, 150),
                draws.between(0.01, 0.06));
    }

    @Override
    public RiverSeason season(FieldPlan plan, Draws draws) {
        Draws ground = draws.branch("ground");
        List<Pair> pairs = new ArrayList<>();
        for (Ground one : Row.of(plan, () -> length(ground), () -> vacancy(ground))) {
            pairs.add(new Holder(
                    one, ground.beta(found, concentration), ground.between(one.fromMetres(), one.toMetres())));
        }
        return FieldNotes.of(plan, pairs, straysPerKm, draws.branch("notes"));
    }

    private double length(Draws draws) {
        while (true) {
            double length = draws.logNormal(medianMetres, logSd);
            if (length >= SHORTEST_METRES && length <= longestMetres) {
                return length;
            }
        }
    }

    private double vacancy(Draws draws) {
        if (draws.happens(abut)) {
            return 0;
        }
        int cells = 1;
        while (!draws.happens(CELL_METRES / vacancyMetres)) {
            cells++;
        }
        return CELL_METRES * cells;
    }

    private final class Holder implements Pair {
        private final Ground ground;
        private final double chance;
        private final double focus;

        Holder(Ground ground, double chance, double focus) {
            this.ground = ground;
            this.chance = chance;
            this.focus = focus;
        }

        @Override
        public Ground ground() {
            return ground;
        }

        @Override
        public List<Double> met(int day, Draws draws) {
            List<Double> places = new ArrayList<>();
            if (draws.happens(chance)) {
                int times = 0;
                while (times == 0) {
                    times = draws.poisson(repeats);
                }
                for (int time = 0; time < times; time++) {
                    places.add(place(draws));
                }
            }
            return places;
        }

        private double place(Draws draws) {
            if (draws.happens(anywhere)) {
                return draws.between(ground.fromMetres(), ground.toMetres());
            }
            while (true) {
                double place = draws.normal(focus, spreadMetres);
                if (ground.contains(place)) {
                    return place;
                }
            }
        }
    }
}

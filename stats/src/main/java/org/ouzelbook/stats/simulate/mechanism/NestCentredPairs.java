package org.ouzelbook.stats.simulate.mechanism;

import java.util.ArrayList;
import java.util.List;
import org.ouzelbook.stats.simulate.Draws;

/**
 * A renewal process of grounds and free water. Lengths are gamma; the nest lies near the middle; birds are met near it by a
 * double exponential law or, further out, by a triangular one; the chance of being found differs from pair to pair and day to
 * day, and falls off on both sides of the best date; further registrations are geometric in number.
 *
 * @param medianMetres median length of a ground, nearly
 * @param shape shape of the gamma law of lengths
 * @param touching share of grounds that begin where the one before ends
 * @param gapMetres mean of the exponential gap before the others
 * @param found probability that a common pair is found on a common visit at the best date
 * @param betweenPairs standard deviation of its log-odds between pairs
 * @param betweenDays the same between pairs and visits
 * @param bestDay day of the year when pairs are most easily found
 * @param loss log-odds lost 30 days away from it; it grows with the square
 * @param nearNest share of registrations near the nest
 * @param nestMetres mean distance of those from the nest
 * @param again probability of one more registration on the same visit, each time
 * @param straysPerKm strays met on one km of one visit
 */
public record NestCentredPairs(
        double medianMetres,
        double shape,
        double touching,
        double gapMetres,
        double found,
        double betweenPairs,
        double betweenDays,
        int bestDay,
        double loss,
        double nearNest,
        double nestMetres,
        double again,
        double straysPerKm)
        implements Mechanism {
    private static final double SHORTEST_METRES = 200;
    private static final double NEST_OFF_MIDDLE = 0.12;

    static NestCentredPairs drawn(double medianMetres, Draws draws) {
        return new NestCentredPairs(
                medianMetres,
                draws.between(6, 12),
                draws.between(0.2, 0.6),
                draws.between(150, 700),
                draws.between(0.6, 0.88),
                draws.between(0.3, 0.8),
                draws.between(0.1, 0.5),
                80 + draws.below(30),
                draws.between(0.05, 0.25),
                draws.between(0.35, 0.7),
                draws.between(60, 140),
                draws.between(0.15, 0.4),
                draws.between(0.01, 0.06));
    }

    @Override
    public RiverSeason season(FieldPlan plan, Draws draws) {
        Draws ground = draws.branch("ground");
        List<Pair> pairs = new ArrayList<>();
        for (Ground one : Row.of(plan, () -> length(ground), () -> gap(ground))) {
            double nest = one.middle() + ground.normal(0, NEST_OFF_MIDDLE * one.length());
            pairs.add(new Nesters(one, Draws.logOdds(found) + ground.normal(0, betweenPairs), nest));
        }
        return FieldNotes.of(plan, pairs, straysPerKm, draws.branch("notes"));
    }

    private double length(Draws draws) {
        double nearMedian = shape - 1.0 / 3;
        return Math.max(SHORTEST_METRES, medianMetres * draws.gamma(shape) / nearMedian);
    }

    private double gap(Draws draws) {
        return draws.happens(touching) ? 0 : draws.exponential(gapMetres);
    }

    private final class Nesters implements Pair {
        private final Ground ground;
        private final double logOdds;
        private final double nest;

        Nesters(Ground ground, double logOdds, double nest) {
            this.ground = ground;
            this.logOdds = logOdds;
            this.nest = nest;
        }

        @Override
        public Ground ground() {
            return ground;
        }

        @Override
        public List<Double> met(int day, Draws draws) {
            double months = (day - bestDay) / 30.0;
            double today = logOdds + draws.normal(0, betweenDays) - loss * months * months;
            List<Double> places = new ArrayList<>();
            if (draws.happens(Draws.probability(today))) {
                do {
                    places.add(place(draws));
                } while (draws.happens(again));
            }
            return places;
        }

        private double place(Draws draws) {
            while (true) {
                double place = draws.happens(nearNest)
                        ? nest + draws.exponential(nestMetres) * (draws.happens(0.5) ? 1 : -1)
                        : ground.fromMetres() + ground.length() * (draws.uniform() + draws.uniform()) / 2;
                if (ground.contains(place)) {
                    return place;
                }
            }
        }
    }
}

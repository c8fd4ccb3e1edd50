package org.ouzelbook.stats.estimator.likelihood;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;

/**
 * A peak of a log-likelihood, reached to the last digits, and how it bends there.
 *
 * @param place where it is
 * @param curvature the bend at it
 */
record Summit(Climb.Place place, Curvature curvature) {
    private static final int MOST_STEPS = 15;
    private static final int MOST_SADDLES = 5;
    private static final double LONGEST_STEP = 2;
    private static final double AT_REST = 1e-10;
    private static final double AT_REST_IN_THE_OPEN = 1e-7;
    private static final double ROUNDING = 1e-13;
    private static final double LEAST_BEND = 1e-10;
    private static final double SAME_HEIGHT = 1e-3;
    private static final double SADDLE = -1e-3;
    private static final double ELSEWHERE = 0.1;

    /**
     * All different peaks that climbs from several starts reach, the highest first; none if no climb comes to rest.
     *
     * @param apart whether two peaks of one height are at places that mean something different
     */
    static List<Summit> all(LogLikelihood likelihood, List<double[]> starts, BiPredicate<Summit, Summit> apart) {
        List<Climb.Place> ends = starts.parallelStream()
                .map(start -> Climb.from(likelihood, start))
                .sorted(Comparator.comparingDouble(Climb.Place::value).reversed())
                .toList();
        List<Summit> summits = new ArrayList<>();
        for (Climb.Place end : ends) {
            if (isNew(summits, end) || isElsewhere(summits, end)) {
                near(likelihood, end)
                        .filter(summit -> isNew(summits, summit.place)
                                || summits.stream().allMatch(known -> apart.test(known, summit)))
                        .ifPresent(summits::add);
            }
        }
        summits.sort(Comparator.comparingDouble(Summit::value).reversed());
        return summits;
    }

    private static boolean isNew(List<Summit> summits, Climb.Place place) {
        return summits.stream().noneMatch(known -> Math.abs(known.value() - place.value()) < SAME_HEIGHT);
    }

    private static boolean isElsewhere(List<Summit> summits, Climb.Place place) {
        return summits.stream().allMatch(known -> {
            double[] away = sum(place.point(), known.place.point(), -1);
            return Climb.largest(away) > ELSEWHERE;
        });
    }

    /** Whether two peaks are of one height. */
    boolean isAsHighAs(Summit other) {
        return Math.abs(value() - other.value()) < SAME_HEIGHT;
    }

    /** The peak by a place, by Newton's method; empty if none is reached. */
    static Optional<Summit> near(LogLikelihood likelihood, Climb.Place start) {
        Climb.Place place = start;
        int saddles = 0;
        for (int step = 0; step < MOST_STEPS; step++) {
            Curvature curvature = Curvature.at(likelihood, place.point());
            int lowest = lowest(curvature);
            if (curvature.bend(lowest) < SADDLE) {
                if (++saddles > MOST_SADDLES) {
                    return Optional.empty();
                }
                place = offTheSaddle(likelihood, place, curvature.direction(lowest));
                continue;
            }
            if (isAtRest(curvature, place.value())) {
                return Optional.of(new Summit(place, curvature));
            }
            place = moved(likelihood, place, move(curvature));
        }
        return Optional.empty();
    }

    private static int lowest(Curvature curvature) {
        int lowest = 0;
        for (int i = 1; i < curvature.size(); i++) {
            if (curvature.bend(i) < curvature.bend(lowest)) {
                lowest = i;
            }
        }
        return lowest;
    }

    private static Climb.Place offTheSaddle(LogLikelihood likelihood, Climb.Place place, double[] direction) {
        Climb.Place one = Climb.from(likelihood, sum(place.point(), direction, 0.5));
        Climb.Place other = Climb.from(likelihood, sum(place.point(), direction, -0.5));
        return one.value() >= other.value() ? one : other;
    }

    /** At rest, Newton's step is nothing beside a standard error, in every direction that is not open. */
    private static boolean isAtRest(Curvature curvature, double value) {
        double rounding = ROUNDING * (1 + Math.abs(value));
        for (int i = 0; i < curvature.size(); i++) {
            double slope = Math.abs(curvature.slope(i));
            double bend = curvature.bend(i);
            double still = curvature.isOpen(i) ? AT_REST_IN_THE_OPEN : AT_REST * Math.sqrt(bend);
            if (!(slope < Math.max(still, rounding))) {
                return false;
            }
        }
        return true;
    }

    private static double[] move(Curvature curvature) {
        double[] move = new double[curvature.size()];
        for (int i = 0; i < move.length; i++) {
            double[] direction = curvature.direction(i);
            double slope = curvature.slope(i);
            double bend = Math.max(curvature.bend(i), LEAST_BEND);
            boolean level = curvature.isOpen(i) && Math.abs(slope) < AT_REST_IN_THE_OPEN;
            double length = level ? 0 : Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, slope / bend));
            for (int j = 0; j < move.length; j++) {
                move[j] += length * direction[j];
            }
        }
        return move;
    }

    private static Climb.Place moved(LogLikelihood likelihood, Climb.Place from, double[] move) {
        double[] gradient = new double[move.length];
        double lost = 1e-9 * (1 + Math.abs(from.value()));
        for (double share = 1; share > 1e-4; share /= 2) {
            double[] there = sum(from.point(), move, share);
            double value = likelihood.at(there, gradient);
            if (value >= from.value() - lost) {
                return new Climb.Place(there, value);
            }
        }
        return from;
    }

    private static double[] sum(double[] point, double[] move, double share) {
        double[] sum = point.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += share * move[i];
        }
        return sum;
    }

    double value() {
        return place.value();
    }
}

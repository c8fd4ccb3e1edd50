package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.BiFunction;
import java.util.function.BinaryOperator;
import java.util.stream.IntStream;

/**
 * The likelihood of a nature, given all lines of a book, with its gradient. By Fisher's identity the gradient is the expected
 * gradient over all maps, so only the stretches that can be territories are looked at again.
 */
final class Likelihood {
    /** Steps of difference quotients. */
    private static final double STEP = 1e-5;

    /** Stretches less probable than this hold too little of the gradient to matter. */
    private static final double NEGLIGIBLE = 3e-6;

    /** The numbers of a nature that tell how often visits find a pair. */
    private static final int FIRST_OF_FINDING = 4;

    /** Those that tell what a visit meets. */
    private static final int FIRST_OF_MEETINGS = 6;

    private final List<Tree> trees;

    Likelihood(List<Tree> trees) {
        this.trees = List.copyOf(trees);
    }

    /** The likelihood at a point, with its gradient. */
    static final class Slope {
        private final double log;
        private final double[] gradient;

        Slope(double log, double[] gradient) {
            this.log = log;
            this.gradient = gradient;
        }

        /** Its logarithm. */
        double log() {
            return log;
        }

        /** Its gradient; all zero if not asked for. */
        double[] gradient() {
            return gradient;
        }

        private static Slope sum(Slope one, Slope other) {
            double[] gradient = new double[one.gradient.length];
            for (int j = 0; j < gradient.length; j++) {
                gradient[j] = one.gradient[j] + other.gradient[j];
            }
            return new Slope(one.log + other.log, gradient);
        }
    }

    double log(double[] point) {
        return logs(List.of(point)).get(0);
    }

    /** The logarithms at several points. */
    List<Double> logs(List<double[]> points) {
        return over(points, (recursion, point) -> logOf(recursion), 0.0, Double::sum);
    }

    Slope slope(double[] point) {
        return slopes(List.of(point)).get(0);
    }

    /** The slopes at several points. */
    List<Slope> slopes(List<double[]> points) {
        return over(points, Likelihood::slope, new Slope(0, new double[Nature.SIZE]), Slope::sum);
    }

    /** Adds up over the trees, for each of several points. */
    private <T> List<T> over(
            List<double[]> points, BiFunction<TreeRecursion, double[], T> work, T zero, BinaryOperator<T> sum) {
        List<Nature> natures = points.stream().map(Nature::at).toList();
        List<List<T>> ofTrees = trees.parallelStream()
                .map(tree -> {
                    List<TreeRecursion> recursions = TreeRecursion.of(tree, natures);
                    return IntStream.range(0, points.size())
                            .mapToObj(i -> work.apply(recursions.get(i), points.get(i)))
                            .toList();
                })
                .toList();
        return IntStream.range(0, points.size())
                .mapToObj(i -> ofTrees.stream().map(tree -> tree.get(i)).reduce(zero, sum))
                .toList();
    }

    private static double logOf(TreeRecursion recursion) {
        Nature nature = recursion.nature;
        double perMetre = nature.strays() / 1000;
        double log = recursion.logTotal();
        for (Cells cells : recursion.tree.lines) {
            log += onVisits(cells) * Math.log(perMetre) - walked(cells) * perMetre;
        }
        for (AtOnce notes : notes(recursion.tree)) {
            log += notes.nearNoted() * Math.log(nature.noting()) + notes.nearUnnoted() * Math.log1p(-nature.noting());
        }
        return log;
    }

    /** What was noted on each line, and of birds on two waters at each confluence. */
    private static List<AtOnce> notes(Tree tree) {
        List<AtOnce> notes = new ArrayList<>();
        tree.lines.forEach(cells -> notes.add(cells.atOnce));
        tree.forks.forEach(
                forks -> forks.forEach(fork -> fork.crossings.forEach(crossing -> notes.add(crossing.cells.atOnce))));
        return notes;
    }

    private static int onVisits(Cells cells) {
        int size = 0;
        for (int visit : cells.visit) {
            size += visit >= 0 ? 1 : 0;
        }
        return size;
    }

    private static double walked(Cells cells) {
        double metres = 0;
        for (int[] covered : cells.covered) {
            metres += covered[cells.count] * cells.width;
        }
        return metres;
    }

    private static Slope slope(TreeRecursion recursion, double[] point) {
        Tree tree = recursion.tree;
        double[] gradient = new double[Nature.SIZE];
        double perMetre = recursion.nature.strays() / 1000;
        for (int line = 0; line < tree.lines.size(); line++) {
            Cells cells = tree.lines.get(line);
            Gathering straight = new Gathering(cells, point, gradient);
            recursion.straight(line, (from, n) -> true, straight);
            straight.lengths();
            vacancies(recursion.lines.get(line), recursion.nature, gradient);
            gradient[Nature.STRAYS] += onVisits(cells) - walked(cells) * perMetre;
            recursion.lines.get(line).forks().forEach(fork -> fork(recursion, fork, point, gradient));
        }
        double noting = recursion.nature.noting();
        for (AtOnce notes : notes(tree)) {
            gradient[Nature.NOTING] += notes.nearNoted() * (1 - noting) - notes.nearUnnoted() * noting;
        }
        return new Slope(logOf(recursion), gradient);
    }

    private static void vacancies(Recursion recursion, Nature nature, double[] gradient) {
        double[] steps = recursion.expectedSteps();
        gradient[2] += steps[0] * (1 - nature.abutting()) - steps[1] * nature.abutting();
        double end = Recursion.endOfVacancy(nature, recursion.cells);
        // end = w / (v + w), so d log end / d log v = −(1 − end) and d log(1 − end) / d log v = end.
        gradient[3] += -steps[2] * (1 - end) + steps[3] * end;
    }

    /** Territories that bend at a confluence, and what else meets there. */
    private static void fork(TreeRecursion recursion, ForkSum fork, double[] point, double[] gradient) {
        Map<CrossingSum, Gathering> bent = new LinkedHashMap<>();
        fork.crossings.forEach(crossing -> bent.put(crossing, new Gathering(crossing.crossing.cells, point, gradient)));
        recursion.bent(
                fork,
                (crossing, n, m, probability) -> Objects.requireNonNull(bent.get(crossing))
                        .hear(crossing.crossing.one.reach() - n, n + m, probability));
        bent.values().forEach(Gathering::lengths);
        for (int j = 0; j < FIRST_OF_FINDING; j++) {
            double[] up = ForkSum.prior(fork.fork, fork.states, Nature.at(moved(point, j, STEP)));
            double[] down = ForkSum.prior(fork.fork, fork.states, Nature.at(moved(point, j, -STEP)));
            for (int i = 0; i < up.length; i++) {
                double probability = Math.exp(fork.logOf(i) - recursion.logTotal());
                if (probability > 0) {
                    gradient[j] += probability * (up[i] - down[i]) / (2 * STEP);
                }
            }
        }
    }

    private static double[] moved(double[] point, int coordinate, double by) {
        double[] moved = point.clone();
        moved[coordinate] += by;
        return moved;
    }

    /** Gathers what the territories on some cells say of the nature. */
    private static final class Gathering implements TreeRecursion.Straight {
        private final Cells cells;
        private final double[] point;
        private final double[] gradient;

        /** The weights here, and then beside here by each number that tells what a visit meets. */
        private final StretchWeights weights;

        /** How many numbers these are: the noting comes last, and is left out where it says nothing. */
        private final int meetings;

        private final FindingLaw[] found = new FindingLaw[FIRST_OF_MEETINGS];
        private final double[] expectedLengths;

        Gathering(Cells cells, double[] point, double[] gradient) {
            this.cells = cells;
            this.point = point;
            this.gradient = gradient;
            int visits = cells.covered.length;
            for (int j = FIRST_OF_FINDING; j < FIRST_OF_MEETINGS; j++) {
                found[j] = FindingLaw.of(Nature.at(moved(point, j, STEP)), visits);
            }
            meetings = (cells.atOnce.tellsOfNoting() ? Nature.SIZE : Nature.NOTING) - FIRST_OF_MEETINGS;
            List<Nature> natures = new ArrayList<>(List.of(Nature.at(point)));
            for (int j = FIRST_OF_MEETINGS; j < FIRST_OF_MEETINGS + meetings; j++) {
                natures.add(Nature.at(moved(point, j, STEP)));
            }
            weights = new StretchWeights(cells, natures);
            expectedLengths = new double[cells.longest + 1];
        }

        @Override
        public void hear(int from, int cellsLong, double probability) {
            expectedLengths[cellsLong] += probability;
            if (probability > NEGLIGIBLE) {
                weights.look(from, from + cellsLong);
                double base = weights.log(0);
                for (int j = FIRST_OF_FINDING; j < FIRST_OF_MEETINGS; j++) {
                    gradient[j] += probability * (weights.log(0, found[j]) - base) / STEP;
                }
                for (int j = 0; j < meetings && weights.tellsOfMeetings(); j++) {
                    gradient[FIRST_OF_MEETINGS + j] += probability * (weights.log(j + 1) - base) / STEP;
                }
            }
        }

        /** What the lengths of all say, once all are heard. */
        void lengths() {
            for (int j = 0; j < 2; j++) {
                double[] up = LengthLaw.of(Nature.at(moved(point, j, STEP)), cells);
                double[] down = LengthLaw.of(Nature.at(moved(point, j, -STEP)), cells);
                for (int n = cells.shortest; n <= cells.longest; n++) {
                    gradient[j] += expectedLengths[n] * (up[n] - down[n]) / (2 * STEP);
                }
            }
        }
    }
}

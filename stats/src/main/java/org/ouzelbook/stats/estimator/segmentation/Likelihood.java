package org.ouzelbook.stats.estimator.segmentation;

import java.util.List;
import java.util.function.Function;

/**
 * The likelihood of a nature, given all lines of a book, with its gradient. By Fisher's identity the gradient is the expected
 * gradient over all maps, so only the stretches that can be territories are looked at again.
 */
final class Likelihood {
    /** Steps of difference quotients. */
    private static final double STEP = 1e-5;

    /** Stretches less probable than this hold too little of the gradient to matter. */
    private static final double NEGLIGIBLE = 1e-5;

    /** The numbers of a nature that tell how often visits find a pair. */
    private static final int FIRST_OF_FINDING = 4;

    /** Those that tell what a visit meets. */
    private static final int FIRST_OF_MEETINGS = 6;

    private final List<Cells> lines;

    Likelihood(List<Cells> lines) {
        this.lines = List.copyOf(lines);
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
        return over(cells -> new Slope(logOf(new Recursion(cells, Nature.at(point)), point), new double[Nature.SIZE]))
                .log();
    }

    Slope slope(double[] point) {
        return over(cells -> slope(cells, point));
    }

    private Slope over(Function<Cells, Slope> work) {
        List<Slope> slopes = lines.parallelStream().map(work).toList();
        return slopes.stream().reduce(new Slope(0, new double[Nature.SIZE]), Slope::sum);
    }

    private static double logOf(Recursion recursion, double[] point) {
        Nature nature = Nature.at(point);
        double perMetre = nature.strays() / 1000;
        AtOnce atOnce = recursion.cells.atOnce;
        return recursion.logTotal()
                + onVisits(recursion.cells) * Math.log(perMetre)
                - walked(recursion.cells) * perMetre
                + atOnce.nearNoted() * Math.log(nature.noting())
                + atOnce.nearUnnoted() * Math.log1p(-nature.noting());
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

    private static Slope slope(Cells cells, double[] point) {
        Nature nature = Nature.at(point);
        Recursion recursion = new Recursion(cells, nature);
        double[] gradient = new double[Nature.SIZE];
        StretchWeights here = new StretchWeights(cells, nature);
        int visits = cells.covered.length;
        FindingLaw law = FindingLaw.of(nature, visits);
        FindingLaw[] found = new FindingLaw[FIRST_OF_MEETINGS];
        for (int j = FIRST_OF_FINDING; j < FIRST_OF_MEETINGS; j++) {
            found[j] = FindingLaw.of(Nature.at(moved(point, j, STEP)), visits);
        }
        StretchWeights[] beside = new StretchWeights[Nature.SIZE];
        for (int j = FIRST_OF_MEETINGS; j < Nature.SIZE; j++) {
            beside[j] = new StretchWeights(cells, Nature.at(moved(point, j, STEP)));
        }
        double[] expectedLengths = new double[cells.longest + 1];
        for (int from = 0; from < cells.count; from++) {
            if (recursion.logBegin(from) == Double.NEGATIVE_INFINITY) {
                continue;
            }
            for (int n = cells.shortest; n < recursion.ratio[from].length; n++) {
                double probability = Math.exp(recursion.logProbability(from, n));
                expectedLengths[n] += probability;
                if (probability > NEGLIGIBLE) {
                    here.look(from, from + n);
                    double base = here.log(law);
                    for (int j = FIRST_OF_FINDING; j < FIRST_OF_MEETINGS; j++) {
                        gradient[j] += probability * (here.log(found[j]) - base) / STEP;
                    }
                    for (int j = FIRST_OF_MEETINGS; j < Nature.SIZE && here.tellsOfMeetings(); j++) {
                        gradient[j] += probability * (beside[j].log(from, from + n) - base) / STEP;
                    }
                }
            }
        }
        double perMetre = nature.strays() / 1000;
        gradient[Nature.STRAYS] += onVisits(cells) - walked(cells) * perMetre;
        gradient[Nature.NOTING] +=
                cells.atOnce.nearNoted() * (1 - nature.noting()) - cells.atOnce.nearUnnoted() * nature.noting();
        for (int j = 0; j < 2; j++) {
            double[] up = LengthLaw.of(Nature.at(moved(point, j, STEP)), cells);
            double[] down = LengthLaw.of(Nature.at(moved(point, j, -STEP)), cells);
            for (int n = cells.shortest; n <= cells.longest; n++) {
                gradient[j] += expectedLengths[n] * (up[n] - down[n]) / (2 * STEP);
            }
        }
        double[] steps = recursion.expectedSteps();
        gradient[2] = steps[0] * (1 - nature.abutting()) - steps[1] * nature.abutting();
        double end = Recursion.endOfVacancy(nature, cells);
        // end = w / (v + w), so d log end / d log v = −(1 − end) and d log(1 − end) / d log v = end.
        gradient[3] = -steps[2] * (1 - end) + steps[3] * end;
        return new Slope(logOf(recursion, point), gradient);
    }

    private static double[] moved(double[] point, int coordinate, double by) {
        double[] moved = point.clone();
        moved[coordinate] += by;
        return moved;
    }
}

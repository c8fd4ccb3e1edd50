package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The forward and backward recursions over all maps of a line: every way of cutting it into territories and vacant stretches,
 * each with its weight. After a territory the next one abuts with a probability, else a vacant stretch of geometric length
 * follows; the lower end of the line counts as the end of a territory.
 *
 * <p>Source: explicit-duration hidden Markov models, L. R. Rabiner (1989), Proc. IEEE 77:257–286, section IV D; from memory.
 */
final class Recursion {
    private static final double NONE = Double.NEGATIVE_INFINITY;

    final Cells cells;
    final double[] lengths;

    /** Of a stretch: the logarithm of its ratio, by lower border and number of cells. */
    final double[][] ratio;

    private final double abut;
    private final double part;
    private final double endVacant;
    private final double stayVacant;

    /** Weight of all maps below a border that end there with a territory, or with a vacant cell. */
    private final double[] territoryBelow;

    private final double[] vacantBelow;

    /** Weight of all maps above a border, after a territory, after a vacant cell, or beginning with a territory. */
    private final double[] afterTerritory;

    private final double[] afterVacant;
    private final double[] beginning;

    Recursion(Cells cells, Nature nature) {
        this(cells, nature, ratios(cells, nature));
    }

    Recursion(Cells cells, Nature nature, double[][] ratio) {
        this.cells = cells;
        this.ratio = ratio;
        lengths = LengthLaw.of(nature, cells);
        abut = Math.log(nature.abutting());
        part = Math.log1p(-nature.abutting());
        double end = endOfVacancy(nature, cells);
        endVacant = Math.log(end);
        stayVacant = Math.log1p(-end);
        int count = cells.count;
        territoryBelow = new double[count + 1];
        vacantBelow = new double[count + 1];
        afterTerritory = new double[count + 1];
        afterVacant = new double[count + 1];
        beginning = new double[count + 1];
        forward();
        backward();
    }

    /** Probability that a vacant cell is the last of its stretch; kept below 1 so that stretches of any length can be. */
    static double endOfVacancy(Nature nature, Cells cells) {
        return cells.width / (nature.vacantLength() + cells.width);
    }

    static double[][] ratios(Cells cells, Nature nature) {
        StretchWeights weights = new StretchWeights(cells, nature);
        double[][] ratio = new double[cells.count][];
        for (int from = 0; from < cells.count; from++) {
            ratio[from] = new double[Math.min(cells.longest, cells.count - from) + 1];
            Arrays.fill(ratio[from], NONE);
            double apart = 0;
            List<Cells.TurnCells> turns = new ArrayList<>();
            for (int n = 1; n < ratio[from].length; n++) {
                for (Cells.ApartCells pair : cells.apart.get(from + n - 1)) {
                    apart += pair.lower() >= from ? pair.logFactor() : 0;
                }
                turns.addAll(cells.turns.get(from + n - 1));
                if (n >= cells.shortest && apart > NONE) {
                    double turned = 0;
                    for (Cells.TurnCells turn : turns) {
                        turned += turn.log(from, from + n);
                    }
                    ratio[from][n] = apart + turned + weights.log(from, from + n);
                }
            }
        }
        return ratio;
    }

    private void forward() {
        Arrays.fill(territoryBelow, NONE);
        Arrays.fill(vacantBelow, NONE);
        territoryBelow[0] = 0;
        double[] begin = new double[cells.count + 1];
        double[] terms = new double[cells.longest + 1];
        for (int c = 0; c <= cells.count; c++) {
            if (c > 0) {
                int terms0 = 0;
                for (int n = cells.shortest; n <= Math.min(c, cells.longest); n++) {
                    terms[terms0++] = begin[c - n] + lengths[n] + ratio[c - n][n];
                }
                territoryBelow[c] = sum(terms, terms0);
                double vacant =
                        LogSum.of(territoryBelow[c - 1] + part + cells.limit[c - 1], vacantBelow[c - 1] + stayVacant);
                vacantBelow[c] = cells.canBeVacant[c - 1] ? vacant : NONE;
            }
            begin[c] = LogSum.of(territoryBelow[c] + abut, vacantBelow[c] + endVacant) + cells.limit[c];
        }
    }

    private void backward() {
        int count = cells.count;
        Arrays.fill(beginning, NONE);
        double[] terms = new double[cells.longest + 1];
        for (int c = count - 1; c >= 0; c--) {
            int longest = Math.min(cells.longest, count - c);
            int size = 0;
            for (int n = cells.shortest; n <= longest; n++) {
                terms[size++] = lengths[n] + ratio[c][n] + afterTerritory[c + n];
            }
            beginning[c] = sum(terms, size);
            double vacant = cells.canBeVacant[c] ? afterVacant[c + 1] : NONE;
            afterTerritory[c] = LogSum.of(abut + beginning[c], part + vacant) + cells.limit[c];
            afterVacant[c] = LogSum.of(endVacant + cells.limit[c] + beginning[c], stayVacant + vacant);
        }
    }

    private static double sum(double[] terms, int size) {
        double highest = NONE;
        for (int i = 0; i < size; i++) {
            highest = Math.max(highest, terms[i]);
        }
        if (highest == NONE) {
            return NONE;
        }
        double sum = 0;
        for (int i = 0; i < size; i++) {
            double below = terms[i] - highest;
            if (below > -40) {
                sum += Math.exp(below);
            }
        }
        return highest + Math.log(sum);
    }

    /** The logarithm of the sum of the weights of all maps; minus infinity where what is known contradicts itself. */
    double logTotal() {
        return afterTerritory[0];
    }

    /** Weight of all maps below a border, ready for a territory to begin there. */
    double logBegin(int c) {
        return LogSum.of(territoryBelow[c] + abut, vacantBelow[c] + endVacant) + cells.limit[c];
    }

    /** The logarithm of the probability that a territory lies between two borders, given all that was met. */
    double logProbability(int from, int cellsLong) {
        return logBegin(from)
                + lengths[cellsLong]
                + ratio[from][cellsLong]
                + afterTerritory[from + cellsLong]
                - logTotal();
    }

    /** Expected numbers of steps: from a territory into the next, into a vacant cell, and from a vacant cell to either. */
    double[] expectedSteps() {
        double[] steps = new double[4];
        for (int c = 0; c < cells.count; c++) {
            double vacant = cells.canBeVacant[c] ? afterVacant[c + 1] : NONE;
            double fromTerritory = territoryBelow[c] + cells.limit[c] - logTotal();
            steps[0] += Math.exp(fromTerritory + abut + beginning[c]);
            steps[1] += Math.exp(fromTerritory + part + vacant);
            steps[2] += Math.exp(vacantBelow[c] + endVacant + cells.limit[c] + beginning[c] - logTotal());
            steps[3] += Math.exp(vacantBelow[c] + stayVacant + vacant - logTotal());
        }
        return steps;
    }

    double logVacantAfterTerritory(int c) {
        return cells.canBeVacant[c] ? part + cells.limit[c] : NONE;
    }

    double logVacantAfterVacant(int c) {
        return cells.canBeVacant[c] ? stayVacant : NONE;
    }

    double logBeginAfterTerritory(int c) {
        return abut + cells.limit[c];
    }

    double logBeginAfterVacant(int c) {
        return endVacant + cells.limit[c];
    }

    /** The logarithm of the probability that a territory begins at a border. */
    double logBeginProbability(int c) {
        return logBegin(c) + beginning[c] - logTotal();
    }

    /** Probability that a vacant cell follows a territory that ends at a border. */
    double pVacantAfterTerritory(int c) {
        return follows(logVacantAfterTerritory(c), c, afterTerritory[c]);
    }

    /** Probability that a vacant cell follows a vacant cell below a border. */
    double pVacantAfterVacant(int c) {
        return follows(logVacantAfterVacant(c), c, afterVacant[c]);
    }

    private double follows(double logStep, int c, double logAll) {
        return logAll == NONE ? 0 : Math.exp(logStep + afterVacant[c + 1] - logAll);
    }
}

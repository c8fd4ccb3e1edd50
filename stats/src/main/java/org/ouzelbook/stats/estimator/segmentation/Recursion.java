package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.ouzelbook.stats.estimator.segmentation.ForkState.End;

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

    private final Summing summing;

    /** The confluences on the line, going up. */
    private final List<ForkSum> forks;

    private final Map<Integer, ForkSum> byBorder = new HashMap<>();

    /** Weight of all maps below a border that end there with a territory, or with a vacant cell. */
    private final double[] territoryBelow;

    private final double[] vacantBelow;

    /** Weight of all maps below a border, ready for a territory to begin there. */
    private final double[] begin;

    /** Weight of all maps above a border, after a territory, after a vacant cell, or beginning with a territory. */
    private final double[] afterTerritory;

    private final double[] afterVacant;
    private final double[] beginning;
    private double total = NONE;

    /**
     * The sums over all that lies above each border of a line.
     *
     * @param cells the line
     * @param nature the nature
     * @param ratio the ratio of each stretch
     * @param forks the confluences on the line, with what lies on the tributaries, going up
     * @param summing how weights are put together
     */
    Recursion(Cells cells, Nature nature, double[][] ratio, List<ForkSum> forks, Summing summing) {
        this.cells = cells;
        this.ratio = ratio;
        this.forks = forks;
        this.summing = summing;
        forks.forEach(fork -> byBorder.put(fork.fork.border, fork));
        lengths = LengthLaw.of(nature, cells);
        abut = Math.log(nature.abutting());
        part = Math.log1p(-nature.abutting());
        double end = endOfVacancy(nature, cells);
        endVacant = Math.log(end);
        stayVacant = Math.log1p(-end);
        int count = cells.count;
        territoryBelow = new double[count + 1];
        vacantBelow = new double[count + 1];
        begin = new double[count + 1];
        afterTerritory = new double[count + 1];
        afterVacant = new double[count + 1];
        beginning = new double[count + 1];
        backward();
    }

    /** Probability that a vacant cell is the last of its stretch; kept below 1 so that stretches of any length can be. */
    static double endOfVacancy(Nature nature, Cells cells) {
        return cells.width / (nature.vacantLength() + cells.width);
    }

    /** {@return of each nature, the ratio of each stretch, by lower border and number of cells} */
    static List<double[][]> ratios(Cells cells, List<Nature> natures) {
        StretchWeights weights = new StretchWeights(cells, natures);
        List<double[][]> ratios =
                natures.stream().map(nature -> new double[cells.count][]).toList();
        int last = cells.through > 0 ? cells.through : cells.count;
        for (int from = 0; from < last; from++) {
            double[] known = known(cells, from);
            for (double[][] ratio : ratios) {
                ratio[from] = known.clone();
            }
            for (int n = cells.shortest; n < known.length; n++) {
                if (known[n] > NONE) {
                    add(weights, from, n, ratios);
                }
            }
        }
        return ratios;
    }

    private static void add(StretchWeights weights, int from, int n, List<double[][]> ratios) {
        boolean canBe = weights.look(from, from + n);
        for (int i = 0; i < ratios.size(); i++) {
            ratios.get(i)[from][n] += canBe ? weights.log(i) : NONE;
        }
    }

    /** What was decided or noted of the stretches from a border up, by number of cells; minus infinity where none can be. */
    private static double[] known(Cells cells, int from) {
        double[] known = new double[Math.min(cells.longest, cells.count - from) + 1];
        Arrays.fill(known, NONE);
        double apart = 0;
        List<Cells.TurnCells> turns = new ArrayList<>();
        for (int n = 1; n < known.length; n++) {
            for (Cells.ApartCells pair : cells.apart.get(from + n - 1)) {
                apart += pair.lower() >= from ? pair.logFactor() : 0;
            }
            turns.addAll(cells.turns.get(from + n - 1));
            if (n >= cells.shortest && from + n > cells.through) {
                double turned = 0;
                for (Cells.TurnCells turn : turns) {
                    turned += turn.log(from, from + n);
                }
                known[n] = apart + turned;
            }
        }
        return known;
    }

    /** Weight of a territory, with what it passes where tributaries join. */
    double log(int from, int cellsLong) {
        double log = lengths[cellsLong] + ratio[from][cellsLong];
        return forks.isEmpty() || log == NONE ? log : log + passing(from, from + cellsLong);
    }

    /** Weight of what a territory along the line passes at the confluences that it reaches across. */
    double passing(int from, int to) {
        double log = 0;
        for (ForkSum fork : forks) {
            if (from < fork.fork.border && fork.fork.border < to) {
                log += fork.straight();
            }
        }
        return log;
    }

    /** The same for an arm of a confluence, by the number of cells that a territory reaches into it. */
    double[] passing(Arm arm) {
        double[] passing = new double[arm.reach() + 1];
        for (int out = 1; out <= arm.reach(); out++) {
            int end = arm.border(out);
            passing[out] = passing(Math.min(arm.border(), end), Math.max(arm.border(), end));
        }
        return passing;
    }

    private void backward() {
        int count = cells.count;
        Arrays.fill(beginning, NONE);
        Arrays.fill(afterVacant, NONE);
        double[] terms = new double[cells.longest + 1 + forks.size()];
        for (int c = count; c >= 0; c--) {
            if (c < count) {
                int size = 0;
                for (int n = cells.shortest; n <= Math.min(cells.longest, count - c); n++) {
                    terms[size++] = log(c, n) + afterTerritory[c + n];
                }
                for (ForkSum fork : forks) {
                    int below = fork.fork.border - c;
                    if (below > 0 && below <= cells.longest) {
                        terms[size++] = fork.bending(below);
                    }
                }
                beginning[c] = summing.of(terms, size);
            }
            ForkSum fork = byBorder.get(c);
            if (fork != null) {
                meet(fork);
                afterTerritory[c] = fork.after(End.TERRITORY);
                afterVacant[c] = fork.after(End.VACANT);
            } else if (c == count) {
                afterTerritory[c] = 0;
                afterVacant[c] = 0;
            } else {
                double vacant = logVacantFrom(c);
                afterTerritory[c] = summing.of(abut + beginning[c], part + vacant) + cells.limit[c];
                afterVacant[c] = summing.of(endVacant + cells.limit[c] + beginning[c], stayVacant + vacant);
            }
        }
    }

    private void meet(ForkSum fork) {
        int above = fork.fork.above;
        if (above >= 0) {
            fork.set(above, this, passing(fork.fork.arms.get(above)));
        }
        if (fork.fork.hasBelow) {
            fork.setBelow(passing(fork.fork.arms.get(0)));
        } else {
            fork.sumAbove();
        }
    }

    /** The sums over all that lies below each border of a line that joins no other. */
    void forward() {
        start(afterTerritory[0]);
        territoryBelow[0] = 0;
        goUp();
    }

    /**
     * The sums over all that lies outside each border of a tributary and what is above it.
     *
     * @param fork where it joins another line, all below known
     * @param arm which of the arms it is
     * @param all the weight of all maps
     */
    void forward(ForkSum fork, int arm, double all) {
        start(all);
        enter(fork, arm, 0);
        goUp();
    }

    private void start(double all) {
        total = all;
        Arrays.fill(territoryBelow, NONE);
        Arrays.fill(vacantBelow, NONE);
        Arrays.fill(begin, NONE);
    }

    /** Begins an arm that goes up this line from a confluence. */
    private void enter(ForkSum fork, int arm, int border) {
        begin[border] = fork.into(arm, End.TERRITORY);
        vacantBelow[border + 1] = cells.canBeVacant[border] ? fork.into(arm, End.VACANT) : NONE;
        int reach = fork.fork.arms.get(arm).reach();
        for (int out = 1; out <= reach; out++) {
            territoryBelow[border + out] = LogSum.of(territoryBelow[border + out], fork.ending(arm, out));
        }
    }

    private void goUp() {
        double[] terms = new double[cells.longest + 1];
        for (int c = 0; c <= cells.count; c++) {
            if (c > 0) {
                int size = 0;
                for (int n = cells.shortest; n <= Math.min(c, cells.longest); n++) {
                    terms[size++] = begin[c - n] + log(c - n, n);
                }
                terms[size++] = territoryBelow[c];
                territoryBelow[c] = summing.of(terms, size);
                if (cells.canBeVacant[c - 1] && !byBorder.containsKey(c - 1)) {
                    double vacant = LogSum.of(
                            territoryBelow[c - 1] + part + cells.limit[c - 1], vacantBelow[c - 1] + stayVacant);
                    vacantBelow[c] = LogSum.of(vacantBelow[c], vacant);
                }
            }
            ForkSum fork = byBorder.get(c);
            if (fork != null) {
                fork.comeFrom(territoryBelow[c], vacantBelow[c], begin);
                if (fork.fork.above >= 0) {
                    enter(fork, fork.fork.above, c);
                }
            } else if (begin[c] == NONE) {
                begin[c] = LogSum.of(territoryBelow[c] + abut, vacantBelow[c] + endVacant) + cells.limit[c];
            }
        }
    }

    /** Weight of all maps with a territory along the line across a border. */
    double across(int border) {
        double sum = NONE;
        for (int from = Math.max(0, border - cells.longest + 1); from < border; from++) {
            for (int n = Math.max(cells.shortest, border - from + 1); n < ratio[from].length; n++) {
                sum = LogSum.of(sum, begin[from] + log(from, n) + afterTerritory[from + n]);
            }
        }
        return sum;
    }

    /** The logarithm of the sum of the weights of all maps; minus infinity where what is known contradicts itself. */
    double logTotal() {
        return afterTerritory[0];
    }

    /** Weight of all maps below a border, ready for a territory to begin there. */
    double logBegin(int c) {
        return begin[c];
    }

    /** Weight of all maps above a border that begin there with a territory. */
    double logBeginning(int c) {
        return beginning[c];
    }

    /** Weight of all maps above a border that begin there with a vacant cell. */
    double logVacantFrom(int c) {
        return cells.canBeVacant[c] ? afterVacant[c + 1] : NONE;
    }

    /** Weight of all maps above a territory that ends at a border. */
    double logAfterTerritory(int c) {
        return afterTerritory[c];
    }

    /** The same above a vacant cell below a border. */
    double logAfterVacant(int c) {
        return afterVacant[c];
    }

    /** Weight of all maps above a border without a confluence that go on with a vacant cell. */
    double logVacant(int c, boolean afterTerritory) {
        return (afterTerritory ? part + cells.limit[c] : stayVacant) + logVacantFrom(c);
    }

    /** Weight of all maps above such a border that go on with a territory. */
    double logBegins(int c, boolean afterTerritory) {
        return (afterTerritory ? abut : endVacant) + cells.limit[c] + beginning[c];
    }

    /** The confluences on the line, going up. */
    List<ForkSum> forks() {
        return forks;
    }

    /** Those above a border, and no more than some cells above it. */
    List<ForkSum> forksAbove(int from, int cellsLong) {
        if (forks.isEmpty()) {
            return forks;
        }
        return forks.stream()
                .filter(fork -> fork.fork.border > from && fork.fork.border <= from + cellsLong)
                .toList();
    }

    /** The confluence at a border, if there is one. */
    Optional<ForkSum> fork(int c) {
        return Optional.ofNullable(byBorder.get(c));
    }

    /** The logarithm of the probability that a territory lies between two borders, given all that was met. */
    double logProbability(int from, int cellsLong) {
        return begin[from] + log(from, cellsLong) + afterTerritory[from + cellsLong] - total;
    }

    /**
     * Expected numbers of steps, but at confluences: from a territory into the next, into a vacant cell, and from a vacant cell
     * to either.
     */
    double[] expectedSteps() {
        double[] steps = new double[4];
        for (int c = 0; c < cells.count; c++) {
            if (byBorder.containsKey(c)) {
                continue;
            }
            double vacant = logVacantFrom(c);
            double fromTerritory = territoryBelow[c] + cells.limit[c] - total;
            steps[0] += Math.exp(fromTerritory + abut + beginning[c]);
            steps[1] += Math.exp(fromTerritory + part + vacant);
            steps[2] += Math.exp(vacantBelow[c] + endVacant + cells.limit[c] + beginning[c] - total);
            steps[3] += Math.exp(vacantBelow[c] + stayVacant + vacant - total);
        }
        return steps;
    }

    /** Probability that a vacant cell follows a border without a confluence. */
    double pVacant(int c, boolean afterTerritory) {
        double all = afterTerritory ? this.afterTerritory[c] : afterVacant[c];
        return all == NONE ? 0 : Math.exp(logVacant(c, afterTerritory) - all);
    }
}

package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * All maps of lines that meet, under one nature: summed from the uppermost tributaries down to the mouth, then from there up, so
 * that all is known of each line given all others.
 */
final class TreeRecursion {
    final Tree tree;
    final Nature nature;

    /** The recursion of each line. */
    final List<Recursion> lines;

    private TreeRecursion(Tree tree, Nature nature, Recursion[] lines) {
        this.tree = tree;
        this.nature = nature;
        this.lines = List.of(lines);
    }

    static TreeRecursion of(Tree tree, Nature nature) {
        return of(tree, List.of(nature)).get(0);
    }

    /** {@return the maps under each of several natures; sooner than one after another, and to the last bit the same} */
    static List<TreeRecursion> of(Tree tree, List<Nature> natures) {
        List<List<double[][]>> ratios = tree.lines.stream()
                .map(cells -> Recursion.ratios(cells, natures))
                .toList();
        Map<Crossing, List<CrossingSum>> crossings = new HashMap<>();
        tree.forks.forEach(forks -> forks.forEach(fork ->
                fork.crossings.forEach(crossing -> crossings.put(crossing, CrossingSum.of(crossing, natures)))));
        return IntStream.range(0, natures.size())
                .mapToObj(n -> of(
                        tree,
                        natures.get(n),
                        line -> ratios.get(line).get(n),
                        crossing -> crossings.getOrDefault(crossing, List.of()).get(n)))
                .toList();
    }

    private static TreeRecursion of(
            Tree tree, Nature nature, IntFunction<double[][]> ratios, Function<Crossing, CrossingSum> crossings) {
        Recursion[] lines = new Recursion[tree.lines.size()];
        for (int line = lines.length - 1; line >= 0; line--) {
            List<ForkSum> forks = new ArrayList<>();
            for (Fork fork : tree.forks.get(line)) {
                List<CrossingSum> sums = fork.crossings.stream().map(crossings).toList();
                forks.add(joined(fork, nature, sums, Summing.ALL, lines));
            }
            lines[line] = new Recursion(tree.lines.get(line), nature, ratios.apply(line), forks, Summing.ALL);
        }
        TreeRecursion all = new TreeRecursion(tree, nature, lines);
        if (all.logTotal() > Double.NEGATIVE_INFINITY) {
            all.goUp();
        }
        return all;
    }

    /** The same with the best in place of the sum: the recursion of A. J. Viterbi (1967). */
    TreeRecursion best() {
        Recursion[] best = new Recursion[lines.size()];
        for (int line = best.length - 1; line >= 0; line--) {
            List<ForkSum> forks = new ArrayList<>();
            for (ForkSum fork : lines.get(line).forks()) {
                List<CrossingSum> crossings =
                        fork.crossings.stream().map(CrossingSum::best).toList();
                forks.add(joined(fork.fork, nature, crossings, Summing.BEST, best));
            }
            best[line] = new Recursion(tree.lines.get(line), nature, lines.get(line).ratio, forks, Summing.BEST);
        }
        return new TreeRecursion(tree, nature, best);
    }

    private static ForkSum joined(
            Fork fork, Nature nature, List<CrossingSum> crossings, Summing summing, Recursion[] lines) {
        ForkSum sum = new ForkSum(fork, nature, crossings, summing);
        for (int arm = 0; arm < fork.arms.size(); arm++) {
            if (fork.isTributary(arm)) {
                Recursion line = lines[fork.arms.get(arm).line()];
                sum.set(arm, line, line.passing(fork.arms.get(arm)));
            }
        }
        sum.sumTributaries();
        return sum;
    }

    private void goUp() {
        lines.get(0).forward();
        for (int line = 0; line < lines.size(); line++) {
            for (ForkSum fork : lines.get(line).forks()) {
                fork.goAlong(across(line, fork.fork.border));
                for (int arm = 0; arm < fork.fork.arms.size(); arm++) {
                    if (fork.fork.isTributary(arm)) {
                        lines.get(fork.fork.arms.get(arm).line()).forward(fork, arm, logTotal());
                    }
                }
            }
        }
    }

    /** Weight of all maps with a territory that reaches across a border along its line, wherever else it bends. */
    private double across(int line, int border) {
        double sum = lines.get(line).across(border);
        for (Recursion any : lines) {
            for (ForkSum fork : any.forks()) {
                for (int arm = 0; arm < fork.fork.arms.size(); arm++) {
                    Arm water = fork.fork.arms.get(arm);
                    int out = water.outOfBorder(border);
                    if (water.line() == line && out > 0 && out < water.reach()) {
                        sum = LogSum.of(sum, fork.reachingBeyond(arm, out));
                    }
                }
            }
        }
        return sum;
    }

    /** The logarithm of the sum of the weights of all maps; minus infinity where what is known contradicts itself. */
    double logTotal() {
        return lines.get(0).logTotal();
    }

    /** Hears of a territory along one line. */
    interface Straight {
        void hear(int from, int cellsLong, double probability);
    }

    /** Which territories along one line are asked about. */
    interface Wanted {
        boolean test(int from, int cellsLong);
    }

    /** Hears of a territory that bends. */
    interface Bent {
        void hear(CrossingSum crossing, int onFirst, int onSecond, double probability);
    }

    /** Tells every territory that can be along one line, with its probability. */
    void straight(int line, Wanted wanted, Straight heard) {
        Recursion recursion = lines.get(line);
        for (int from = 0; from < recursion.cells.count; from++) {
            for (int n = recursion.cells.shortest; n < recursion.ratio[from].length; n++) {
                if (wanted.test(from, n)) {
                    heard.hear(from, n, Math.exp(recursion.logProbability(from, n)));
                }
            }
        }
    }

    /** Tells those that hold all cells between two. */
    void straightHolding(int line, int lowest, int highest, Straight heard) {
        Recursion recursion = lines.get(line);
        Cells cells = recursion.cells;
        for (int from = Math.max(0, highest + 1 - cells.longest); from <= lowest; from++) {
            for (int n = Math.max(cells.shortest, highest + 1 - from); n < recursion.ratio[from].length; n++) {
                heard.hear(from, n, Math.exp(recursion.logProbability(from, n)));
            }
        }
    }

    /** Tells every territory that can bend at a confluence, with its probability. */
    void bent(ForkSum fork, Bent heard) {
        for (int way = 0; way < fork.crossings.size(); way++) {
            CrossingSum crossing = fork.crossings.get(way);
            for (int n = 1; n <= crossing.reach(); n++) {
                for (int m = 1; m <= crossing.reachBeyond(n); m++) {
                    heard.hear(crossing, n, m, Math.exp(fork.logOf(way, n, m) - logTotal()));
                }
            }
        }
    }

    /** Tells every territory that can bend at a confluence with an arm on a line. */
    void bent(int line, Bent heard) {
        forks(fork -> fork.arms.stream().anyMatch(arm -> arm.line() == line), heard);
    }

    /** Tells those that can hold a cell of a line. */
    void bentHolding(int line, int cell, Bent heard) {
        forks(fork -> fork.arms.stream().anyMatch(arm -> arm.line() == line && arm.reaches(cell)), heard);
    }

    private void forks(Predicate<Fork> wanted, Bent heard) {
        lines.forEach(line ->
                line.forks().stream().filter(fork -> wanted.test(fork.fork)).forEach(fork -> bent(fork, heard)));
    }
}

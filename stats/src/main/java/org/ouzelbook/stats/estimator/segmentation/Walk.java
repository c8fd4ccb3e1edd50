package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.math3.random.RandomGenerator;
import org.ouzelbook.stats.estimator.segmentation.ForkState.End;

/** One map of lines that meet: the most probable one, or one drawn with its probability. */
final class Walk {
    private static final double NONE = Double.NEGATIVE_INFINITY;

    private final TreeRecursion tree;
    private final Chooser chooser;
    private final List<Found> territories = new ArrayList<>();

    /** Chooses one of several things by their weights. */
    private interface Chooser {
        int choose(int size, double logAll, IntToDoubleFunction logWeights);
    }

    private Walk(TreeRecursion tree, Chooser chooser) {
        this.tree = tree;
        this.chooser = chooser;
    }

    /** A map drawn with its probability; by line, going up. */
    static List<Found> drawn(TreeRecursion tree, RandomGenerator random) {
        Walk walk = new Walk(tree, (size, logAll, logWeights) -> {
            double at = random.nextDouble();
            int last = 0;
            for (int i = 0; i < size; i++) {
                double probability = Math.exp(logWeights.applyAsDouble(i) - logAll);
                at -= probability;
                last = probability > 0 ? i : last;
                if (at < 0) {
                    break;
                }
            }
            return last;
        });
        return walk.map();
    }

    /** The map of highest probability; by line, going up. */
    static List<Found> best(TreeRecursion tree) {
        Walk walk = new Walk(tree.best(), (size, logAll, logWeights) -> {
            int best = 0;
            double highest = NONE;
            for (int i = 0; i < size; i++) {
                double weight = logWeights.applyAsDouble(i);
                if (weight > highest) {
                    highest = weight;
                    best = i;
                }
            }
            return best;
        });
        return walk.map();
    }

    private List<Found> map() {
        goOn(0, 0, End.TERRITORY);
        territories.sort(
                (one, other) -> one.line() == other.line() ? one.from() - other.from() : one.line() - other.line());
        return Collections.unmodifiableList(territories);
    }

    /** Goes on up a line from a border, with what ends there below it. */
    private void goOn(int line, int border, End below) {
        Recursion recursion = tree.lines.get(line);
        int c = border;
        End last = below;
        while (c < recursion.cells.count && recursion.fork(c).isEmpty()) {
            int at = c;
            boolean afterTerritory = last == End.TERRITORY;
            double all = afterTerritory ? recursion.logAfterTerritory(c) : recursion.logAfterVacant(c);
            int next = chooser.choose(
                    2,
                    all,
                    i -> i == 0 ? recursion.logVacant(at, afterTerritory) : recursion.logBegins(at, afterTerritory));
            if (next == 1) {
                begin(line, c);
                return;
            }
            last = End.VACANT;
            c++;
        }
        int here = c;
        End end = last;
        recursion.fork(c).ifPresent(fork -> meet(fork, end, recursion, here));
    }

    /** What meets at a confluence, with what ends there below it. */
    private void meet(ForkSum fork, End below, Recursion line, int border) {
        double all = below == End.TERRITORY ? line.logAfterTerritory(border) : line.logAfterVacant(border);
        int chosen = chooser.choose(
                fork.states.size(),
                all,
                i -> fork.fork.hasBelow && fork.states.get(i).end(0) != below ? NONE : fork.logAfter(i));
        ForkState state = fork.states.get(chosen);
        if (state.isCrossed()) {
            CrossingSum crossing = fork.crossings.get(fork.way(state.first, state.second));
            int width = crossing.crossing.other.reach() + 1;
            double bent = fork.logBent(state.first, state.second);
            int reach = chooser.choose((crossing.reach() + 1) * width, bent, i -> {
                int n = i / width;
                int m = i % width;
                return n < 1 || m < 1 || m > crossing.reachBeyond(n)
                        ? NONE
                        : fork.logBeyond(state.first, n) + crossing.log(n, m) + fork.logBeyond(state.second, m);
            });
            bend(crossing, reach / width, reach % width);
        }
        besides(fork, state);
    }

    /** The arms of a confluence through which nothing reaches. */
    private void besides(ForkSum fork, ForkState state) {
        for (int arm = fork.fork.hasBelow ? 1 : 0; arm < fork.fork.arms.size(); arm++) {
            Arm water = fork.fork.arms.get(arm);
            if (state.end(arm) == End.TERRITORY) {
                begin(water.line(), water.border());
            } else if (state.end(arm) == End.VACANT) {
                goOn(water.line(), water.border() + 1, End.VACANT);
            }
        }
    }

    /** What lies on the arms of a confluence that a territory passes. */
    private void pass(ForkSum fork, int first, int second) {
        int chosen = chooser.choose(
                fork.states.size(),
                fork.passing(first, second),
                i -> fork.states.get(i).isCrossedBy(first, second) ? fork.logBesides(i) : NONE);
        besides(fork, fork.states.get(chosen));
    }

    /** What lies at the confluences of a line that a territory passes which goes on along it. */
    private void pass(int line, int from, int to) {
        for (ForkSum fork : tree.lines.get(line).forks()) {
            if (from < fork.fork.border && fork.fork.border < to) {
                pass(fork, 0, fork.fork.above);
            }
        }
    }

    /** A territory that begins at a border. */
    private void begin(int line, int from) {
        Recursion recursion = tree.lines.get(line);
        int straight = recursion.ratio[from].length - recursion.cells.shortest;
        List<Bending> bends = bends(recursion, from);
        int chosen = chooser.choose(
                straight + bends.size(),
                recursion.logBeginning(from),
                i -> i < straight
                        ? logStraight(recursion, from, recursion.cells.shortest + i)
                        : bends.get(i - straight).log());
        if (chosen < straight) {
            int to = from + recursion.cells.shortest + chosen;
            territories.add(Found.straight(line, recursion.cells, from, to));
            pass(line, from, to);
            goOn(line, to, End.TERRITORY);
            return;
        }
        Bending bending = bends.get(chosen - straight);
        CrossingSum crossing = bending.fork.crossings.get(bending.way);
        int m = 1
                + chooser.choose(
                        crossing.reachBeyond(bending.below),
                        bending.logBeyond(),
                        i -> crossing.log(bending.below, i + 1) + bending.fork.logBeyond(crossing.second(), i + 1));
        bend(crossing, bending.below, m);
        pass(bending.fork, crossing.first(), crossing.second());
    }

    private static double logStraight(Recursion recursion, int from, int cellsLong) {
        return recursion.log(from, cellsLong) + recursion.logAfterTerritory(from + cellsLong);
    }

    /** A way in which a territory that begins below a confluence can bend there. */
    private record Bending(ForkSum fork, int way, int below, double logBeyond) {
        double log() {
            return fork.logBending(way, below) + logBeyond;
        }
    }

    private static List<Bending> bends(Recursion recursion, int from) {
        List<Bending> bends = new ArrayList<>();
        for (ForkSum fork : recursion.forks()) {
            int below = fork.fork.border - from;
            for (int way = 0; way < fork.crossings.size() && below > 0; way++) {
                CrossingSum crossing = fork.crossings.get(way);
                if (fork.isFromBelow(crossing) && below <= crossing.reach()) {
                    bends.add(new Bending(fork, way, below, fork.logFrom(way, below)));
                }
            }
        }
        return bends;
    }

    /** A territory that bends, what it passes on both arms, and what lies beyond it on those that go up. */
    private void bend(CrossingSum crossing, int onFirst, int onSecond) {
        territories.add(Found.bent(crossing.crossing, onFirst, onSecond));
        beyond(crossing.crossing.one, onFirst);
        beyond(crossing.crossing.other, onSecond);
    }

    private void beyond(Arm arm, int cells) {
        int end = arm.border(cells);
        pass(arm.line(), Math.min(arm.border(), end), Math.max(arm.border(), end));
        if (arm.up()) {
            goOn(arm.line(), end, End.TERRITORY);
        }
    }
}

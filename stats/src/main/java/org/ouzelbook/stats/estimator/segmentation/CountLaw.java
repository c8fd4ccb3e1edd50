package org.ouzelbook.stats.estimator.segmentation;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.ouzelbook.stats.estimator.segmentation.ForkState.End;

/** The probabilities of 0, 1, 2 … territories whose middles lie in some water, those included that no visit found. */
final class CountLaw {
    /** Territories less probable than this, given what lies below them, are left out. */
    private static final double NEGLIGIBLE = 1e-14;

    private final TreeRecursion tree;
    private final Counted counted;

    /** For each line: the numbers above each border. */
    private final Above[] lines;

    private final Map<ForkSum, ForkLaw> forks = new HashMap<>();

    /** Whether a territory counts whose middle lies on a line at a place, in metres. */
    interface Counted {
        boolean test(int line, double metres);
    }

    /** The numbers above each border of a line, after a territory, after a vacant cell, or beginning with a territory. */
    private static final class Above {
        private final NumberLaw[] afterTerritory;
        private final NumberLaw[] afterVacant;
        private final NumberLaw[] beginning;

        Above(int count) {
            afterTerritory = new NumberLaw[count + 1];
            afterVacant = new NumberLaw[count + 1];
            beginning = new NumberLaw[count + 1];
            Arrays.fill(afterTerritory, NumberLaw.ZERO);
            Arrays.fill(afterVacant, NumberLaw.ZERO);
            Arrays.fill(beginning, NumberLaw.ZERO);
        }
    }

    private CountLaw(TreeRecursion tree, Counted counted) {
        this.tree = tree;
        this.counted = counted;
        this.lines = new Above[tree.lines.size()];
    }

    /**
     * The law of some lines under one nature.
     *
     * @param tree the lines
     * @param counted which territories count
     */
    static double[] of(TreeRecursion tree, Counted counted) {
        CountLaw law = new CountLaw(tree, counted);
        int most = 0;
        for (int line = tree.lines.size() - 1; line >= 0; line--) {
            Recursion recursion = tree.lines.get(line);
            law.lines[line] = new Above(recursion.cells.count);
            law.goDown(line);
            most += recursion.cells.count / recursion.cells.shortest
                    + recursion.forks().size();
        }
        return law.lines[0].afterTerritory[0].upTo(most);
    }

    private void goDown(int line) {
        Recursion recursion = tree.lines.get(line);
        Above above = lines[line];
        int count = recursion.cells.count;
        for (int c = count; c >= 0; c--) {
            if (c < count) {
                above.beginning[c] = beginning(line, c);
            }
            ForkSum fork = recursion.fork(c).orElse(null);
            if (fork != null) {
                forks.put(fork, new ForkLaw(fork));
                above.afterTerritory[c] = after(fork, End.TERRITORY, recursion.logAfterTerritory(c));
                above.afterVacant[c] = after(fork, End.VACANT, recursion.logAfterVacant(c));
            } else if (c < count) {
                above.afterTerritory[c] = mixed(recursion.pVacant(c, true), above, c);
                above.afterVacant[c] = mixed(recursion.pVacant(c, false), above, c);
            }
        }
    }

    private static NumberLaw mixed(double vacant, Above above, int border) {
        NumberLaw law = new NumberLaw();
        law.add(vacant, above.afterVacant[border + 1], 0);
        law.add(1 - vacant, above.beginning[border], 0);
        return law;
    }

    private int one(int line, double middle) {
        return counted.test(line, middle) ? 1 : 0;
    }

    /** The numbers above a border, if a territory begins there; beginning with the territories that pass most confluences. */
    private NumberLaw beginning(int line, int from) {
        Recursion recursion = tree.lines.get(line);
        int to = from + recursion.ratio[from].length - 1;
        List<ForkSum> ahead = recursion.forksAbove(from, recursion.cells.longest);
        if (ahead.isEmpty()) {
            return ending(line, from, from, to);
        }
        double all = recursion.logBeginning(from);
        NumberLaw law = ending(line, from, ahead.get(ahead.size() - 1).fork.border, to);
        for (int passed = ahead.size() - 1; passed >= 0; passed--) {
            ForkSum fork = ahead.get(passed);
            int lowest = passed == 0 ? from : ahead.get(passed - 1).fork.border;
            NumberLaw here = ending(line, from, lowest, Math.min(to, fork.fork.border));
            here.add(1, lawOf(fork).along().plus(law), 0);
            here.add(1, bending(fork, fork.fork.border - from, all), 0);
            law = here;
        }
        return law;
    }

    /** The numbers with a territory along the line that ends above one border and not above another. */
    private NumberLaw ending(int line, int from, int lowest, int highest) {
        Recursion recursion = tree.lines.get(line);
        NumberLaw[] after = lines[line].afterTerritory;
        double all = recursion.logBeginning(from);
        int shortest = recursion.cells.shortest;
        NumberLaw law = new NumberLaw();
        for (int end = Math.max(lowest + 1, from + shortest); end <= highest; end++) {
            double given = Math.exp(recursion.log(from, end - from) + recursion.logAfterTerritory(end) - all);
            if (given > NEGLIGIBLE) {
                law.add(given, after[end], one(line, recursion.cells.middle(from, end)));
            }
        }
        return law;
    }

    private ForkLaw lawOf(ForkSum fork) {
        return Objects.requireNonNull(forks.get(fork));
    }

    /** The numbers with a territory from so many cells below that bends at a confluence, each with its probability. */
    private NumberLaw bending(ForkSum fork, int below, double all) {
        NumberLaw law = new NumberLaw();
        for (int way = 0; way < fork.crossings.size(); way++) {
            CrossingSum crossing = fork.crossings.get(way);
            if (fork.isFromBelow(crossing) && below <= crossing.reach()) {
                NumberLaw bent = bent(fork, crossing, below, fork.logBending(way, below) - all);
                law.add(1, bent.plus(lawOf(fork).besides(crossing.first(), crossing.second())), 0);
            }
        }
        return law;
    }

    /** The numbers with a territory that has so many cells of the first arm, and what lies beyond it on the second. */
    private NumberLaw bent(ForkSum fork, CrossingSum crossing, int onFirst, double log) {
        NumberLaw law = new NumberLaw();
        Crossing bend = crossing.crossing;
        for (int m = 1; m <= crossing.reachBeyond(onFirst); m++) {
            double given = Math.exp(log + crossing.log(onFirst, m) + fork.logBeyond(crossing.second(), m));
            if (given > NEGLIGIBLE) {
                int line = bend.isMiddleOnFirst(onFirst, m) ? bend.one.line() : bend.other.line();
                law.add(given, lawOf(fork).beyond(crossing.second(), m), one(line, bend.middle(onFirst, m)));
            }
        }
        return law;
    }

    private NumberLaw after(ForkSum fork, End below, double all) {
        NumberLaw law = new NumberLaw();
        for (int i = 0; i < fork.states.size(); i++) {
            ForkState state = fork.states.get(i);
            boolean fits = !fork.fork.hasBelow || state.end(0) == below;
            double given = fits ? Math.exp(fork.logAfter(i) - all) : 0;
            if (given > NEGLIGIBLE) {
                NumberLaw here = lawOf(fork).besides(state);
                law.add(given, state.isCrossed() ? here.plus(lawOf(fork).across(state)) : here, 0);
            }
        }
        return law;
    }

    /** The numbers on the arms of a confluence. */
    private final class ForkLaw {
        private final ForkSum fork;
        private final Map<List<Integer>, NumberLaw> kept = new HashMap<>();
        private final Map<Integer, NumberLaw[]> beyond = new HashMap<>();

        ForkLaw(ForkSum fork) {
            this.fork = fork;
        }

        /** On the arms that go up and that nothing reaches across. */
        NumberLaw besides(ForkState state) {
            NumberLaw law = NumberLaw.ZERO;
            for (int arm = fork.fork.hasBelow ? 1 : 0; arm < fork.fork.arms.size(); arm++) {
                Arm water = fork.fork.arms.get(arm);
                if (state.end(arm) == End.TERRITORY) {
                    law = law.plus(lines[water.line()].beginning[water.border()]);
                } else if (state.end(arm) == End.VACANT) {
                    law = law.plus(lines[water.line()].afterVacant[water.border() + 1]);
                }
            }
            return law;
        }

        /** On the other arms, where a territory from below reaches into one. */
        NumberLaw besides(int first, int second) {
            return kept.computeIfAbsent(List.of(first, second), any -> {
                double all = fork.passing(first, second);
                NumberLaw law = new NumberLaw();
                for (int i = 0; i < fork.states.size(); i++) {
                    if (fork.states.get(i).isCrossedBy(first, second)) {
                        law.add(Math.exp(fork.logBesides(i) - all), besides(fork.states.get(i)), 0);
                    }
                }
                return law;
            });
        }

        NumberLaw along() {
            return besides(0, fork.fork.above);
        }

        /** With a territory that bends from one arm that goes up into another, and all beyond it. */
        NumberLaw across(ForkState state) {
            return kept.computeIfAbsent(List.of(state.first, state.second), any -> {
                CrossingSum crossing = fork.crossings.get(fork.way(state.first, state.second));
                double all = fork.logBent(state.first, state.second);
                NumberLaw law = new NumberLaw();
                for (int n = 1; n <= crossing.reach(); n++) {
                    double log = fork.logBeyond(state.first, n) - all;
                    law.add(1, bent(fork, crossing, n, log).plus(beyond(state.first, n)), 0);
                }
                return law;
            });
        }

        /** Beyond a territory that reaches so many cells into an arm that goes up, with what it passes. */
        NumberLaw beyond(int arm, int cells) {
            return beyond.computeIfAbsent(arm, any -> {
                Arm water = fork.fork.arms.get(arm);
                NumberLaw[] laws = new NumberLaw[water.reach() + 1];
                NumberLaw passed = NumberLaw.ZERO;
                for (int out = 1; out < laws.length; out++) {
                    int border = water.border(out - 1);
                    if (out > 1) {
                        passed = passed.plus(tree.lines
                                .get(water.line())
                                .fork(border)
                                .map(inner -> lawOf(inner).along())
                                .orElse(NumberLaw.ZERO));
                    }
                    laws[out] = lines[water.line()].afterTerritory[water.border(out)].plus(passed);
                }
                return laws;
            })[cells];
        }
    }
}

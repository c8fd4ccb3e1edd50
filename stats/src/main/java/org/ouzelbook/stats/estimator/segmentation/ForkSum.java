package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.ouzelbook.stats.estimator.segmentation.ForkState.End;

/** A confluence under one nature: the weights of all that can meet there, with all that lies on its arms. */
final class ForkSum {
    private static final double NONE = Double.NEGATIVE_INFINITY;

    final Fork fork;
    final List<ForkState> states;
    final List<CrossingSum> crossings;
    private final double[] prior;
    private final Summing summing;

    /** For each arm but the lower one of the line: weight of all maps of it that begin with a territory. */
    private final double[] beginning;

    /** The same of those that begin with a vacant cell. */
    private final double[] vacant;

    /** For each arm and number of cells: weight of what a territory passes that reaches so far into it. */
    private final double[][] passed;

    /** The same with all maps beyond that territory; of the lower arm of the line once all below it is known. */
    private final double[][] beyond;

    /** For each crossing: weight of all that can lie on the other arms. */
    private final double[] besides;

    /** For each crossing: weight of all territories that bend there, with what lies beyond them at both ends. */
    private final double[] bent;

    /** Weight of what a territory passes here that goes on along the line. */
    private double straight = NONE;

    private double territoryBelow;
    private double vacantBelow;

    /** Weight of all territories that reach across along the line, with what lies beyond them at both ends. */
    private double along = NONE;

    ForkSum(Fork fork, Nature nature, List<CrossingSum> crossings, Summing summing) {
        this.fork = fork;
        this.crossings = crossings;
        this.summing = summing;
        states = ForkState.all(fork);
        prior = prior(fork, states, nature);
        int arms = fork.arms.size();
        beginning = new double[arms];
        vacant = new double[arms];
        passed = new double[arms][];
        beyond = new double[arms][];
        besides = new double[crossings.size()];
        bent = new double[crossings.size()];
    }

    /** The logarithm of the weight of each state, without what lies on the arms. */
    static double[] prior(Fork fork, List<ForkState> states, Nature nature) {
        ForkState.Steps steps = ForkState.Steps.of(nature, fork.arms.get(0).cells());
        double[] starts = fork.crossings.stream()
                .mapToDouble(crossing -> ForkState.Steps.of(nature, crossing.cells)
                        .start(LengthLaw.of(nature, crossing.cells), fork.hasBelow))
                .toArray();
        return states.stream().mapToDouble(state -> state.log(steps, starts)).toArray();
    }

    /**
     * Tells what lies on an arm that goes up.
     *
     * @param arm which
     * @param line its line, summed down to the confluence
     * @param passing for each number of cells, weight of what a territory of that reach passes on the arm
     */
    void set(int arm, Recursion line, double[] passing) {
        int border = fork.arms.get(arm).border();
        beginning[arm] = line.logBeginning(border);
        vacant[arm] = line.logVacantFrom(border);
        passed[arm] = passing;
        beyond[arm] = passing.clone();
        for (int out = 1; out < passing.length; out++) {
            beyond[arm][out] += line.logAfterTerritory(border + out);
        }
    }

    /** Tells what a territory passes on the lower arm of the line; then all that lies above is known. */
    void setBelow(double[] passing) {
        passed[0] = passing;
        sumAbove();
    }

    /** Once all that lies above is known. */
    void sumAbove() {
        for (int i = 0; i < bent.length; i++) {
            CrossingSum crossing = crossings.get(i);
            if (isFromBelow(crossing)) {
                besides[i] = passing(crossing.first(), crossing.second());
            } else {
                bent[i] = bends(crossing);
            }
        }
    }

    private double bends(CrossingSum crossing) {
        double[] first = beyond[crossing.first()];
        double[] second = beyond[crossing.second()];
        return summing.of(crossing.reach(), i -> first[i + 1] + crossing.from(i + 1, second));
    }

    boolean isFromBelow(CrossingSum crossing) {
        return fork.hasBelow && crossing.first() == 0;
    }

    /** Weight of what lies on the arms of a state that go up, but for one of them; what reaches across is no part of it. */
    private double above(ForkState state, int but) {
        double log = 0;
        for (int arm = fork.hasBelow ? 1 : 0; arm < fork.arms.size(); arm++) {
            if (arm != but && state.end(arm) != End.CROSSING) {
                log += state.end(arm) == End.TERRITORY ? beginning[arm] : vacant[arm];
            }
        }
        return log;
    }

    private double below(ForkState state) {
        if (!fork.hasBelow || state.end(0) == End.CROSSING) {
            return 0;
        }
        return state.end(0) == End.TERRITORY ? territoryBelow : vacantBelow;
    }

    /** Weight of what reaches across, with what lies beyond it at both ends; for a territory from below once that is known. */
    private double across(ForkState state) {
        if (!state.isCrossed()) {
            return 0;
        }
        return fork.isLine(state.first, state.second) ? along : bent[way(state.first, state.second)];
    }

    int way(int first, int second) {
        for (int i = 0; i < bent.length; i++) {
            if (crossings.get(i).first() == first && crossings.get(i).second() == second) {
                return i;
            }
        }
        throw new IllegalArgumentException("No way through arms " + first + " and " + second);
    }

    private double sum(Predicate<ForkState> of, ToDoubleFunction<ForkState> weight) {
        List<Double> terms = new ArrayList<>();
        for (int i = 0; i < states.size(); i++) {
            if (of.test(states.get(i))) {
                terms.add(prior[i] + weight.applyAsDouble(states.get(i)));
            }
        }
        return summing.of(terms.size(), terms::get);
    }

    /** Weight of all above the confluence, after a territory or a vacant cell of the line below it. */
    double after(End below) {
        return sum(state -> !fork.hasBelow || state.end(0) == below, state -> above(state, -1) + across(state));
    }

    /** Weight of one state with all above it, after what lies below. */
    double logAfter(int state) {
        return prior[state] + above(states.get(state), -1) + across(states.get(state));
    }

    /** Weight of one state with what lies above on all arms that nothing reaches across. */
    double logBesides(int state) {
        return prior[state] + above(states.get(state), -1);
    }

    /** Weight of all that can lie on the other arms where a territory reaches from one arm into another. */
    double passing(int first, int second) {
        return sum(state -> state.isCrossedBy(first, second), state -> above(state, -1) + below(state));
    }

    /** Once all tributaries are known. */
    void sumTributaries() {
        straight = fork.hasBelow && fork.above >= 0 ? passing(0, fork.above) : NONE;
    }

    /** Weight of what a territory passes here that goes on along the line. */
    double straight() {
        return straight;
    }

    /** Weight of all territories that reach so many cells down the line from here and bend, with what lies beyond them above. */
    double bending(int cellsBelow) {
        double sum = NONE;
        for (int i = 0; i < bent.length; i++) {
            CrossingSum crossing = crossings.get(i);
            if (isFromBelow(crossing) && cellsBelow <= crossing.reach()) {
                sum = summing.of(sum, logBending(i, cellsBelow) + logFrom(i, cellsBelow));
            }
        }
        return sum;
    }

    /** Weight of all territories that come by one of the ways with so many cells of its first arm, with all beyond on its second. */
    double logFrom(int way, int onFirst) {
        CrossingSum crossing = crossings.get(way);
        return crossing.from(onFirst, beyond[crossing.second()]);
    }

    /** Weight of all territories that bend from one arm that goes up into another, with what lies beyond them. */
    double logBent(int first, int second) {
        return bent[way(first, second)];
    }

    /** Weight of what a territory from below passes that bends by one of the ways. */
    double logBending(int way, int cellsBelow) {
        return passed[0][cellsBelow] + besides[way];
    }

    /** Weight of all maps beyond a territory that reaches so many cells into an arm, with what it passes on it. */
    double logBeyond(int arm, int cells) {
        return beyond[arm][cells];
    }

    /**
     * Tells what lies below.
     *
     * @param territory weight of all maps below that end here with a territory
     * @param vacancy weight of those that end with a vacant cell
     * @param begin for each border of the line, weight of all maps below it, ready for a territory to begin there
     */
    void comeFrom(double territory, double vacancy, double[] begin) {
        territoryBelow = territory;
        vacantBelow = vacancy;
        if (fork.hasBelow) {
            beyond[0] = passed[0].clone();
            for (int out = 1; out < beyond[0].length; out++) {
                beyond[0][out] += begin[fork.border - out];
            }
        }
        for (int i = 0; i < bent.length; i++) {
            CrossingSum crossing = crossings.get(i);
            if (isFromBelow(crossing)) {
                bent[i] = bends(crossing);
            } else {
                besides[i] = passing(crossing.first(), crossing.second());
            }
        }
    }

    /** Tells the weight of all territories that reach across along the line, with everything. */
    void goAlong(double all) {
        along = straight == NONE ? NONE : all - straight;
    }

    /** Weight of all territories that bend here and reach beyond so many cells of an arm, with everything. */
    double reachingBeyond(int arm, int cells) {
        double sum = NONE;
        for (int way = 0; way < bent.length; way++) {
            CrossingSum crossing = crossings.get(way);
            if (crossing.first() == arm || crossing.second() == arm) {
                for (int n = 1; n <= crossing.reach(); n++) {
                    for (int m = 1; m <= crossing.reachBeyond(n); m++) {
                        sum = (crossing.first() == arm ? n : m) > cells ? LogSum.of(sum, logOf(way, n, m)) : sum;
                    }
                }
            }
        }
        return sum;
    }

    /** Weight of all outside an arm that goes up, ready for a territory or a vacant cell to begin it. */
    double into(int arm, End end) {
        return sum(state -> state.end(arm) == end, state -> below(state) + above(state, arm) + across(state));
    }

    /** Weight of all outside what lies beyond a territory that reaches across and so many cells into an arm that goes up. */
    double ending(int arm, int cells) {
        double sum = NONE;
        for (int i = 0; i < bent.length; i++) {
            CrossingSum crossing = crossings.get(i);
            if (crossing.second() == arm) {
                sum = LogSum.of(sum, besides[i] + crossing.into(cells, beyond[crossing.first()]));
            } else if (crossing.first() == arm && cells <= crossing.reach()) {
                sum = LogSum.of(sum, besides[i] + crossing.from(cells, beyond[crossing.second()]));
            }
        }
        return sum + passed[arm][cells];
    }

    /** Weight of one state with everything; once all below is known. */
    double logOf(int state) {
        return prior[state] + below(states.get(state)) + above(states.get(state), -1) + across(states.get(state));
    }

    /** Weight of a bent territory with everything; once all below is known. */
    double logOf(int way, int onFirst, int onSecond) {
        CrossingSum crossing = crossings.get(way);
        return besides[way]
                + beyond[crossing.first()][onFirst]
                + crossing.log(onFirst, onSecond)
                + beyond[crossing.second()][onSecond];
    }
}

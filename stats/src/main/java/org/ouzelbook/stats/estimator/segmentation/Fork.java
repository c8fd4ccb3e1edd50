package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.List;

/**
 * A confluence: the arms of water that meet at one border of a line. They are the line below it and above it, as far as there
 * is any, and the tributaries.
 */
final class Fork {
    /** The border of the line. */
    final int border;

    final List<Arm> arms;

    /** Place of the line's upper arm among the arms, −1 if there is none; the lower arm, if any, is the first. */
    final int above;

    final boolean hasBelow;

    /** The ways through it, but for the one along the line. */
    final List<Crossing> crossings;

    /** The same in metres, as it is known. */
    private final double position;

    /** The logarithm of the weight of a limit between two arms, what is known of the line alone apart. */
    private final double[][] limit;

    /**
     * A confluence.
     *
     * @param tree the lines
     * @param cells the same in cells
     * @param line the line that tributaries join
     * @param border where
     * @param tributaries which lines join there; one or more
     * @param grain how finely lines are cut
     */
    Fork(SurveyedTree tree, List<Cells> cells, int line, int border, List<Integer> tributaries, Grain grain) {
        this.border = border;
        List<Arm> all = new ArrayList<>();
        hasBelow = border > 0;
        if (hasBelow) {
            all.add(new Arm(line, cells.get(line), border, false));
        }
        above = border < cells.get(line).count ? all.size() : -1;
        if (above >= 0) {
            all.add(new Arm(line, cells.get(line), border, true));
        }
        tributaries.forEach(tributary -> all.add(new Arm(tributary, cells.get(tributary), 0, true)));
        arms = List.copyOf(all);
        position = tree.branches().get(tributaries.get(0)).mouth().orElseThrow().position();
        limit = new double[arms.size()][arms.size()];
        List<Crossing> ways = new ArrayList<>();
        for (int one = 0; one < arms.size(); one++) {
            for (int other = one + 1; other < arms.size(); other++) {
                if (!isLine(one, other)) {
                    ways.add(crossing(tree, one, other, grain));
                }
            }
        }
        crossings = List.copyOf(ways);
        tree.links().forEach(this::link);
    }

    private Crossing crossing(SurveyedTree tree, int one, int other, Grain grain) {
        Crossing crossing = new Crossing(
                one,
                other,
                arms.get(one),
                arms.get(other),
                tree.branches().get(arms.get(one).line()),
                tree.branches().get(arms.get(other).line()),
                seenAtOnce(tree, arms.get(one).line(), arms.get(other).line()),
                grain);
        if (isClosed(tree, arms.get(one)) || isClosed(tree, arms.get(other))) {
            crossing.close();
        }
        return crossing;
    }

    /** Pairs of birds on two lines that were seen at one time: their places among the registrations of either. */
    private static List<int[]> seenAtOnce(SurveyedTree tree, int one, int other) {
        List<int[]> pairs = new ArrayList<>();
        for (SurveyedTree.Link link : tree.links()) {
            if (link instanceof SurveyedTree.Birds birds && birds.branch() == other && birds.receiving() == one) {
                pairs.add(new int[] {
                    tree.branches().get(one).line().registrations().indexOf(birds.other()),
                    tree.branches().get(other).line().registrations().indexOf(birds.one())
                });
            }
        }
        return pairs;
    }

    /** Whether it is decided that the arm ends here: by a limit that falls on this border and lies on that side. */
    private boolean isClosed(SurveyedTree tree, Arm arm) {
        for (Constraint constraint : tree.branches().get(arm.line()).line().constraints()) {
            if (constraint instanceof Constraint.Limit decided
                    && arm.cells().border(decided.position()) == arm.border()
                    && (arm.up() ? decided.position() >= place(arm) : decided.position() <= place(arm))) {
                return true;
            }
        }
        return false;
    }

    /** Where the confluence lies on the line of an arm, in metres; not rounded to a border. */
    private double place(Arm arm) {
        return arm.line() == arms.get(0).line() ? position : arm.place(0);
    }

    private void link(SurveyedTree.Link link) {
        for (int tributary = 0; tributary < arms.size(); tributary++) {
            Arm arm = arms.get(tributary);
            if (isTributary(tributary) && arm.line() == link.branch() && link instanceof SurveyedTree.Places places) {
                int cell = arm.cells().cell(places.position());
                int lineCell = arms.get(0).cells().cell(places.other());
                int side = lineCell < border ? 0 : above;
                if (places.apart()) {
                    setApart(side, tributary, lineCell, cell, Math.log(places.factor()));
                } else {
                    bind(side, tributary, lineCell, cell, Math.log(places.factor()));
                }
            }
        }
    }

    boolean isTributary(int arm) {
        return arm != above && !(hasBelow && arm == 0);
    }

    private void setApart(int side, int tributary, int lineCell, int cell, double logFactor) {
        for (Crossing crossing : crossings) {
            if (crossing.first == side && crossing.second == tributary) {
                crossing.setApart(lineCell, cell, logFactor);
            }
        }
    }

    /** Each limit between the two places weighs the factor: on the tributary, on the line, and here. */
    private void bind(int side, int tributary, int lineCell, int cell, double logFactor) {
        for (int c = 1; c <= cell; c++) {
            arms.get(tributary).cells().limit[c] += logFactor;
        }
        int from = Math.min(lineCell + 1, border + 1);
        int to = Math.max(lineCell, border - 1);
        for (int c = from; c <= to; c++) {
            arms.get(side).cells().limit[c] += logFactor;
        }
        limit[side][tributary] += logFactor;
    }

    /** Whether the way through two arms is the line itself. */
    boolean isLine(int one, int other) {
        return hasBelow && one == 0 && other == above;
    }

    /** The logarithm of the weight of a limit between two arms, the first named first. */
    double limit(int one, int other) {
        return isLine(one, other) ? arms.get(0).cells().limit[border] : limit[one][other];
    }
}

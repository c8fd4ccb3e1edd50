package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Two arms of a confluence put together as one line, so that a territory which bends around it is weighed like any other: the
 * first arm comes towards the confluence, the second leaves it. Only as much of each is there as a territory can reach.
 */
final class Crossing {
    private static final double INSIDE = 1e-9;

    /** The places of the two among the arms of the fork. */
    final int first;

    final int second;

    final Arm one;
    final Arm other;

    /** The line, in cells of the mean width; {@link Cells#through} is the confluence. */
    final Cells cells;

    private final Map<Long, Integer> visits = new TreeMap<>();

    /**
     * Two arms as one line.
     *
     * @param first place of the arm that comes towards the confluence
     * @param second place of the arm that leaves it
     * @param one the first arm
     * @param other the second arm
     * @param oneBranch the line of the first
     * @param otherBranch the line of the second
     * @param atOnce pairs of birds, one on either line, that were seen at one time
     * @param grain how finely lines are cut
     */
    Crossing(
            int first,
            int second,
            Arm one,
            Arm other,
            SurveyedTree.Branch oneBranch,
            SurveyedTree.Branch otherBranch,
            List<int[]> atOnce,
            Grain grain) {
        this.first = first;
        this.second = second;
        this.one = one;
        this.other = other;
        oneBranch.days().forEach(day -> visits.put(day, 0));
        otherBranch.days().forEach(day -> visits.put(day, 0));
        int visit = 0;
        for (Map.Entry<Long, Integer> entry : visits.entrySet()) {
            entry.setValue(visit++);
        }
        int count = one.reach() + other.reach();
        double width = (one.reach() * one.cells().width + other.reach() * other.cells().width) / count;
        List<Constraint> known = new ArrayList<>();
        Map<Integer, Registration> onOne = met(one, oneBranch.days(), width, known);
        Map<Integer, Registration> onOther = met(other, otherBranch.days(), width, known);
        for (int[] pair : atOnce) {
            note(onOne.get(pair[0]), onOther.get(pair[1]), known);
        }
        bar(one, width, known);
        bar(other, width, known);
        List<List<VisitedWater.Piece>> walked = new ArrayList<>();
        visits.values().forEach(any -> walked.add(new ArrayList<>()));
        walk(one, oneBranch.days(), width, walked);
        walk(other, otherBranch.days(), width, walked);
        SurveyedLine line = new SurveyedLine(
                0,
                count * width,
                walked.stream().map(VisitedWater::new).toList(),
                Stream.concat(onOne.values().stream(), onOther.values().stream())
                        .toList(),
                known,
                Math.max(oneBranch.line().inSight(), otherBranch.line().inSight()));
        cells = new Cells(line, grain, count, one.reach());
        copyKnown(one);
        copyKnown(other);
    }

    /** The registrations on an arm, by their places among those of its line, and which of them were seen at one time. */
    private Map<Integer, Registration> met(Arm arm, List<Long> days, double width, List<Constraint> known) {
        Cells line = arm.cells();
        Map<Integer, Registration> met = new HashMap<>();
        for (int out = 0; out < arm.reach(); out++) {
            int cell = arm.cell(out);
            for (int i = line.below[cell]; i < line.below[cell + 1]; i++) {
                // A place on the border of two cells stays in the one that the line has it in.
                double inside = Math.max(out + INSIDE, Math.min(out + 1 - INSIDE, arm.outOf(line.position[i])));
                int visit = line.visit[i] < 0 ? Registration.CASUAL : visit(days.get(line.visit[i]));
                met.put(i, new Registration(at(arm, inside) * width, visit));
            }
        }
        met.forEach((i, registration) -> {
            for (int below : line.atOnce.notedBelow(i)) {
                note(met.get(below), registration, known);
            }
        });
        return met;
    }

    private static void note(
            @Nullable Registration registration, @Nullable Registration another, List<Constraint> known) {
        if (registration != null && another != null) {
            known.add(new Constraint.Simultaneous(registration, another));
        }
    }

    /** The cells of an arm that no territory can hold. */
    private void bar(Arm arm, double width, List<Constraint> known) {
        for (int out = 0; out < arm.reach(); out++) {
            int cell = arm.cell(out);
            if (arm.cells().barred[cell + 1] > arm.cells().barred[cell]) {
                double middle = at(arm, out + 0.5) * width;
                known.add(new Constraint.Vacant(middle, middle));
            }
        }
    }

    /** What each visit walked of an arm. */
    private void walk(Arm arm, List<Long> days, double width, List<List<VisitedWater.Piece>> walked) {
        Cells line = arm.cells();
        for (int v = 0; v < line.walked.length; v++) {
            for (int i = 0; i < line.walked[v].length; i += 2) {
                double from = at(arm, clamp(arm, arm.outOfBorder(line.walked[v][i]))) * width;
                double to = at(arm, clamp(arm, arm.outOfBorder(line.walked[v][i + 1]))) * width;
                if (from != to) {
                    walked.get(visit(days.get(v))).add(new VisitedWater.Piece(Math.min(from, to), Math.max(from, to)));
                }
            }
        }
    }

    private int visit(long day) {
        return visits.getOrDefault(day, Registration.CASUAL);
    }

    private static int clamp(Arm arm, int out) {
        return Math.max(0, Math.min(arm.reach(), out));
    }

    /** Where along this line a place lies that is so many cells out on an arm, in cells. */
    private double at(Arm arm, double out) {
        return arm.equals(one) ? one.reach() - out : one.reach() + out;
    }

    /** Which cell of this line one of an arm is. */
    private int cell(Arm arm, int out) {
        return arm.equals(one) ? one.reach() - 1 - out : one.reach() + out;
    }

    /** Pairs apart and birds that turned back, as far as they are known of one arm alone. */
    private void copyKnown(Arm arm) {
        Cells line = arm.cells();
        for (int out = 0; out < arm.reach(); out++) {
            int cell = arm.cell(out);
            for (Cells.ApartCells pair : line.apart.get(cell)) {
                if (arm.reaches(pair.lower())) {
                    apart(cell(arm, out), cell(arm, arm.out(pair.lower())), pair.logFactor());
                }
            }
            for (Cells.TurnCells turn : line.turns.get(cell)) {
                cells.turns.get(cell(arm, out)).add(turned(arm, turn));
            }
        }
    }

    /** A bird that turned back: on its own line, a territory that bends into another ends at the confluence. */
    private Cells.TurnCells turned(Arm arm, Cells.TurnCells turn) {
        if (turn.upward() != arm.up()) {
            double log = turn.log(arm.border(), arm.border());
            return new Cells.TurnCells(true, 1, 0, log, log);
        }
        int lowest = (int) at(arm, arm.outOfBorder(turn.lowest()));
        int highest = (int) at(arm, arm.outOfBorder(turn.highest()));
        return new Cells.TurnCells(
                arm.equals(other),
                Math.min(lowest, highest),
                Math.max(lowest, highest),
                turn.logFits(),
                turn.logOtherwise());
    }

    private void apart(int cell, int another, double logFactor) {
        cells.apart.get(Math.max(cell, another)).add(new Cells.ApartCells(Math.min(cell, another), logFactor));
    }

    /** Two cells of the lines, one on each arm, that hardly lie in one territory. */
    void setApart(int cellOfOne, int cellOfOther, double logFactor) {
        if (one.reaches(cellOfOne) && other.reaches(cellOfOther)) {
            apart(cell(one, one.out(cellOfOne)), cell(other, other.out(cellOfOther)), logFactor);
        }
    }

    /** Nothing reaches across the confluence. */
    void close() {
        apart(cell(one, 0), cell(other, 0), Double.NEGATIVE_INFINITY);
    }

    /** Whether a bent territory holds a bird. */
    boolean isMet(int onFirst, int onSecond) {
        return cells.below[one.reach() + onSecond] > cells.below[one.reach() - onFirst];
    }

    /** Whether the middle of a bent territory lies on the first arm. */
    boolean isMiddleOnFirst(int onFirst, int onSecond) {
        return onFirst >= onSecond;
    }

    /** The place of that middle, in metres along its line. */
    double middle(int onFirst, int onSecond) {
        double out = Math.abs(onFirst - onSecond) / 2.0;
        return isMiddleOnFirst(onFirst, onSecond) ? one.place(out) : other.place(out);
    }
}

package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import org.apache.commons.math3.random.RandomGenerator;

/**
 * Every map of one line, with its probability: averaged over natures drawn for the whole book, exact for each of them. Where
 * other lines meet it, the maps are of all of them, seen from this one: a territory belongs to the line that its middle lies on.
 */
public final class LinePosterior {
    private final TreePosterior tree;
    private final int line;
    private final Cells cells;

    LinePosterior(TreePosterior tree, int line) {
        this.tree = tree;
        this.line = line;
        this.cells = tree.tree().lines.get(line);
    }

    /**
     * A territory of one map.
     *
     * @param lower its lower end on this line, in metres
     * @param upper its upper end on this line, in metres
     * @param middle its middle, in metres along this line
     * @param beyond the part of it on another line, if it bends at a confluence
     */
    public record Span(double lower, double upper, double middle, Optional<Beyond> beyond) {}

    /**
     * The part of a territory on a second line.
     *
     * @param line which line of the tree
     * @param lower its lower end there, in metres along that line
     * @param upper its upper end there
     */
    public record Beyond(int line, double lower, double upper) {}

    /**
     * What is known of the territory that holds a place.
     *
     * @param probability probability that there is one
     * @param lower low, middle and high quantile of its lower end on this line, in metres, if there is one; where it goes on
     *     into another line, that is the confluence
     * @param upper the same of its upper end
     */
    public record Ground(double probability, List<Double> lower, List<Double> upper) {
        /** Copies the lists. */
        public Ground {
            lower = List.copyOf(lower);
            upper = List.copyOf(upper);
        }
    }

    /**
     * {@return the maps of a line that no other meets; empty if what is known of it contradicts itself, so that no map can be}
     *
     * @param line the line
     * @param grain how finely it is cut
     * @param natures natures that stand for what is known of the species
     */
    public static Optional<LinePosterior> of(SurveyedLine line, Grain grain, List<NaturePosterior.Draw> natures) {
        return TreePosterior.of(SurveyedTree.of(line), grain, natures).map(tree -> tree.line(0));
    }

    /**
     * {@return the probabilities of 0, 1, 2 … territories, those included that no visit found}
     *
     * @param counted whether a territory with its middle at a place of this line, in metres, counts
     */
    public double[] countLaw(DoublePredicate counted) {
        return tree.meanOf(recursion -> CountLaw.of(recursion, here(counted)));
    }

    private CountLaw.Counted here(DoublePredicate counted) {
        return (middleLine, middle) -> middleLine == line && counted.test(middle);
    }

    /**
     * {@return the expected number of territories that no visit found}
     *
     * @param counted whether a territory with its middle at a place of this line, in metres, counts
     */
    public double expectedUnseen(DoublePredicate counted) {
        return tree.mean(recursion -> {
            double[] sum = new double[1];
            recursion.straight(
                    line,
                    (from, n) -> !isMet(from, n) && counted.test(cells.middle(from, from + n)),
                    (from, n, probability) -> sum[0] += probability);
            recursion.bent(line, (crossing, n, m, probability) -> {
                Crossing bend = crossing.crossing;
                int middleLine = bend.isMiddleOnFirst(n, m) ? bend.one.line() : bend.other.line();
                if (!bend.isMet(n, m) && here(counted).test(middleLine, bend.middle(n, m))) {
                    sum[0] += probability;
                }
            });
            return sum[0];
        });
    }

    private boolean isMet(int from, int cellsLong) {
        return cells.below[from] < cells.below[from + cellsLong];
    }

    /** {@return for each cell, going up, the probability that a territory holds it that no visit found} */
    public double[] unseen() {
        return tree.meanOf(recursion -> perCell(recursion, true));
    }

    /** {@return for each cell, going up, the probability that a territory holds it} */
    public double[] held() {
        return tree.meanOf(recursion -> perCell(recursion, false));
    }

    private double[] perCell(TreeRecursion recursion, boolean onlyUnseen) {
        double[] change = new double[cells.count + 1];
        recursion.straight(line, (from, n) -> !onlyUnseen || !isMet(from, n), (from, n, probability) -> {
            change[from] += probability;
            change[from + n] -= probability;
        });
        recursion.bent(line, (crossing, n, m, probability) -> {
            if (!onlyUnseen || !crossing.crossing.isMet(n, m)) {
                for (Part part : parts(crossing.crossing, n, m)) {
                    change[part.from] += probability;
                    change[part.to] -= probability;
                }
            }
        });
        for (int c = 1; c <= cells.count; c++) {
            change[c] += change[c - 1];
        }
        return Arrays.copyOf(change, cells.count);
    }

    /** A part of a bent territory on this line, between two borders. */
    private record Part(int from, int to) {
        boolean holds(int lowest, int highest) {
            return from <= lowest && highest < to;
        }
    }

    private List<Part> parts(Crossing bend, int onFirst, int onSecond) {
        List<Part> parts = new ArrayList<>();
        if (bend.one.line() == line) {
            parts.add(part(bend.one, onFirst));
        }
        if (bend.other.line() == line) {
            parts.add(part(bend.other, onSecond));
        }
        return parts;
    }

    private static Part part(Arm arm, int cells) {
        int end = arm.border(cells);
        return new Part(Math.min(arm.border(), end), Math.max(arm.border(), end));
    }

    /**
     * {@return the place of a cell's lower border, in metres}
     *
     * @param cell the cell, counted from the lower end
     */
    public double place(int cell) {
        return cells.place(cell);
    }

    /**
     * {@return the probability that one territory holds all of a stretch}
     *
     * @param lower its lower end, in metres
     * @param upper its upper end, in metres
     */
    public double together(double lower, double upper) {
        int low = cells.cell(lower);
        int high = cells.cell(upper);
        return tree.mean(recursion -> {
            double[] sum = new double[1];
            recursion.straightHolding(line, low, high, (from, n, probability) -> sum[0] += probability);
            recursion.bentHolding(line, low, (crossing, n, m, probability) -> {
                for (Part part : parts(crossing.crossing, n, m)) {
                    sum[0] += part.holds(low, high) ? probability : 0;
                }
            });
            return Math.min(1, sum[0]);
        });
    }

    /**
     * {@return the probability that one territory holds a place of this line and one of another}
     *
     * @param position the place on this line, in metres
     * @param other which line of the tree
     * @param place the place on that line, in metres
     */
    public double together(double position, int other, double place) {
        if (other == line) {
            return together(Math.min(position, place), Math.max(position, place));
        }
        LinePosterior across = tree.line(other);
        int here = cells.cell(position);
        int there = across.cells.cell(place);
        return tree.mean(recursion -> {
            double[] sum = new double[1];
            recursion.bentHolding(line, here, (crossing, n, m, probability) -> {
                boolean holds = parts(crossing.crossing, n, m).stream().anyMatch(part -> part.holds(here, here))
                        && across.parts(crossing.crossing, n, m).stream().anyMatch(part -> part.holds(there, there));
                sum[0] += holds ? probability : 0;
            });
            return Math.min(1, sum[0]);
        });
    }

    /**
     * {@return the probability that a territory holds a place and also water of a given other line}
     *
     * @param position the place, in metres
     * @param other which line of the tree
     */
    public double reaching(double position, int other) {
        int here = cells.cell(position);
        return tree.mean(recursion -> {
            double[] sum = new double[1];
            recursion.bentHolding(line, here, (crossing, n, m, probability) -> {
                boolean reaches = crossing.crossing.one.line() == other || crossing.crossing.other.line() == other;
                boolean holds = parts(crossing.crossing, n, m).stream().anyMatch(part -> part.holds(here, here));
                sum[0] += reaches && holds ? probability : 0;
            });
            return Math.min(1, sum[0]);
        });
    }

    /**
     * {@return what is known of the territory that holds a place}
     *
     * @param position the place, in metres
     * @param tail probability left out on either side of the limits of its ends
     */
    public Ground ground(double position, double tail) {
        int cell = cells.cell(position);
        int lowest = Math.max(0, cell + 1 - cells.longest);
        double[] ends = tree.meanOf(recursion -> ends(recursion, cell, lowest));
        int reach = ends.length / 2;
        double[] lower = Arrays.copyOf(ends, reach);
        double[] upper = Arrays.copyOfRange(ends, reach, ends.length);
        double probability = Math.min(1, Arrays.stream(lower).sum());
        return new Ground(
                probability,
                List.of(
                        cells.place(lowest + quantile(lower, tail)),
                        cells.place(lowest + quantile(lower, 0.5)),
                        cells.place(lowest + quantile(lower, 1 - tail))),
                List.of(
                        cells.place(cell + 1 + quantile(upper, tail)),
                        cells.place(cell + 1 + quantile(upper, 0.5)),
                        cells.place(cell + 1 + quantile(upper, 1 - tail))));
    }

    /** Probabilities of each lower border, then of each upper border, of a territory that holds a cell. */
    private double[] ends(TreeRecursion recursion, int cell, int lowest) {
        double[] ends = new double[2 * cells.longest];
        recursion.straightHolding(
                line, cell, cell, (from, n, probability) -> addEnds(ends, cell, lowest, from, from + n, probability));
        recursion.bentHolding(line, cell, (crossing, n, m, probability) -> {
            for (Part part : parts(crossing.crossing, n, m)) {
                addEnds(ends, cell, lowest, part.from, part.to, probability);
            }
        });
        return ends;
    }

    private void addEnds(double[] ends, int cell, int lowest, int from, int to, double probability) {
        if (from <= cell && cell < to) {
            ends[from - lowest] += probability;
            ends[cells.longest + to - cell - 1] += probability;
        }
    }

    private static int quantile(double[] law, double probability) {
        double total = Arrays.stream(law).sum();
        double sum = 0;
        for (int i = 0; i < law.length; i++) {
            sum += law[i];
            if (sum >= probability * total) {
                return i;
            }
        }
        return law.length - 1;
    }

    /** {@return the territories of the most probable map under the heaviest nature whose middles lie on this line, going up} */
    public List<Span> mostProbable() {
        return spans(tree.mostProbable());
    }

    /**
     * {@return the territories of a whole map, drawn with its probability, whose middles lie on this line, going up}
     *
     * @param random where chance comes from
     */
    public List<Span> draw(RandomGenerator random) {
        return draw(random, random.nextDouble());
    }

    /**
     * {@return the same under one of the natures; the same chance draws the same map on all lines of a tree}
     *
     * @param random where chance comes from
     * @param nature which of the natures, from 0 to 1, each taking as much room as its weight; the same on all lines of a book
     *     is the same nature
     */
    public List<Span> draw(RandomGenerator random, double nature) {
        return spans(Walk.drawn(tree.drawn(nature), random));
    }

    private List<Span> spans(List<Found> territories) {
        return territories.stream()
                .filter(one -> one.line() == line)
                .map(one -> new Span(
                        cells.place(one.from()),
                        cells.place(one.to()),
                        one.middle(),
                        one.beyond().map(this::beyond)))
                .toList();
    }

    private Beyond beyond(Found.Beyond part) {
        Cells there = tree.tree().lines.get(part.line());
        return new Beyond(part.line(), there.place(part.from()), there.place(part.to()));
    }
}

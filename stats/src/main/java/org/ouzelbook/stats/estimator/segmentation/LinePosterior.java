package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.apache.commons.math3.random.RandomGenerator;

/**
 * Every map of one line, with its probability: averaged over natures drawn for the whole book, exact for each of them.
 */
public final class LinePosterior {
    private final List<Part> parts;
    private final Cells cells;

    private record Part(double weight, Recursion recursion) {}

    private LinePosterior(List<Part> parts) {
        this.parts = parts;
        this.cells = parts.get(0).recursion.cells;
    }

    /**
     * A territory of one map.
     *
     * @param lower its lower end, in metres
     * @param upper its upper end, in metres
     */
    public record Span(double lower, double upper) {
        /** {@return its middle, in metres} */
        public double middle() {
            return (lower + upper) / 2;
        }
    }

    /**
     * What is known of the territory that holds a place.
     *
     * @param probability probability that there is one
     * @param lower low, middle and high quantile of its lower end, in metres, if there is one
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
     * {@return the maps of a line; empty if what is known of it contradicts itself, so that no map can be}
     *
     * @param line the line
     * @param grain how finely it is cut
     * @param natures natures that stand for what is known of the species
     */
    public static Optional<LinePosterior> of(SurveyedLine line, Grain grain, List<NaturePosterior.Draw> natures) {
        Cells cells = new Cells(line, grain);
        List<Part> parts = natures.parallelStream()
                .filter(draw -> draw.weight() > 1e-6)
                .map(draw -> new Part(draw.weight(), new Recursion(cells, draw.nature())))
                .toList();
        boolean possible = parts.stream().allMatch(part -> part.recursion.logTotal() > Double.NEGATIVE_INFINITY);
        return possible ? Optional.of(new LinePosterior(parts)) : Optional.empty();
    }

    private double mean(ToDoubleFunction<Recursion> value) {
        double sum = 0;
        double weights = 0;
        for (Part part : parts) {
            sum += part.weight * value.applyAsDouble(part.recursion);
            weights += part.weight;
        }
        return sum / weights;
    }

    private double[] meanOf(Function<Recursion, double[]> values) {
        List<double[]> all =
                parts.parallelStream().map(part -> values.apply(part.recursion)).toList();
        double[] mean = new double[all.get(0).length];
        double weights = 0;
        for (int i = 0; i < all.size(); i++) {
            weights += parts.get(i).weight;
            for (int k = 0; k < mean.length; k++) {
                mean[k] += parts.get(i).weight * all.get(i)[k];
            }
        }
        for (int k = 0; k < mean.length; k++) {
            mean[k] /= weights;
        }
        return mean;
    }

    /**
     * {@return the probabilities of 0, 1, 2 … territories, those included that no visit found}
     *
     * @param counted whether a territory with its middle at a place, in metres, counts
     */
    public double[] countLaw(DoublePredicate counted) {
        return meanOf(recursion -> CountLaw.of(recursion, counted));
    }

    /**
     * {@return the expected number of territories that no visit found}
     *
     * @param counted whether a territory with its middle at a place, in metres, counts
     */
    public double expectedUnseen(DoublePredicate counted) {
        return mean(recursion -> {
            double sum = 0;
            for (int from = 0; from < cells.count; from++) {
                for (int n = cells.shortest; n < recursion.ratio[from].length; n++) {
                    if (cells.below[from] == cells.below[from + n]
                            && counted.test(cells.place(from) + n * cells.width / 2)) {
                        sum += Math.exp(recursion.logProbability(from, n));
                    }
                }
            }
            return sum;
        });
    }

    /** {@return for each cell, going up, the probability that a territory holds it that no visit found} */
    public double[] unseen() {
        return meanOf(recursion -> perCell(recursion, true));
    }

    /** {@return for each cell, going up, the probability that a territory holds it} */
    public double[] held() {
        return meanOf(recursion -> perCell(recursion, false));
    }

    private double[] perCell(Recursion recursion, boolean onlyUnseen) {
        double[] change = new double[cells.count + 1];
        for (int from = 0; from < cells.count; from++) {
            for (int n = cells.shortest; n < recursion.ratio[from].length; n++) {
                if (!onlyUnseen || cells.below[from] == cells.below[from + n]) {
                    double probability = Math.exp(recursion.logProbability(from, n));
                    change[from] += probability;
                    change[from + n] -= probability;
                }
            }
        }
        for (int c = 1; c <= cells.count; c++) {
            change[c] += change[c - 1];
        }
        return Arrays.copyOf(change, cells.count);
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
        return mean(recursion -> {
            double sum = 0;
            for (int from = Math.max(0, high + 1 - cells.longest); from <= low; from++) {
                for (int n = Math.max(cells.shortest, high + 1 - from); n < recursion.ratio[from].length; n++) {
                    sum += Math.exp(recursion.logProbability(from, n));
                }
            }
            return Math.min(1, sum);
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
        double[] ends = meanOf(recursion -> ends(recursion, cell, lowest));
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
    private double[] ends(Recursion recursion, int cell, int lowest) {
        double[] ends = new double[2 * cells.longest];
        for (int from = lowest; from <= cell; from++) {
            for (int n = Math.max(cells.shortest, cell + 1 - from); n < recursion.ratio[from].length; n++) {
                double probability = Math.exp(recursion.logProbability(from, n));
                ends[from - lowest] += probability;
                ends[cells.longest + from + n - cell - 1] += probability;
            }
        }
        return ends;
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

    /** {@return the most probable map under the heaviest nature, going up} */
    public List<Span> mostProbable() {
        Part heaviest = parts.get(0);
        for (Part part : parts) {
            heaviest = part.weight > heaviest.weight ? part : heaviest;
        }
        return spans(Walk.best(heaviest.recursion));
    }

    /**
     * {@return a whole map, drawn with its probability}
     *
     * @param random where chance comes from
     */
    public List<Span> draw(RandomGenerator random) {
        return draw(random, random.nextDouble());
    }

    /**
     * {@return a whole map, drawn with its probability under one of the natures}
     *
     * @param random where chance comes from
     * @param nature which of the natures, from 0 to 1, each taking as much room as its weight; the same on all lines of a book
     *     is the same nature
     */
    public List<Span> draw(RandomGenerator random, double nature) {
        double weights = 0;
        for (Part part : parts) {
            weights += part.weight;
        }
        double at = nature * weights;
        Part chosen = parts.get(parts.size() - 1);
        for (Part part : parts) {
            at -= part.weight;
            if (at < 0) {
                chosen = part;
                break;
            }
        }
        return spans(Walk.drawn(chosen.recursion, random));
    }

    private List<Span> spans(List<int[]> stretches) {
        List<Span> spans = new ArrayList<>();
        for (int[] stretch : stretches) {
            spans.add(new Span(cells.place(stretch[0]), cells.place(stretch[1])));
        }
        return Collections.unmodifiableList(spans);
    }
}

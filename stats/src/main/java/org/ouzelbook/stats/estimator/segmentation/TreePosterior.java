package org.ouzelbook.stats.estimator.segmentation;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Every map of lines that meet, with its probability: averaged over natures drawn for the whole book, exact for each of them. */
public final class TreePosterior {
    /** At most so many natures are looked at together; the groups, side by side. */
    static final int TOGETHER = 6;

    private final Tree tree;
    private final List<Part> parts;

    private record Part(double weight, TreeRecursion recursion) {}

    private TreePosterior(Tree tree, List<Part> parts) {
        this.tree = tree;
        this.parts = parts;
    }

    /**
     * {@return the maps of lines that meet; empty if what is known of them contradicts itself, so that no map can be}
     *
     * @param tree the lines
     * @param grain how finely they are cut
     * @param natures natures that stand for what is known of the species
     */
    public static Optional<TreePosterior> of(SurveyedTree tree, Grain grain, List<NaturePosterior.Draw> natures) {
        Tree cells = new Tree(tree, grain);
        List<NaturePosterior.Draw> heavy =
                natures.stream().filter(draw -> draw.weight() > 1e-6).toList();
        int groups = (heavy.size() + TOGETHER - 1) / TOGETHER;
        List<Part> parts = IntStream.range(0, groups)
                .parallel()
                .mapToObj(group -> heavy.subList(group * heavy.size() / groups, (group + 1) * heavy.size() / groups))
                .flatMap(group -> parts(cells, group))
                .toList();
        boolean possible = parts.stream().allMatch(part -> part.recursion.logTotal() > Double.NEGATIVE_INFINITY);
        return possible ? Optional.of(new TreePosterior(cells, parts)) : Optional.empty();
    }

    private static Stream<Part> parts(Tree cells, List<NaturePosterior.Draw> draws) {
        List<TreeRecursion> recursions = TreeRecursion.of(
                cells, draws.stream().map(NaturePosterior.Draw::nature).toList());
        return IntStream.range(0, draws.size())
                .mapToObj(i -> new Part(draws.get(i).weight(), recursions.get(i)));
    }

    /**
     * {@return the maps as seen from one of the lines}
     *
     * @param line which of the lines
     */
    public LinePosterior line(int line) {
        return new LinePosterior(this, line);
    }

    Tree tree() {
        return tree;
    }

    double mean(ToDoubleFunction<TreeRecursion> value) {
        return meanOf(recursion -> new double[] {value.applyAsDouble(recursion)})[0];
    }

    double[] meanOf(Function<TreeRecursion, double[]> values) {
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

    /** The most probable map under the heaviest nature. */
    List<Found> mostProbable() {
        Part heaviest = parts.get(0);
        for (Part part : parts) {
            heaviest = part.weight > heaviest.weight ? part : heaviest;
        }
        return Walk.best(heaviest.recursion);
    }

    /** One of the natures' recursions, each taking as much of the way from 0 to 1 as its weight. */
    TreeRecursion drawn(double nature) {
        double weights = 0;
        for (Part part : parts) {
            weights += part.weight;
        }
        double at = nature * weights;
        for (Part part : parts) {
            at -= part.weight;
            if (at < 0) {
                return part.recursion;
            }
        }
        return parts.get(parts.size() - 1).recursion;
    }
}

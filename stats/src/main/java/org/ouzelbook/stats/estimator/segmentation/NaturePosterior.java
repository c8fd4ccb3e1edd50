package org.ouzelbook.stats.estimator.segmentation;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.function.BiFunction;
import java.util.function.DoublePredicate;
import java.util.function.Function;
import org.apache.commons.math3.random.MersenneTwister;
import org.apache.commons.math3.random.RandomGenerator;

/**
 * What the lines of a book and the prior say together of the nature of a species and its surveyors.
 *
 * <p>The mode is found by quasi-Newton steps, first on coarse cells, then on the grain that is asked for. Natures are then drawn
 * from a multivariate t law about the mode, whose spread is that of the posterior there, and weighted by how much better the
 * posterior likes them (importance sampling): so the uncertainty of the nature is carried on, not only its best value.
 *
 * <p>Source: A. Gelman and others (2013), Bayesian Data Analysis, 3rd ed., sections 10.4 and 13.3; from memory.
 */
public final class NaturePosterior {
    private static final int DRAWS = 24;
    private static final double T_FREEDOM = 6;
    private static final long SEED = 20_031_949;
    private static final double COARSE = 100;

    /** The ascent is near the top, or there, if a step promises no more than this, in units of the log posterior. */
    private static final double NEAR = 0.1;

    private static final double THERE = 1e-3;

    private final Nature mode;
    private final List<Draw> draws;
    private final double effectiveDraws;

    private NaturePosterior(Nature mode, List<Draw> draws) {
        this.mode = mode;
        this.draws = draws;
        this.effectiveDraws =
                1 / draws.stream().mapToDouble(one -> one.weight * one.weight).sum();
    }

    /**
     * A nature drawn from the posterior.
     *
     * @param nature the nature
     * @param weight its weight; those of all draws add up to 1
     */
    public record Draw(Nature nature, double weight) {}

    /**
     * {@return what lines and prior say together; the same lines always give the same answer}
     *
     * @param waters the lines of all seasons and rivers, those together that meet; none leave the prior as it is
     * @param grain how finely the lines are cut
     * @param prior what was believed before
     * @param progress hears which share of the work is done, and answers whether to go on
     * @throws CancellationException if it is told to stop
     */
    public static NaturePosterior of(
            List<SurveyedTree> waters, Grain grain, NaturePrior prior, DoublePredicate progress) {
        Grain coarse = grain.withCell(Math.max(COARSE, grain.cell()));
        Posterior rough = posterior(waters, coarse, prior, progress);
        Ascent near = Ascent.from(start(prior), prior.deviations()).goingOn(rough, NEAR);
        Bend bend = Bend.of(rough, near.point(), prior.deviations());
        Ascent top = near.knowing(bend.inverse()).goingOn(rough, THERE);
        Ascent mode = grain.cell() < COARSE ? top.goingOn(posterior(waters, grain, prior, progress), THERE) : top;
        return new NaturePosterior(Nature.at(mode.point()), draws(rough, bend, top.point(), mode.point()));
    }

    /** A nature with fewer strays than the middle of the prior: from there no ascent ends where nearly every bird is one. */
    private static double[] start(NaturePrior prior) {
        double[] start = prior.centre().point();
        start[Nature.STRAYS] -= 1.5 * prior.deviations()[Nature.STRAYS];
        return start;
    }

    private static Posterior posterior(
            List<SurveyedTree> waters, Grain grain, NaturePrior prior, DoublePredicate progress) {
        double[] start = prior.centre().point();
        List<Tree> possible = waters.parallelStream()
                .map(tree -> new Tree(tree, grain))
                .filter(tree -> TreeRecursion.of(tree, Nature.at(start)).logTotal() > Double.NEGATIVE_INFINITY)
                .toList();
        return new Posterior(new Likelihood(possible), prior, progress);
    }

    /** The logarithm of likelihood times prior; counts its calls as progress. */
    static final class Posterior {
        /** About as many calls as a fit takes. */
        private static final double USUAL_CALLS = 60;

        private final Likelihood likelihood;
        private final NaturePrior prior;
        private final DoublePredicate progress;
        private int calls;

        Posterior(Likelihood likelihood, NaturePrior prior, DoublePredicate progress) {
            this.likelihood = likelihood;
            this.prior = prior;
            this.progress = progress;
        }

        double log(double[] point) {
            return logs(List.of(point)).get(0);
        }

        /** The logarithms at several points, a few at a time. */
        List<Double> logs(List<double[]> points) {
            return inGroups(points, likelihood::logs, (log, point) -> finite(log + prior.log(point)));
        }

        Likelihood.Slope slope(double[] point) {
            return slopes(List.of(point)).get(0);
        }

        /** The slopes at several points, a few at a time. */
        List<Likelihood.Slope> slopes(List<double[]> points) {
            return inGroups(points, likelihood::slopes, (slope, point) -> {
                double[] gradient = prior.gradient(point);
                for (int j = 0; j < gradient.length; j++) {
                    gradient[j] += slope.gradient()[j];
                }
                return new Likelihood.Slope(finite(slope.log() + prior.log(point)), gradient);
            });
        }

        private <T> List<T> inGroups(
                List<double[]> points,
                Function<List<double[]>, List<T>> likelihoods,
                BiFunction<T, double[], T> whole) {
            List<T> all = new ArrayList<>();
            for (int from = 0; from < points.size(); from += TreePosterior.TOGETHER) {
                List<double[]> group = points.subList(from, Math.min(points.size(), from + TreePosterior.TOGETHER));
                group.forEach(point -> tick());
                List<T> found = likelihoods.apply(group);
                for (int i = 0; i < group.size(); i++) {
                    all.add(whole.apply(found.get(i), group.get(i)));
                }
            }
            return all;
        }

        private static double finite(double log) {
            return Double.isNaN(log) ? Double.NEGATIVE_INFINITY : log;
        }

        private void tick() {
            calls++;
            if (!progress.test(calls / (calls + USUAL_CALLS))) {
                throw new CancellationException("Stopped while the model was fitted");
            }
        }
    }

    private static List<Draw> draws(Posterior posterior, Bend bend, double[] top, double[] mode) {
        RandomGenerator random = new MersenneTwister(SEED);
        double peak = posterior.log(top);
        List<double[]> points = new ArrayList<>();
        List<double[]> aboutTop = new ArrayList<>();
        List<Double> rarities = new ArrayList<>();
        for (int i = 0; i < DRAWS / 2; i++) {
            double[] normal = new double[Nature.SIZE];
            double chiSquare = 0;
            for (int j = 0; j < T_FREEDOM; j++) {
                double one = random.nextGaussian();
                chiSquare += one * one;
            }
            double square = 0;
            for (int j = 0; j < Nature.SIZE; j++) {
                normal[j] = random.nextGaussian() * Math.sqrt(T_FREEDOM / chiSquare);
                square += normal[j] * normal[j];
            }
            for (int sign = -1; sign <= 1; sign += 2) {
                double[] away = bend.away(normal, sign);
                points.add(plus(mode, away));
                aboutTop.add(plus(top, away));
                rarities.add((T_FREEDOM + Nature.SIZE) / 2 * Math.log1p(square / T_FREEDOM));
            }
        }
        List<Double> logs = posterior.logs(aboutTop);
        List<Double> logWeights = new ArrayList<>();
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < points.size(); i++) {
            double log = logs.get(i) - peak + rarities.get(i);
            logWeights.add(log);
            highest = Math.max(highest, log);
        }
        double sum = 0;
        for (double log : logWeights) {
            sum += Math.exp(log - highest);
        }
        List<Draw> draws = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            draws.add(new Draw(Nature.at(points.get(i)), Math.exp(logWeights.get(i) - highest) / sum));
        }
        return List.copyOf(draws);
    }

    private static double[] plus(double[] one, double[] other) {
        double[] sum = one.clone();
        for (int j = 0; j < sum.length; j++) {
            sum[j] += other[j];
        }
        return sum;
    }

    /** {@return the most probable nature} */
    public Nature mode() {
        return mode;
    }

    /**
     * {@return a limit of each number, the others left open}
     *
     * @param deviations how many standard deviations from the mode, on the scale of {@link Nature#point}; below 0 for lower
     *     limits
     */
    public Nature limit(double deviations) {
        double[] point = mode.point();
        double[] middle = new double[Nature.SIZE];
        double[] square = new double[Nature.SIZE];
        for (Draw draw : draws) {
            double[] drawn = draw.nature.point();
            for (int j = 0; j < Nature.SIZE; j++) {
                middle[j] += draw.weight * drawn[j];
                square[j] += draw.weight * drawn[j] * drawn[j];
            }
        }
        for (int j = 0; j < Nature.SIZE; j++) {
            point[j] += deviations * Math.sqrt(Math.max(0, square[j] - middle[j] * middle[j]));
        }
        return Nature.at(point);
    }

    /** {@return natures that stand for the posterior} */
    public List<Draw> draws() {
        return draws;
    }

    /** {@return how many equally weighted draws the weighted ones are worth} */
    public double effectiveDraws() {
        return effectiveDraws;
    }
}

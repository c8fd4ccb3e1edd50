package org.ouzelbook.stats.estimator.power;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.trend.LineTrend;
import org.ouzelbook.stats.estimator.trend.SeasonCount;
import org.ouzelbook.stats.estimator.trend.TrendSettings;

/**
 * The power of a survey to find a steady change, by simulation of its counts.
 *
 * <p>In each round every season's expected number follows the change and a good or bad year, log-normal; territories are Poisson
 * about it, and each is counted with the share that the visits find. The total of each season goes through {@link LineTrend}, and
 * the change is found where the interval leaves out no change on its own side. Rounds are the same for every plan of one seed,
 * so that plans compare. Real territories vary less than Poisson counts, so the power is cautious.
 */
public final class CountPower {
    private static final double SMALLEST_FACTOR = 0.5;
    private static final double PRECISE = 5e-4;

    private final CountPlan plan;
    private final int rounds;
    private final long seed;

    private CountPower(CountPlan plan, int rounds, long seed) {
        this.plan = plan;
        this.rounds = rounds;
        this.seed = seed;
    }

    /**
     * {@return the power of a plan}
     *
     * @param plan the survey
     * @param rounds how many times to simulate it; 100 or more
     * @param seed of the random numbers
     * @throws IllegalArgumentException if there are too few rounds
     */
    public static CountPower of(CountPlan plan, int rounds, long seed) {
        if (rounds < 100) {
            throw new IllegalArgumentException("100 rounds or more are needed, but were " + rounds);
        }
        return new CountPower(plan, rounds, seed);
    }

    /**
     * {@return the share of rounds in which a change is found; its standard error is √(p(1 − p)/rounds)}
     *
     * @param factor yearly factor: 0.95 is a fall by 5 % a year; above 0
     */
    public double powerOf(double factor) {
        Random seeds = new Random(seed);
        int found = 0;
        for (int round = 0; round < rounds; round++) {
            found += found(factor, new Well19937c(seeds.nextLong())) ? 1 : 0;
        }
        return (double) found / rounds;
    }

    private boolean found(double factor, RandomGenerator random) {
        List<SeasonCount> counts = new ArrayList<>();
        for (int season = 0; season < plan.seasons(); season++) {
            double year = Math.exp(plan.yearNoise() * random.nextGaussian() - plan.yearNoise() * plan.yearNoise() / 2);
            double mean = plan.territories() * Math.pow(factor, season) * year * plan.shareCounted();
            long count = mean < 1e-12
                    ? 0
                    : new PoissonDistribution(random, mean, PoissonDistribution.DEFAULT_EPSILON, 10_000).sample();
            counts.add(SeasonCount.of("all water", season, count));
        }
        return LineTrend.of(counts, new TrendSettings(plan.level(), TrendSettings.Spread.AT_LEAST_POISSON))
                .found()
                .map(line -> shows(line.slope(), factor))
                .orElse(false);
    }

    private static boolean shows(Estimate slope, double factor) {
        return factor < 1 ? slope.upper() < 0 : slope.lower() > 0;
    }

    /**
     * {@return the yearly factor of the smallest fall that is found with this power; empty if even a halving every year is not}
     *
     * @param power wanted, between 0 and 1
     */
    public OptionalDouble smallestFall(double power) {
        double flat = 1;
        double steep = 0.98;
        while (powerOf(steep) < power) {
            flat = steep;
            steep -= 0.04;
            if (steep < SMALLEST_FACTOR) {
                return OptionalDouble.empty();
            }
        }
        while (flat - steep > PRECISE) {
            double middle = (flat + steep) / 2;
            if (powerOf(middle) >= power) {
                steep = middle;
            } else {
                flat = middle;
            }
        }
        return OptionalDouble.of(steep);
    }
}

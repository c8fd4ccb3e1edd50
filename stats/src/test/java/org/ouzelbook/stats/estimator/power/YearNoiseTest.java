package org.ouzelbook.stats.estimator.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.PoissonDistribution;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.trend.SeasonCount;

class YearNoiseTest {
    private static List<SeasonCount> series(long... counts) {
        return IntStream.range(0, counts.length)
                .mapToObj(year -> SeasonCount.of("all", 2001 + year, counts[year]))
                .toList();
    }

    /** R 4.2.2: {@code glm(y ~ t, poisson)}, then {@code uniroot} on X² by μ + μ²(e^σ² − 1) against 8 and {@code qchisq(c(.975, .025), 8)}. */
    @Test
    void agreesWithTheMomentsInR() {
        YearNoise noise = YearNoise.of(series(24, 9, 27, 12, 30, 11, 26, 8, 13, 25), 0.95)
                .found()
                .orElseThrow();

        assertThat(noise.sigma()).isCloseTo(0.413665336, within(1e-6));
        assertThat(noise.lower()).isCloseTo(0.232867095, within(1e-6));
        assertThat(noise.upper()).isCloseTo(0.777209734, within(1e-6));
        assertThat(noise.seasons()).isEqualTo(10);
    }

    @Test
    void isNothingWhereCountsVaryNoMoreThanChance() {
        YearNoise noise =
                YearNoise.of(series(12, 11, 12, 13, 12, 12, 11), 0.95).found().orElseThrow();

        assertThat(noise.sigma()).isZero();
        assertThat(noise.lower()).isZero();
    }

    @Test
    void needsSeasonsAndBirds() {
        assertThat(YearNoise.of(series(12, 11, 12, 13, 12), 0.95))
                .isEqualTo(Answer.notEstimable(Reason.TOO_FEW_VALUES, 5, 6));
        assertThat(YearNoise.of(series(0, 0, 0, 0, 0, 0), 0.95)).isEqualTo(Answer.notEstimable(Reason.ALL_COUNTS_ZERO));
    }

    /** 300 books of 25 years about 40 territories with noise 0.3: the mean estimate is within 0.03 of it, limits hold it in most. */
    @Test
    @Tag("slow")
    void recoversTheNoiseOfYears() {
        Random seeds = new Random(1984);
        double sum = 0;
        int held = 0;
        int books = 300;
        for (int book = 0; book < books; book++) {
            RandomGenerator random = new Well19937c(seeds.nextLong());
            long[] counts = new long[25];
            for (int year = 0; year < counts.length; year++) {
                double mean = 40 * Math.exp(0.3 * random.nextGaussian() - 0.045);
                counts[year] = new PoissonDistribution(random, mean, 1e-12, 10_000).sample();
            }
            YearNoise noise = YearNoise.of(series(counts), 0.95).found().orElseThrow();
            sum += noise.sigma();
            held += noise.lower() <= 0.3 && 0.3 <= noise.upper() ? 1 : 0;
        }

        assertThat(sum / books).isCloseTo(0.3, within(0.03));
        assertThat(held / (double) books).isBetween(0.88, 0.99);
    }
}

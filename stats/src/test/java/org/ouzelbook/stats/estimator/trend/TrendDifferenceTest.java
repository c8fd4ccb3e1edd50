package org.ouzelbook.stats.estimator.trend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Estimate;

class TrendDifferenceTest {
    private static LineTrend trend(long... counts) {
        List<SeasonCount> series = IntStream.range(0, counts.length)
                .mapToObj(i -> SeasonCount.of("A", 2019 + i, counts[i]))
                .toList();
        return LineTrend.of(series, TrendSettings.usual()).found().orElseThrow();
    }

    /** R 4.2.2: the interaction of {@code glm(y ~ water * year, poisson)}, whose counts vary less than Poisson. */
    @Test
    void isTheInteractionOfWaterAndYear() {
        TrendDifference difference = TrendDifference.of(trend(12, 11, 9, 10, 8, 7), trend(5, 6, 6, 8, 7, 9));
        Estimate percent = difference.percentPerYear();

        assertThat(difference.slope().value()).isCloseTo(0.2050986029713, within(1e-10));
        assertThat(difference.slope().standardError().orElseThrow()).isCloseTo(0.1210825119218, within(1e-10));
        assertThat(difference.p()).isCloseTo(0.0902890963925, within(1e-9));
        assertThat(percent.value()).isCloseTo(22.76461085494, within(1e-8));
        assertThat(percent.lower()).isCloseTo(-3.17052648152, within(1e-8));
        assertThat(percent.upper()).isCloseTo(55.64630407175, within(1e-8));
    }

    /** R 4.2.2: {@code glm(…, quasipoisson)} of each water, Welch’s degrees of freedom by hand. */
    @Test
    void addsDegreesOfFreedomAsWelchDoes() {
        TrendDifference difference = TrendDifference.of(trend(12, 1, 19, 10, 3, 17), trend(5, 16, 1, 8, 17, 9));

        assertThat(difference.slope().value()).isCloseTo(0.0313496026481, within(1e-9));
        assertThat(difference.slope().standardError().orElseThrow()).isCloseTo(0.2577408135029, within(1e-8));
        assertThat(difference.p()).isCloseTo(0.9061968933386, within(1e-8));
    }

    @Test
    void ofATrendFromItselfIsNone() {
        TrendDifference none = TrendDifference.of(trend(12, 11, 9, 10, 8, 7), trend(12, 11, 9, 10, 8, 7));

        assertThat(none.slope().value()).isZero();
        assertThat(none.p()).isEqualTo(1);
    }

    /** 1,000 pairs of Poisson series with one slope: limits of 95 % hold 0 in 95 %, give or take four standard errors of 0.7 %. */
    @Test
    @Tag("slow")
    void holdsTheTruthAsOftenAsItSays() {
        Random random = new Random(47);
        int held = 0;
        for (int round = 0; round < 1000; round++) {
            TrendDifference difference = TrendDifference.of(trend(poisson(random)), trend(poisson(random)));
            held += difference.slope().lower() <= 0 && difference.slope().upper() >= 0 ? 1 : 0;
        }

        assertThat(held).isBetween(922, 985);
    }

    private static long[] poisson(Random random) {
        return IntStream.range(0, 10)
                .mapToLong(year -> {
                    double rest = Math.exp(-12 * Math.pow(0.97, year));
                    double product = random.nextDouble();
                    long count = 0;
                    while (product > rest) {
                        product *= random.nextDouble();
                        count++;
                    }
                    return count;
                })
                .toArray();
    }
}

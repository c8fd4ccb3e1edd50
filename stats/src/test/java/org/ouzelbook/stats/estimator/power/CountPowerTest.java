package org.ouzelbook.stats.estimator.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CountPowerTest {
    /** Upper tails of the binomial law, by hand: with 3 visits of 0.63, 1 − 0.37³ are found once. */
    @ParameterizedTest
    @CsvSource(textBlock = """
            0.63, 3, 1, 0.949347
            0.94, 3, 1, 0.999784
            0.30, 8, 3, 0.4482262
            0.40, 5, 2, 0.66304
            0.50, 8, 2, 0.9648438
            1.00, 2, 2, 1
            0.90, 1, 2, 0
            """)
    void countsWhatVisitsFind(double detection, int visits, int findings, double share) {
        assertThat(new CountPlan(10, 5, detection, visits, findings, 0, 0.95).shareCounted())
                .isCloseTo(share, within(5e-7));
    }

    /** Without a change a fall is found in no more than half of 5 %: limits are never narrower than Poisson. */
    @Test
    @Tag("slow")
    void seldomFindsAFallThatIsNone() {
        CountPower power = CountPower.of(new CountPlan(20, 10, 0.9, 4, 2, 0, 0.95), 2000, 7);

        assertThat(power.powerOf(1 - 1e-12)).isLessThan(0.025 + 4 * Math.sqrt(0.025 * 0.975 / 2000));
    }

    /** Large counts with known good and bad years: close to least squares on logs by the noncentral t law. */
    @Test
    @Tag("slow")
    void agreesWithTheClosedFormForLargeCounts() {
        CountPower power = CountPower.of(new CountPlan(3000, 10, 1, 1, 1, 0.15, 0.95), 2000, 8);
        double expected = new LogLinePower(-0.05, 10, Math.sqrt(Math.expm1(0.15 * 0.15)), 0.05, 2).leastSquares();

        assertThat(power.powerOf(0.95)).isCloseTo(expected, within(0.01 + 4 * Math.sqrt(0.25 / 2000)));
    }

    @Test
    void findsMoreWithMoreEffort() {
        CountPlan plan = new CountPlan(20, 8, 0.5, 3, 2, 0.1, 0.95);
        double few = CountPower.of(plan, 200, 1).smallestFall(0.8).orElseThrow();

        assertThat(few).isBetween(0.5, 0.99);
        assertThat(CountPower.of(plan.withSeasons(16), 200, 1).smallestFall(0.8).orElseThrow())
                .isGreaterThan(few);
        assertThat(CountPower.of(plan.withWater(4), 200, 1).smallestFall(0.8).orElseThrow())
                .isGreaterThan(few);
        assertThat(CountPower.of(plan.withVisits(8), 200, 1).smallestFall(0.8).orElseThrow())
                .isGreaterThan(few);
    }

    @Test
    void saysWhereNoFallWouldShow() {
        assertThat(CountPower.of(new CountPlan(1, 3, 0.5, 1, 1, 0.2, 0.95), 100, 1)
                        .smallestFall(0.8))
                .isEmpty();
        assertThatThrownBy(() -> CountPower.of(new CountPlan(9, 9, 0.5, 3, 1, 0, 0.95), 5, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new CountPlan(0, 9, 0.5, 3, 1, 0, 0.95)).isInstanceOf(IllegalArgumentException.class);
    }
}

package org.ouzelbook.stats.estimator.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.stats.estimator.power.LogLinePower.Precision;

class LogLinePowerTest {
    /**
     * T. Gerrodette (1987), Ecology 68:1364–1372, formulas from memory; numbers computed once with base R 4.2.2 ({@code pnorm},
     * {@code pt} with its noncentrality).
     */
    @ParameterizedTest
    @CsvSource(textBlock = """
             0.05, 10, 0.15, 0.05, 2, 0.780990282, 0.689620731, 0.590348226, 0.843976914, 0.739930097
            -0.05, 10, 0.15, 0.05, 2, 0.930458664, 0.970033456, 0.988255272, 0.877657653, 0.780742947
            -0.03, 15, 0.20, 0.05, 2, 0.806201724, 0.880064123, 0.930364349, 0.730269758, 0.662983976
             0.10,  6, 0.10, 0.05, 1, 0.981994525, 0.952637361, 0.897605078, 0.990668534, 0.944134950
            """)
    void agreesWithTheFormulas(
            double rate,
            int years,
            double variation,
            double alpha,
            int tails,
            double oneOverRoot,
            double constant,
            double root,
            double exponential,
            double leastSquares) {
        LogLinePower power = new LogLinePower(rate, years, variation, alpha, tails);

        assertThat(power.linear(Precision.ONE_OVER_ROOT)).isCloseTo(oneOverRoot, within(1e-9));
        assertThat(power.linear(Precision.CONSTANT)).isCloseTo(constant, within(1e-9));
        assertThat(power.linear(Precision.ROOT)).isCloseTo(root, within(1e-9));
        assertThat(power.exponential()).isCloseTo(exponential, within(1e-9));
        assertThat(power.leastSquares()).isCloseTo(leastSquares, within(1e-7));
    }

    /** As the change vanishes the power becomes the test's own level. */
    @Test
    void isTheLevelWithoutAChange() {
        LogLinePower power = new LogLinePower(1e-9, 10, 0.2, 0.05, 2);

        assertThat(power.leastSquares()).isCloseTo(0.05, within(1e-6));
    }

    /** The smallest number of years for a power of 0.90: 13 with the variance known, 14 where it is estimated. */
    @Test
    void findsTheYearsThatAreNeeded() {
        assertThat(new LogLinePower(-0.05, 12, 0.2, 0.05, 2).exponential()).isLessThan(0.9);
        assertThat(new LogLinePower(-0.05, 13, 0.2, 0.05, 2).exponential()).isGreaterThan(0.9);
        assertThat(new LogLinePower(-0.05, 13, 0.2, 0.05, 2).leastSquares()).isLessThan(0.9);
        assertThat(new LogLinePower(-0.05, 14, 0.2, 0.05, 2).leastSquares()).isGreaterThan(0.9);
    }

    @Test
    void refusesWhatIsNoPlan() {
        assertThatThrownBy(() -> new LogLinePower(-1, 10, 0.2, 0.05, 2)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new LogLinePower(0.1, 2, 0.2, 0.05, 2)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new LogLinePower(0.1, 9, 0, 0.05, 2)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new LogLinePower(0.1, 9, 0.2, 0.05, 3)).isInstanceOf(IllegalArgumentException.class);
    }
}

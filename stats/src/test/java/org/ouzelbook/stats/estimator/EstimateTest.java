package org.ouzelbook.stats.estimator;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EstimateTest {
    private static Estimate estimate(double value, double error, double lower, double upper, double level) {
        return new Estimate(value, OptionalDouble.of(error), lower, upper, level, 5, Method.WILSON, List.of());
    }

    @Test
    void isNeverNotANumber() {
        assertThatThrownBy(() -> estimate(Double.NaN, 1, 0, 1, 0.95)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> estimate(0.5, Double.NaN, 0, 1, 0.95)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> estimate(0.5, 1, Double.NaN, 1, 0.95)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> estimate(0.5, 1, 0, Double.NaN, 0.95)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void liesWithinItsLimits() {
        assertThatThrownBy(() -> estimate(2, 1, 0, 1, 0.95)).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 1, -0.5, 95, Double.NaN})
    void refusesALevelThatIsNone(double level) {
        assertThatThrownBy(() -> estimate(0.5, 1, 0, 1, level))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("between 0 and 1");
    }

    @Test
    void swapsItsLimitsOnAFallingScale() {
        Estimate turned = estimate(0.5, 0.1, 0.25, 1, 0.95).on(x -> 1 / x);

        assertThat(turned.value()).isEqualTo(2);
        assertThat(turned.lower()).isEqualTo(1);
        assertThat(turned.upper()).isEqualTo(4);
        assertThat(turned.standardError()).isEmpty();
    }
}

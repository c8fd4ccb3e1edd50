package org.ouzelbook.stats.estimator.imputation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.ReferenceLaw;
import org.ouzelbook.stats.estimator.imputation.PooledEstimate.Part;

class PooledEstimateTest {
    private static PooledEstimate pooled(double complete, Part... parts) {
        return PooledEstimate.of(List.of(parts), complete).found().orElseThrow();
    }

    private static Part part(double value, double error) {
        return new Part(value, error * error);
    }

    /**
     * Means of oxygen intake of 31 men in a fitness course, five imputations: SAS/STAT 13.1 User's Guide, The MIANALYZE
     * Procedure, example 64.1, which prints the ten numbers given. Its results (mean 47.180993, within 0.930853, between
     * 0.041478, total 0.980626, 26.298 degrees of freedom) are cited from memory; the inputs are printed to four and five
     * decimals, hence the tolerances.
     */
    @Test
    void reproducesAPublishedExample() {
        PooledEstimate oxygen = pooled(
                30,
                part(47.0120, 0.95984),
                part(47.2407, 0.93540),
                part(47.4995, 1.00766),
                part(47.1485, 0.95439),
                part(47.0042, 0.96528));

        assertThat(oxygen.value()).isCloseTo(47.180993, within(5e-5));
        assertThat(oxygen.within()).isCloseTo(0.930853, within(1e-5));
        assertThat(oxygen.between()).isCloseTo(0.041478, within(2e-5));
        assertThat(oxygen.variance()).isCloseTo(0.980626, within(3e-5));
        assertThat(oxygen.law().degreesOfFreedom().orElseThrow()).isCloseTo(26.298, within(2e-3));
        Estimate estimate = oxygen.estimate(0.95, 31, List.of());
        assertThat(estimate.standardError().orElseThrow()).isCloseTo(0.990266, within(2e-5));
        assertThat(estimate.lower()).isCloseTo(45.1466, within(2e-4));
        assertThat(estimate.upper()).isCloseTo(49.2154, within(2e-4));
    }

    /** Sets that agree add nothing: what is left is a complete set's own interval, with ν₀(ν₀ + 1)/(ν₀ + 3) degrees of freedom. */
    @Test
    void addsNothingWhereSetsAgree() {
        PooledEstimate same = pooled(Double.POSITIVE_INFINITY, part(2, 0.5), part(2, 0.5), part(2, 0.5));

        assertThat(same.variance()).isEqualTo(0.25);
        assertThat(same.shareDrawn()).isZero();
        assertThat(same.law()).isEqualTo(ReferenceLaw.NORMAL);
        assertThat(pooled(10, part(2, 0.5), part(2, 0.5))
                        .law()
                        .degreesOfFreedom()
                        .orElseThrow())
                .isCloseTo(10 * 11 / 13.0, within(1e-12));
    }

    /** With nothing but the sets to go by, ν is m − 1. */
    @Test
    void restsOnTheSetsAloneWithoutOtherVariance() {
        PooledEstimate certain = pooled(12, part(1, 0), part(2, 0), part(3, 0));

        assertThat(certain.variance()).isCloseTo(4 / 3.0, within(1e-12));
        assertThat(certain.law().degreesOfFreedom().orElseThrow()).isCloseTo(2, within(1e-12));
        assertThat(pooled(12, part(1, 0), part(1, 0))
                        .estimate(0.95, 1, List.of())
                        .upper())
                .isEqualTo(1);
    }

    @Test
    void refusesASingleSetAndNumbersThatAreNone() {
        assertThat(PooledEstimate.of(List.of(part(1, 1)), 10))
                .isEqualTo(Answer.notEstimable(Reason.TOO_FEW_VALUES, 1, 2));
        assertThatThrownBy(() -> new Part(Double.NaN, 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Part(1, -1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> pooled(0, part(1, 1), part(2, 1))).isInstanceOf(IllegalArgumentException.class);
    }

    /** Means of 40 normal values of which 12 are lost and drawn anew, ten times: 95 % intervals hold the truth. */
    @Test
    @Tag("slow")
    void coversAMeanWithDrawnValues() {
        Random random = new Random(1987);
        int rounds = 4000;
        int covered = 0;
        for (int round = 0; round < rounds; round++) {
            covered += covers(random) ? 1 : 0;
        }

        assertThat((double) covered / rounds).isCloseTo(0.95, within(4 * Math.sqrt(0.95 * 0.05 / rounds)));
    }

    private static boolean covers(Random random) {
        int seen = 28;
        int all = 40;
        double[] values = new double[seen];
        double sum = 0;
        for (int i = 0; i < seen; i++) {
            values[i] = 3 + random.nextGaussian();
            sum += values[i];
        }
        double mean = sum / seen;
        double squares = 0;
        for (double value : values) {
            squares += (value - mean) * (value - mean);
        }
        List<Part> parts = new ArrayList<>();
        for (int draw = 0; draw < 10; draw++) {
            double chi = 0;
            for (int i = 0; i < seen - 1; i++) {
                double normal = random.nextGaussian();
                chi += normal * normal;
            }
            double variance = squares / chi;
            double centre = mean + Math.sqrt(variance / seen) * random.nextGaussian();
            parts.add(complete(values, all, centre, Math.sqrt(variance), random));
        }
        Estimate estimate =
                PooledEstimate.of(parts, all - 1.0).found().orElseThrow().estimate(0.95, all, List.of());
        return estimate.lower() <= 3 && 3 <= estimate.upper();
    }

    private static Part complete(double[] seen, int all, double centre, double deviation, Random random) {
        double[] values = new double[all];
        double sum = 0;
        for (int i = 0; i < all; i++) {
            values[i] = i < seen.length ? seen[i] : centre + deviation * random.nextGaussian();
            sum += values[i];
        }
        double mean = sum / all;
        double squares = 0;
        for (double value : values) {
            squares += (value - mean) * (value - mean);
        }
        return new Part(mean, squares / (all - 1) / all);
    }
}

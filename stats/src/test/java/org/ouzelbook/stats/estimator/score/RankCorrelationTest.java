package org.ouzelbook.stats.estimator.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;

class RankCorrelationTest {
    private static RankCorrelation found(double[] one, double[] other) {
        return RankCorrelation.of(one, other).found().orElseThrow();
    }

    /** Kendall (1948), table of S(d²) for Spearman's coefficient, from memory: n = 4, d² ≤ 2 has 4 of 24 orders, each way. */
    @Test
    void givesTheExactProbabilityOfFourPairs() {
        RankCorrelation four = found(new double[] {1, 2, 3, 4}, new double[] {1, 2, 4, 3});

        assertThat(four.coefficient()).isCloseTo(0.8, within(1e-12));
        assertThat(four.p()).isCloseTo(8.0 / 24, within(1e-12));
        assertThat(four.isExact()).isTrue();
    }

    /** The one order that agrees wholly and the one that is its reverse, of 8!. */
    @Test
    void findsFullAgreementAsRareAsArithmeticSays() {
        double[] up = {1, 2, 3, 4, 5, 6, 7, 8};
        RankCorrelation full = found(up, new double[] {3, 5, 7, 9, 11, 13, 15, 99});

        assertThat(full.coefficient()).isCloseTo(1, within(1e-12));
        assertThat(full.p()).isCloseTo(2.0 / 40320, within(1e-12));
    }

    /** Equal values share ranks: by hand, ranks 1.5, 1.5, 3, 4 against 1, 2, 3, 4 give 4.5 / √(4.5·5). */
    @Test
    void sharesRanksAmongEqualValues() {
        assertThat(found(new double[] {7, 7, 8, 9}, new double[] {1, 2, 3, 4}).coefficient())
                .isCloseTo(4.5 / Math.sqrt(22.5), within(1e-12));
    }

    @Test
    void drawsPairingsWhereThereAreTooManyAndDrawsThemAlike() {
        double[] up = new double[12];
        double[] noise = new double[12];
        Random random = new Random(5);
        for (int i = 0; i < 12; i++) {
            up[i] = i;
            noise[i] = random.nextDouble();
        }

        assertThat(found(up, up).p()).isEqualTo(1e-4);
        assertThat(found(up, noise)).isEqualTo(found(up, noise));
        assertThat(found(up, noise).p()).isBetween(0.01, 1.0);
        assertThat(found(up, noise).isExact()).isFalse();
    }

    @Test
    void refusesTooFewPairsAndValuesThatAreAllEqual() {
        assertThat(RankCorrelation.of(new double[] {1, 2, 3}, new double[] {1, 2, 3}))
                .isEqualTo(Answer.notEstimable(Reason.TOO_FEW_VALUES, 3, 4));
        assertThat(RankCorrelation.of(new double[] {1, 1, 1, 1}, new double[] {1, 2, 3, 4}))
                .isEqualTo(Answer.notEstimable(Reason.ALL_VALUES_EQUAL));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RankCorrelation.of(new double[] {1}, new double[] {1, 2}));
    }
}

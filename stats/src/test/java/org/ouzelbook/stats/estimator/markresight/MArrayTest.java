package org.ouzelbook.stats.estimator.markresight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class MArrayTest {
    /** Lebreton et al. (1992), Table 10: both sexes. */
    @Test
    void reproducesTheDippers() {
        MArray array = Dippers.pooled().arrays().get(0);

        assertThat(row(array, 0)).containsExactly(22, 11, 2, 0, 0, 0, 0, 9);
        assertThat(row(array, 1)).containsExactly(60, 0, 24, 1, 0, 0, 0, 35);
        assertThat(row(array, 3)).containsExactly(80, 0, 0, 0, 45, 1, 2, 32);
        assertThat(row(array, 5)).containsExactly(98, 0, 0, 0, 0, 0, 52, 46);
        assertThat(array.releases()).isEqualTo(426);
        assertThat(-2 * array.saturatedLogLikelihood()).isCloseTo(643.1385256, within(1e-6));
    }

    private static long[] row(MArray array, int release) {
        long[] row = new long[array.occasions() + 1];
        row[0] = array.released(release);
        for (int next = 1; next < array.occasions(); next++) {
            row[next] = array.seenNext(release, next);
        }
        row[array.occasions()] = array.never(release);
        return row;
    }

    @Test
    void leavesOutAnimalsThatWereNeverMet() {
        MArray array = MArray.of(3, List.of(EncounterHistory.of("000", 5)));

        assertThat(array.releases()).isZero();
        assertThat(array.saturatedLogLikelihood()).isZero();
    }

    @Test
    void refusesHistoriesOfDifferentLength() {
        assertThatThrownBy(() -> MArray.of(3, List.of(EncounterHistory.of("0101", 1))))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> EncounterHistory.of("0120", 1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> EncounterHistory.of("01", 0)).isInstanceOf(IllegalArgumentException.class);
    }
}

package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.Stretch;

class UnwalkedTest {
    private static final Stretch WHOLE = Stretch.ofKm(6, 15);

    @Test
    void isWhatTheVisitsLeave() {
        assertThat(Unwalked.of(WHOLE, List.of(Stretch.ofKm(12, 14), Stretch.ofKm(7, 9))))
                .containsExactly(Stretch.ofKm(6, 7), Stretch.ofKm(9, 12), Stretch.ofKm(14, 15));
    }

    @Test
    void isTheWholeWhereNobodyWent() {
        assertThat(Unwalked.of(WHOLE, List.of())).containsExactly(WHOLE);
    }

    @Test
    void isNothingWhereTheVisitsOverlapAndReachBeyond() {
        assertThat(Unwalked.of(WHOLE, List.of(Stretch.ofKm(5, 10), Stretch.ofKm(9, 16))))
                .isEmpty();
    }

    @Test
    void passesOverVisitsWhollyBeyond() {
        assertThat(Unwalked.of(WHOLE, List.of(Stretch.ofKm(0, 3), Stretch.ofKm(16, 18))))
                .containsExactly(WHOLE);
    }
}

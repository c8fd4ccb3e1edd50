package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class FrameTest {
    private static final Frame FARTHEST = new Frame(1000, 600, 6000, 16000);

    @Test
    void keepsThePlaceUnderThePointerWhereItIs() {
        Frame near = FARTHEST.zoomed(2, 8500, FARTHEST, 200);

        assertThat(near.to() - near.from()).isCloseTo(5000, within(1e-6));
        assertThat((8500 - near.from()) / (near.to() - near.from())).isCloseTo(0.25, within(1e-9));
    }

    @Test
    void neverGoesBeyondTheWater() {
        Frame near = FARTHEST.zoomed(4, 6000, FARTHEST, 200);

        assertThat(near.moved(-1000, FARTHEST)).isEqualTo(near);
        assertThat(near.moved(1e6, FARTHEST).to()).isCloseTo(16000, within(1e-6));
        assertThat(near.zoomed(0.01, 9000, FARTHEST, 200)).isEqualTo(FARTHEST);
    }

    @Test
    void comesNoNearerThanTwoHundredMetres() {
        Frame nearest = FARTHEST.zoomed(1e6, 9000, FARTHEST, 200);

        assertThat(nearest.to() - nearest.from()).isCloseTo(200, within(1e-6));
    }

    @Test
    void refusesPaperTooNarrowToDrawOn() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Frame(300, 600, 0, 1000));
    }
}

package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class HitIndexTest {
    /** Against asking every area, the uppermost first. */
    @Test
    void findsWhatAskingEveryAreaFinds() {
        Random random = new Random(7);
        List<HitArea> areas = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            Rect area = new Rect(
                    random.nextDouble() * 900 - 20,
                    random.nextDouble() * 600 - 20,
                    random.nextDouble() * 120,
                    random.nextDouble() * 60);
            areas.add(new HitArea(area, new Subject.OfSighting(new UUID(0, i)), () -> "one"));
        }
        HitIndex index = HitIndex.of(areas);
        int found = 0;
        for (int i = 0; i < 2000; i++) {
            double x = random.nextDouble() * 940 - 30;
            double y = random.nextDouble() * 640 - 30;
            Optional<HitArea> expected = Optional.empty();
            for (HitArea area : areas) {
                expected = area.area().contains(x, y) ? Optional.of(area) : expected;
            }
            assertThat(index.at(x, y)).isEqualTo(expected);
            found += expected.isPresent() ? 1 : 0;
        }
        assertThat(found).isGreaterThan(500);
    }
}

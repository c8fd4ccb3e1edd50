package org.ouzelbook.tracker.river;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.RiverLine;

class SelfCrossingTest {
    private static RiverLine line(double... latitudesAndLongitudes) {
        List<GeoPoint> points = new ArrayList<>();
        for (int i = 0; i < latitudesAndLongitudes.length; i += 2) {
            points.add(new GeoPoint(latitudesAndLongitudes[i], latitudesAndLongitudes[i + 1]));
        }
        return new RiverLine(new UUID(0, 1), 1, new Chainage(0), points, "invented");
    }

    @Test
    void findsNoneOnALineThatBends() {
        assertThat(SelfCrossing.of(line(52.0, -20.0, 52.1, -20.0, 52.1, -20.1, 52.2, -20.1)))
                .isEmpty();
    }

    /** A loop: the last leg crosses the first half-way, at 52.05° N. One degree of latitude is 111 km. */
    @Test
    void tellsWhereALoopCrosses() {
        RiverLine loop = line(52.0, -20.0, 52.1, -20.0, 52.1, -20.1, 52.05, -20.1, 52.05, -19.9);

        assertThat(SelfCrossing.of(loop))
                .hasValueSatisfying(place -> assertThat(place.km()).isCloseTo(5.563, within(0.01)));
    }

    @Test
    void findsNoneOnALineAcrossTheAntimeridian() {
        assertThat(SelfCrossing.of(line(-16.5, 179.9, -16.5, -179.9, -16.4, -179.9, -16.4, 179.95)))
                .isEmpty();
    }

    @Test
    void findsNoneWherePointsAreDoubled() {
        assertThat(SelfCrossing.of(line(52.0, -20.0, 52.0, -20.0, 52.1, -20.0))).isEmpty();
    }
}

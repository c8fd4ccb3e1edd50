package org.ouzelbook.tracker.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class TransverseMercatorTest {
    private static double degrees(int degrees, int minutes, double seconds) {
        return degrees + minutes / 60.0 + seconds / 3600;
    }

    /** Ordnance Survey, A Guide to Coordinate Systems in Great Britain, annex C, which prints 0.0001 seconds, 3 mm. */
    @Test
    void reproducesTheExampleOfTheBritishGrid() {
        Geodetic point = Grid.BRITISH.projection().unproject(new GridPoint(651_409.903, 313_177.270));

        assertThat(point.latitude()).isCloseTo(degrees(52, 39, 27.2531), within(0.00005 / 3600 + 1e-9));
        assertThat(point.longitude()).isCloseTo(degrees(1, 43, 4.5177), within(0.00005 / 3600 + 1e-9));
    }

    /**
     * J. P. Snyder (1987), Map Projections: A Working Manual, USGS Professional Paper 1395, page 269: Clarke 1866, 40° 30′ N
     * 73° 30′ W, central meridian 75° W; it prints 0.1 m, of which a degree holds some 110 000.
     */
    @Test
    void reproducesSnydersExample() {
        Ellipsoid clarke1866 = new Ellipsoid(6_378_206.4, 1 - Math.sqrt(1 - 0.00676866));
        TransverseMercator projection = new TransverseMercator(clarke1866, 0, -75, 0.9996, new GridPoint(0, 0));

        Geodetic point = projection.unproject(new GridPoint(127_106.5, 4_484_124.4));

        assertThat(point.latitude()).isCloseTo(40.5, within(0.05 / 110_000));
        assertThat(point.longitude()).isCloseTo(-73.5, within(0.05 / 84_000));
    }
}

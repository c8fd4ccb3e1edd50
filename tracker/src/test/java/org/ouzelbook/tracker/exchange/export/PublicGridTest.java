package org.ouzelbook.tracker.exchange.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.tracker.river.RiverNetwork;

class PublicGridTest {
    private static final UUID RIVER = new UUID(0, 1);

    /** A river going north from the equator: a degree of latitude holds 110 574 m there (WGS84). */
    private static PublicGrid grid(double lowerKm, double upperKm) {
        GeoPoint start = new GeoPoint(0, 10);
        GeoPoint end = new GeoPoint((upperKm - lowerKm) / 110.574, 10);
        return new PublicGrid(RiverNetwork.of(
                List.of(new River(RIVER, "Arrel Water", Optional.empty())),
                List.of(new RiverLine(RIVER, 1, Chainage.ofKm(lowerKm), List.of(start, end), "invented"))));
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            0,   18.6,  0,      0,   1
            0,   18.6,  0.999,  0,   1
            0,   18.6,  14.2,  14,  15
            0,   18.6,  18.59, 18,  18.6
            0,   18.3,  18.29, 17,  18.3
            0,   18.3,  17.0,  17,  18.3
            2.7, 18.3,  2.75,  2.7,  4
            2.7, 18.3,  3.5,   2.7,  4
            2.4, 18.3,  2.5,   2.4,  3
            0,   0.8,   0.3,   0,   0.8
            0,   1.3,   0.3,   0,   1.3
            0,   1.7,   1.3,   1,   1.7
            """)
    void hasNoCellSmallEnoughToGiveAPlaceAway(double from, double to, double at, double lower, double upper) {
        Stretch cell = grid(from, to).cell(RIVER, Chainage.ofKm(at));

        assertThat(Math.round(cell.lower().km() * 100) / 100.0).isEqualTo(lower);
        assertThat(Math.round(cell.upper().km() * 100) / 100.0).isEqualTo(upper);
    }

    @Test
    void dividesTheRiverIntoCellsThatMeet() {
        PublicGrid grid = grid(2.7, 18.3);
        double at = 2.7;
        while (at < 18.29) {
            Stretch cell = grid.cell(RIVER, Chainage.ofKm(at + 0.001));

            assertThat(cell.lower().km()).isEqualTo(at);
            assertThat(cell.length()).isGreaterThanOrEqualTo(499);
            at = cell.upper().km();
        }
    }

    @Test
    void tellsAStretchByEveryCellThatItTouches() {
        assertThat(grid(0, 18.6).cells(RIVER, Stretch.ofKm(14.3, 15.1))).isEqualTo(Stretch.ofKm(14, 16));
    }

    /** Sums and differences of what is told are cells again, so that no two public files tell less water together than one. */
    @Test
    void twoStretchesDifferByWholeCells() {
        Random random = new Random(7);
        for (int i = 0; i < 500; i++) {
            double from = random.nextInt(30) / 10.0;
            double to = from + 0.2 + random.nextDouble() * 12;
            PublicGrid grid = grid(from, to);
            TreeSet<Double> limits = new TreeSet<>();
            for (int j = 0; j < 6; j++) {
                double one = from + random.nextDouble() * (to - from);
                double other = from + random.nextDouble() * (to - from);
                Stretch stretch = Stretch.ofKm(Math.min(one, other), Math.max(one, other));
                Stretch told = grid.cells(RIVER, stretch);
                List<Stretch> list = grid.list(RIVER, stretch);
                assertThat(list.get(0).lower()).isEqualTo(told.lower());
                assertThat(list.get(list.size() - 1).upper()).isEqualTo(told.upper());
                assertThat(list.stream().mapToDouble(Stretch::length).sum()).isCloseTo(told.length(), within(1e-6));
                limits.add(told.lower().metres());
                limits.add(told.upper().metres());
            }
            double before = limits.first();
            for (double limit : limits.tailSet(before, false)) {
                assertThat(limit - before).isGreaterThanOrEqualTo(Math.min(499, (to - from) * 990));
                before = limit;
            }
        }
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            0,   18.6,  3.2,   8.7,   3,   9
            0,   18.6,  3.6,   8.4,   4,   8
            0,   18.6,  3.5,   8.5,   4,   9
            0,   18.6,  3,     8,     3,   8
            0,   18.6,  0,     18.6,  0,   18.6
            0,   18.3,  16.9,  17.9,  17,  18.3
            0,   18.3,  16.9,  17.2,  16,  18.3
            2.7, 18.3,  2.9,   3.3,   2.7, 4
            0,   18.6,  3.2,   3.4,   3,   4
            0,   18.6,  3.6,   3.7,   3,   4
            0,   0.8,   0.1,   0.3,   0,   0.8
            0,   0.8,   0.1,   0.7,   0,   0.8
            0,   0.3,   0.1,   0.1,   0,   0.3
            """)
    void drawsAStretchToTheNearestLimits(
            double from, double to, double lower, double upper, double toldLower, double toldUpper) {
        Stretch told = grid(from, to).nearest(RIVER, Stretch.ofKm(lower, upper));

        assertThat(told.lower().km()).isCloseTo(toldLower, within(0.005));
        assertThat(told.upper().km()).isCloseTo(toldUpper, within(0.005));
    }

    /** A limit is never farther off than half of its cell, and the more is walked, the more is drawn. */
    @Test
    void drawsLongerStretchesLonger() {
        Random random = new Random(11);
        for (int i = 0; i < 500; i++) {
            double from = random.nextInt(30) / 10.0;
            double to = from + 2 + random.nextDouble() * 12;
            PublicGrid grid = grid(from, to);
            double low = from + random.nextDouble() * (to - from - 1.5);
            double high = low + 1.5 + random.nextDouble() * (to - low - 1.5);
            Stretch told = grid.nearest(RIVER, Stretch.ofKm(low, high));
            Stretch longer = grid.nearest(
                    RIVER,
                    Stretch.ofKm(low - random.nextDouble() * (low - from), high + random.nextDouble() * (to - high)));

            assertThat(Math.abs(told.lower().metres() - low * 1000)).isLessThanOrEqualTo(halfOfCell(grid, low));
            assertThat(Math.abs(told.upper().metres() - high * 1000)).isLessThanOrEqualTo(halfOfCell(grid, high));
            assertThat(longer.lower()).isLessThanOrEqualTo(told.lower());
            assertThat(longer.upper()).isGreaterThanOrEqualTo(told.upper());
            assertThat(told.length()).isGreaterThanOrEqualTo(499);
        }
    }

    private static double halfOfCell(PublicGrid grid, double km) {
        return grid.cell(RIVER, Chainage.ofKm(km)).length() / 2 + 1e-6;
    }

    @ParameterizedTest
    @CsvSource(textBlock = """
            0, 18.6, 14.3, 15.1, 14, 16
            0, 18.6, 14.3, 15,   14, 15
            0, 18.6, 14,   15,   14, 15
            0, 18.6, 14,   14,   14, 15
            0, 18.3, 16.5, 17,   16, 17
            0, 18.3, 16.5, 18,   16, 18.3
            0, 0.8,  0.2,  0.4,  0,  0.8
            """)
    void holdsAStretchInWholeCells(
            double from, double to, double lower, double upper, double toldLower, double toldUpper) {
        Stretch told = grid(from, to).holding(RIVER, Stretch.ofKm(lower, upper));

        assertThat(told.lower().km()).isCloseTo(toldLower, within(0.005));
        assertThat(told.upper().km()).isCloseTo(toldUpper, within(0.005));
    }

    @Test
    void holdsEveryPointOfAStretch() {
        Random random = new Random(13);
        for (int i = 0; i < 500; i++) {
            double from = random.nextInt(30) / 10.0;
            double to = from + 0.3 + random.nextDouble() * 12;
            PublicGrid grid = grid(from, to);
            double one = from + random.nextDouble() * (to - from) * 0.999;
            double other = from + random.nextDouble() * (to - from) * 0.999;
            Stretch stretch = Stretch.ofKm(Math.min(one, other), Math.max(one, other));

            Stretch told = grid.holding(RIVER, stretch);

            assertThat(told.contains(stretch.lower()) && told.contains(stretch.upper()))
                    .isTrue();
            assertThat(told.length()).isGreaterThanOrEqualTo(Math.min(499, (to - from) * 990));
        }
    }
}

package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class DateRowsTest {
    private static SortedSet<LocalDate> dates(String... days) {
        return new TreeSet<>(List.of(days).stream().map(LocalDate::parse).toList());
    }

    @Test
    void liesFartherApartWhereMoreDaysLieBetween() {
        DateRows rows = DateRows.of(dates("2026-03-01", "2026-03-10", "2026-03-28"), 100, 300);
        List<Double> ys = List.copyOf(rows.byDate().values());

        assertThat(ys.get(2) - ys.get(1)).isGreaterThan(ys.get(1) - ys.get(0));
    }

    /** Two rows a day apart among rows weeks apart still need room for their dates and symbols. */
    @Test
    void neverSqueezesTwoRowsIntoOne() {
        SortedSet<LocalDate> dates = dates("2026-02-19", "2026-03-29", "2026-03-30", "2026-05-22");
        DateRows rows = DateRows.of(dates, 0, DateRows.leastHeight(dates.size()));
        List<Double> ys = List.copyOf(rows.byDate().values());

        assertThat(IntStream.range(1, ys.size()).mapToDouble(i -> ys.get(i) - ys.get(i - 1)))
                .allSatisfy(gap -> assertThat(gap).isGreaterThanOrEqualTo(21));
    }

    @Test
    void putsASingleRowInTheMiddle() {
        assertThat(DateRows.of(dates("2026-03-01"), 100, 60).y(LocalDate.of(2026, 3, 1)))
                .isBetween(129.0, 131.0);
    }
}

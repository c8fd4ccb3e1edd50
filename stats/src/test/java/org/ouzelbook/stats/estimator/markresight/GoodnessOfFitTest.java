package org.ouzelbook.stats.estimator.markresight;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.markresight.GoodnessOfFit.Component;

class GoodnessOfFitTest {
    private static GoodnessOfFit of(String sex) {
        return GoodnessOfFit.of(Dippers.OCCASIONS, Dippers.of(sex));
    }

    /** Lebreton et al. (1992), text to Table 10: males 6.78 on 5 degrees of freedom, P 0.2375. */
    @Test
    void reproducesTheDippersTestOfNewlyMarkedMales() {
        GoodnessOfFit males = of("male").only(Component.NEW_SEEN_AGAIN);

        assertThat(males.tables())
                .extracting(one -> one.table().chiSquare())
                .usingElementComparator((a, b) -> Math.abs(a - b) < 1e-8 ? 0 : Double.compare(a, b))
                .containsExactly(0.257373737, 1.66752437, 3.94556498, 0.217885375, 0.689291925);
        assertThat(males.chiSquare()).isCloseTo(6.77764039, within(1e-8));
        assertThat(males.degreesOfFreedom()).isEqualTo(5);
        assertThat(males.p().orElseThrow()).isCloseTo(0.237709646, within(1e-8));
    }

    /** The same source: both sexes 11.76 on 10, P 0.3014 (0.30129 when recomputed). */
    @Test
    void addsGroups() {
        GoodnessOfFit both =
                GoodnessOfFit.together(List.of(of("male"), of("female"))).only(Component.NEW_SEEN_AGAIN);

        assertThat(both.chiSquare()).isCloseTo(11.7621302, within(1e-7));
        assertThat(both.p().orElseThrow()).isCloseTo(0.301291689, within(1e-8));
    }

    /** Of 90 met on occasion 2 and of 30 missed on it, 60 and 12 were seen on occasion 3, the others on 4: by hand. */
    @Test
    void comparesAnimalsMissedWithAnimalsMet() {
        GoodnessOfFit tests = GoodnessOfFit.of(
                        4,
                        List.of(
                                EncounterHistory.of("0110", 60),
                                EncounterHistory.of("0101", 30),
                                EncounterHistory.of("1010", 12),
                                EncounterHistory.of("1001", 18)))
                .only(Component.MISSED_SEEN_WHEN);

        assertThat(tests.tables()).hasSize(1);
        assertThat(tests.tables().get(0).occasion()).isEqualTo(1);
        assertThat(tests.tables().get(0).table().counts()).containsExactly(List.of(12L, 18L), List.of(60L, 30L));
    }

    /** The dippers missed in 1985 and met later were three: too few to be tested for when they were. */
    @Test
    void putsColumnsOfFewAnimalsTogether() {
        assertThat(ContingencyTable.pooled(new long[] {1, 2}, new long[] {51, 0}))
                .isEmpty();
        assertThat(ContingencyTable.pooled(new long[] {20, 5, 1}, new long[] {18, 4, 2}))
                .extracting(ContingencyTable::counts)
                .containsExactly(List.of(List.of(20L, 6L), List.of(18L, 6L)));
    }

    /** R 4.2.2, {@code chisq.test(matrix(c(12, 5, 7, 9), 2), correct = FALSE)}. */
    @Test
    void testsATableForIndependence() {
        ContingencyTable table = new ContingencyTable(List.of(List.of(12L, 7L), List.of(5L, 9L)));

        assertThat(table.chiSquare()).isCloseTo(2.4305755197, within(1e-9));
        assertThat(table.degreesOfFreedom()).isEqualTo(1);
        assertThat(table.p()).isCloseTo(0.1189892055, within(1e-9));
    }

    @Test
    void hasNoTestWhereNothingCanDiffer() {
        GoodnessOfFit none = GoodnessOfFit.of(3, List.of(EncounterHistory.of("110", 4), EncounterHistory.of("100", 3)));

        assertThat(none.tables()).isEmpty();
        assertThat(none.p()).isEmpty();
        assertThat(none.cHat()).isEmpty();
    }

    @Test
    void refusesATableWithAnEmptyRow() {
        List<List<Long>> counts = List.of(List.of(1L, 2L), List.of(0L, 0L));

        assertThatThrownBy(() -> new ContingencyTable(counts)).isInstanceOf(IllegalArgumentException.class);
    }
}

package org.ouzelbook.stats.estimator.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Caution;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.estimator.TestTable;

class ExposureDaysTest {
    private static ExposureDays of(double days, long losses) {
        return ExposureDays.of(days, losses, 1, 0.95).found().orElseThrow();
    }

    static List<WatchedInterval> inventedNests() {
        TestTable table = TestTable.beside(ExposureDaysTest.class, "invented-nests.csv");
        double[] days = table.numbers("days");
        double[] survived = table.numbers("survived");
        return IntStream.range(0, days.length)
                .mapToObj(row -> new WatchedInterval(days[row], survived[row] == 1))
                .toList();
    }

    /**
     * Kirtland's warbler, H. F. Mayfield (1961), cited from memory: 35 losses in 882 days of incubation, printed 0.040 a day, 0.960,
     * and 0.56 over 14 days. Standard error and limits by the formula of D. H. Johnson (1979), R 4.2.2, the
     * limits with z rounded to 1.96.
     */
    @Test
    void reproducesMayfieldsWarblers() {
        ExposureDays found = of(882, 35);

        assertThat(found.dailySurvival().value()).isCloseTo(0.9603174603, within(1e-10));
        assertThat(found.dailySurvival().standardError().orElseThrow()).isCloseTo(0.0065731395, within(1e-10));
        Estimate success = found.success(14);
        assertThat(success.value()).isCloseTo(0.56729317, within(1e-8));
        assertThat(success.standardError().orElseThrow()).isCloseTo(0.054361773, within(1e-9));
        assertThat(success.lower()).isCloseTo(0.46955472, within(3e-6));
        assertThat(success.upper()).isCloseTo(0.68365105, within(3e-6));
    }

    /** A. T. Klett and others (1986), US Fish and Wildlife Service Resource Publication 158: 0.96³⁵ = 0.2396, 0.96³⁰ = 0.2939. */
    @Test
    void reproducesTheSuccessOfDucks() {
        ExposureDays found = of(100, 4);

        assertThat(found.success(35).value()).isCloseTo(0.2396, within(0.5e-4));
        assertThat(found.success(30).value()).isCloseTo(0.2939, within(0.5e-4));
    }

    /** R 4.2.2 on {@code invented-nests.csv}, limits with z rounded to 1.96; the 40 % of H. W. Miller & D. H. Johnson (1978) gives other days. */
    @Test
    void countsALostNestForHalfItsLastInterval() {
        ExposureDays half = ExposureDays.of(inventedNests(), ExposureDays.HALF, 0.95)
                .found()
                .orElseThrow();

        assertThat(half.days()).isCloseTo(622.5, within(1e-9));
        assertThat(half.losses()).isEqualTo(23);
        assertThat(half.intervals()).isEqualTo(157);
        assertThat(half.dailySurvival().value()).isCloseTo(0.9630522088, within(1e-10));
        assertThat(half.dailySurvival().standardError().orElseThrow()).isCloseTo(0.0075604819, within(1e-10));
        assertThat(half.success(38).value()).isCloseTo(0.239162786, within(1e-9));
        assertThat(half.success(38).lower()).isCloseTo(0.13267346, within(3e-6));
        assertThat(half.success(38).upper()).isCloseTo(0.42726309, within(5e-6));
        ExposureDays less = ExposureDays.of(inventedNests(), 0.4, 0.95).found().orElseThrow();
        assertThat(less.days()).isCloseTo(611.2, within(1e-9));
        assertThat(less.dailySurvival().value()).isCloseTo(0.9623691099, within(1e-10));
    }

    /** 240 nest days at 0.9875 last 38 days with 0.62, where 9 of 12 nests were seen to succeed: our own arithmetic. */
    @Test
    void liesBelowTheShareOfNestsSeenToSucceed() {
        assertThat(of(240, 3).success(38).value())
                .isCloseTo(0.62, within(0.005))
                .isLessThan(9.0 / 12);
    }

    @Test
    void isOneSidedWithoutALoss() {
        Estimate survival = of(120, 0).dailySurvival();

        assertThat(survival.value()).isEqualTo(1);
        assertThat(survival.standardError()).isEmpty();
        assertThat(Math.pow(survival.lower(), 120)).isCloseTo(Math.exp(-3.841458821 / 2), within(1e-9));
        assertThat(survival.upper()).isEqualTo(1);
        assertThat(survival.warnings()).extracting(Caution::reason).containsExactly(Reason.AT_BOUNDARY);
        assertThat(of(120, 0).success(38).lower()).isCloseTo(Math.pow(survival.lower(), 38), within(1e-12));
    }

    @Test
    void isOneSidedWhereEachDayHadALoss() {
        Estimate survival = of(3, 3).dailySurvival();

        assertThat(survival.value()).isZero();
        assertThat(survival.lower()).isZero();
        assertThat(survival.upper()).isCloseTo(1 - Math.exp(-3.841458821 / 6), within(1e-9));
    }

    @Test
    void refusesWhatCarriesNoSurvival() {
        assertThat(refusal(List.of())).isEqualTo(Reason.NO_NEST_DAYS);
        assertThat(refusal(List.of(new WatchedInterval(1, false)))).isEqualTo(Reason.MORE_LOSSES_THAN_DAYS);
        assertThatThrownBy(() -> new WatchedInterval(0, true)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new WatchedInterval(Double.NaN, true)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ExposureDays.of(List.of(), 1, 0.95)).isInstanceOf(IllegalArgumentException.class);
    }

    private static Reason refusal(List<WatchedInterval> intervals) {
        Answer<ExposureDays> answer = ExposureDays.of(intervals, ExposureDays.HALF, 0.95);
        return ((Answer.NotEstimable<ExposureDays>) answer).because().reason();
    }

    /** 400 studies of 60 nests looked at every four days: a 95 % interval misses in more than 33 with a probability below 0.01. */
    @Test
    @Tag("slow")
    void coversTheTruthItWasSimulatedFrom() {
        RandomGenerator random = new Well19937c(7);
        int missed = 0;
        double sum = 0;
        int studies = 400;
        for (int study = 0; study < studies; study++) {
            Estimate survival = ExposureDays.of(simulated(random, 60, 0.97, 4), ExposureDays.HALF, 0.95)
                    .found()
                    .orElseThrow()
                    .dailySurvival();
            missed += survival.lower() <= 0.97 && 0.97 <= survival.upper() ? 0 : 1;
            sum += survival.value();
        }
        assertThat(missed).isBetween(6, 33);
        assertThat(sum / studies).isCloseTo(0.97, within(0.001));
    }

    static List<WatchedInterval> simulated(RandomGenerator random, int nests, double survival, int every) {
        List<WatchedInterval> intervals = new ArrayList<>();
        for (int nest = 0; nest < nests; nest++) {
            boolean alive = true;
            for (int left = 10 + random.nextInt(28); alive && left > 0; left -= every) {
                int days = Math.min(every, left);
                alive = random.nextDouble() < Math.pow(survival, days);
                intervals.add(new WatchedInterval(days, alive));
            }
        }
        return intervals;
    }
}

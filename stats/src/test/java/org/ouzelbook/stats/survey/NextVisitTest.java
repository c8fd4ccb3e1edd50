package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.segmentation.Grain;
import org.ouzelbook.stats.estimator.segmentation.Nature;
import org.ouzelbook.stats.estimator.segmentation.Registration;
import org.ouzelbook.stats.estimator.segmentation.SurveyedLine;
import org.ouzelbook.stats.estimator.segmentation.VisitedWater;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Stretch;

class NextVisitTest {
    private static final Nature NATURE = new Nature(900, 0.4, 0.5, 800, 0.75, 8, 0.6, 0.4, 180, 0.05, 0.3);
    private static final Grain GRAIN = new Grain(100, 200, 2500);

    /** Six km: the lower half walked so often, with a pair at km 1 and one at km 2 each met every time; the upper half never. */
    private static NextVisit after(int visits) {
        List<VisitedWater> walked =
                Collections.nCopies(visits, new VisitedWater(List.of(new VisitedWater.Piece(0, 3000))));
        List<Registration> met = new ArrayList<>();
        for (int visit = 0; visit < visits; visit++) {
            met.add(new Registration(1000, visit));
            met.add(new Registration(2000, visit));
        }
        SurveyedLine line = new SurveyedLine(0, 6000, walked, met, List.of(), 0);
        return NextVisit.of(line, GRAIN, NATURE, metres -> true).orElseThrow();
    }

    private static Stretch km(double from, double to) {
        return new Stretch(new Chainage(1000 * from), new Chainage(1000 * to));
    }

    /**
     * What will be believed after a visit is on the average what is believed now: an identity of conditional probability, which holds only
     * if visits are made up as the model says. Of 60 visits the mean of a probability has a standard error of at most 0.065.
     */
    @Test
    void leavesTheLawAsItIsOnTheAverage() {
        NextVisit next = after(2);
        double[] now = next.law();
        for (Stretch walked : List.of(km(0, 3), km(3, 6), km(0, 6))) {
            List<double[]> laws = next.laws(walked);
            assertThat(laws).hasSize(60);
            for (int k = 0; k < now.length; k++) {
                int number = k;
                double mean =
                        laws.stream().mapToDouble(law -> law[number]).average().orElseThrow();
                double error = Math.sqrt(laws.stream()
                                .mapToDouble(law -> (law[number] - mean) * (law[number] - mean))
                                .sum()
                        / 60
                        / 59);
                assertThat(mean).as("%d territories after %s", k, walked).isCloseTo(now[k], within(4 * error + 1e-3));
            }
        }
    }

    @Test
    void tellsMostOfWaterThatNobodyWalked() {
        NextVisit next = after(6);
        NextVisit.Told known = next.of(km(0, 3));
        NextVisit.Told unknown = next.of(km(3, 6));

        assertThat(unknown.fall()).isGreaterThan(3 * known.fall());
        assertThat(unknown.bits()).isGreaterThan(3 * known.bits());
        assertThat(unknown.fall()).isBetween(0.0, unknown.variance());
    }

    @Test
    void tellsLessTheMoreIsKnown() {
        assertThat(after(6).of(km(0, 3)).variance())
                .isLessThan(after(0).of(km(0, 3)).variance());
        assertThat(after(6).of(km(0, 3)).fall())
                .isLessThan(after(0).of(km(0, 3)).fall());
    }

    @Test
    void tellsNothingOfOtherWater() {
        NextVisit.Told told = after(2).of(km(8, 9));

        assertThat(told.fall()).isZero();
        assertThat(told.bits()).isZero();
    }
}

package org.ouzelbook.stats.estimator.segmentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The weight of one stretch against its definition, integrated over the chance of finding the pair by general-purpose quadrature
 * and added up over focal places one by one (Apache Commons Math for the integral and both laws).
 */
class StretchWeightsTest {
    private static final Nature NATURE = new Nature(600, 0.4, 0.45, 500, 0.7, 9, 0.6, 0.4, 120, 0.05);
    private static final double CELL = 100;

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5})
    void isTheIntegralOfItsDefinition(int seed) {
        Random random = new Random(seed);
        List<VisitedWater> visits = new ArrayList<>();
        for (int v = 0; v < 12; v++) {
            visits.add(new VisitedWater(List.of(
                    v % 3 == 0
                            ? new VisitedWater.Piece(100 * random.nextInt(12), 2000)
                            : new VisitedWater.Piece(0, 2000))));
        }
        List<Registration> registrations = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            int visit = random.nextInt(12);
            double covered = Math.max(600, visits.get(visit).pieces().get(0).lower());
            registrations.add(new Registration(covered + random.nextDouble() * (1300 - covered), visit));
        }
        Cells cells =
                new Cells(new SurveyedLine(0, 2000, visits, registrations, List.of()), new Grain(CELL, 150, 1500));

        double log = new StretchWeights(cells, NATURE).log(6, 13);

        assertThat(log).isCloseTo(Math.log(byQuadrature(visits, registrations, 600, 1300)), within(1e-7));
    }

    private static double byQuadrature(
            List<VisitedWater> visits, List<Registration> registrations, double lower, double upper) {
        BetaDistribution finding = new BetaDistribution(
                NATURE.detection() * NATURE.concentration(), (1 - NATURE.detection()) * NATURE.concentration());
        double sum = 0;
        int foci = 0;
        for (double focus = lower + CELL / 2; focus < upper; focus += CELL, foci++) {
            double at = focus;
            sum += new IterativeLegendreGaussIntegrator(40, 1e-10, 1e-14)
                    .integrate(
                            100_000,
                            p -> finding.density(p) * given(p, at, visits, registrations, lower, upper),
                            1e-12,
                            1 - 1e-12);
        }
        return sum / foci;
    }

    private static double given(
            double p,
            double focus,
            List<VisitedWater> visits,
            List<Registration> registrations,
            double lower,
            double upper) {
        NormalDistribution about = new NormalDistribution(focus, NATURE.focalSpread());
        double inside = about.cumulativeProbability(upper) - about.cumulativeProbability(lower);
        double ratio = 1;
        for (int v = 0; v < visits.size(); v++) {
            VisitedWater.Piece piece = visits.get(v).pieces().get(0);
            double from = Math.max(lower, piece.lower());
            double share = NATURE.evenUse() * (upper - from) / (upper - lower)
                    + (1 - NATURE.evenUse())
                            * (about.cumulativeProbability(upper) - about.cumulativeProbability(from))
                            / inside;
            double product = 1;
            for (Registration one : registrations) {
                if (one.visit() == v && one.position() >= from && one.position() < upper) {
                    double density = NATURE.evenUse() / (upper - lower)
                            + (1 - NATURE.evenUse()) * about.density(one.position()) / inside;
                    product *= 1 + NATURE.repeats() * density / (NATURE.strays() / 1000 * share);
                }
            }
            ratio *= 1 - p * share + p * share / Math.expm1(NATURE.repeats()) * (product - 1);
        }
        return ratio;
    }
}

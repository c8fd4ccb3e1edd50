package org.ouzelbook.stats.estimator.segmentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.analysis.integration.IterativeLegendreGaussIntegrator;
import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The weight of one stretch against its definition, integrated over the chance of finding the pair by general-purpose quadrature
 * and added up over focal places one by one (Apache Commons Math for the integral and both laws).
 */
class StretchWeightsTest {
    private static final Nature NATURE = new Nature(600, 0.4, 0.45, 500, 0.7, 9, 0.6, 0.4, 120, 0.05, 0.3);

    /** So few strays that the products are too large to be added up as they are. */
    private static final Nature FEW_STRAYS = new Nature(600, 0.4, 0.45, 500, 0.7, 9, 0.6, 0.4, 120, 1e-8, 0.3);

    private static final double CELL = 100;
    private static final double IN_SIGHT = 250;

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
        SurveyedLine line = new SurveyedLine(0, 2000, visits, registrations, List.of(), 0);

        double log = new StretchWeights(new Cells(line, new Grain(CELL, 150, 1500)), NATURE).log(6, 13);

        assertThat(log).isCloseTo(Math.log(byQuadrature(NATURE, line, 600, 1300)), within(1e-7));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6})
    void leavesOutSetsOfBirdsSeenAtOnce(int seed) {
        Random random = new Random(seed);
        List<VisitedWater> visits = List.of(
                new VisitedWater(List.of(new VisitedWater.Piece(0, 2000))),
                new VisitedWater(List.of(new VisitedWater.Piece(800, 2000))));
        List<Registration> registrations = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            registrations.add(new Registration(850 + random.nextInt(450), i % 2));
        }
        List<Constraint> notes = new ArrayList<>();
        for (int visit = 0; visit < 2; visit++) {
            List<Registration> of = onVisit(registrations, visit);
            notes.add(new Constraint.Simultaneous(of.get(0), of.get(1)));
            for (int i = 2; i < 5; i++) {
                notes.add(new Constraint.Simultaneous(of.get(i), of.get(2 + (i - 1) % 3)));
            }
        }
        SurveyedLine line = new SurveyedLine(0, 2000, visits, registrations, notes, IN_SIGHT);
        StretchWeights weights = new StretchWeights(new Cells(line, new Grain(CELL, 150, 1500)), NATURE);

        assertThat(weights.log(6, 13)).isCloseTo(Math.log(byQuadrature(NATURE, line, 600, 1300)), within(1e-7));
    }

    /** Identity: natures that are looked at together do not touch each other, where sums are plain and where they are not. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4})
    void givesSeveralNaturesTheAnswersThatEachHasByItself(int seed) {
        Random random = new Random(seed);
        List<VisitedWater> visits = new ArrayList<>();
        for (int v = 0; v < 7; v++) {
            visits.add(
                    new VisitedWater(List.of(new VisitedWater.Piece(v % 2 == 0 ? 0 : 150 * random.nextInt(6), 2000))));
        }
        List<Registration> registrations = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            registrations.add(new Registration(850 + random.nextInt(700), random.nextInt(8) - 1));
        }
        registrations.sort(Comparator.comparingDouble(Registration::position));
        List<Constraint> notes = List.of(new Constraint.Simultaneous(registrations.get(2), registrations.get(5)));
        SurveyedLine line = new SurveyedLine(0, 2000, visits, registrations, notes, IN_SIGHT);
        Cells cells = new Cells(line, new Grain(50, 150, 1500));
        Nature far = new Nature(900, 0.3, 0.3, 900, 0.5, 4, 1.5, 0.7, 300, 0.5, 0.6);
        List<Nature> natures = List.of(NATURE, FEW_STRAYS, far, NATURE);
        StretchWeights together = new StretchWeights(cells, natures);

        for (int from = 0; from < cells.count; from++) {
            for (int to = from + cells.shortest; to <= Math.min(cells.count, from + cells.longest); to++) {
                together.look(from, to);
                for (int n = 0; n < natures.size(); n++) {
                    assertThat(together.log(n)).isEqualTo(new StretchWeights(cells, natures.get(n)).log(from, to));
                }
            }
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void addsUpVeryLargeProducts(int seed) {
        Random random = new Random(seed);
        VisitedWater all = new VisitedWater(List.of(new VisitedWater.Piece(0, 2000)));
        List<VisitedWater> visits = List.of(all, new VisitedWater(List.of(new VisitedWater.Piece(800, 2000))), all);
        List<Registration> registrations = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            registrations.add(new Registration(850 + random.nextInt(450), i % 2));
        }
        SurveyedLine line = new SurveyedLine(0, 2000, visits, registrations, List.of(), 0);

        double log = new StretchWeights(new Cells(line, new Grain(CELL, 150, 1500)), FEW_STRAYS).log(6, 13);

        assertThat(log).isGreaterThan(Math.log(1e60));
        assertThat(log).isCloseTo(Math.log(byQuadrature(FEW_STRAYS, line, 600, 1300)), within(1e-7));
    }

    @Test
    void saysTheSameInLogarithmsWhereSumsAreTooLargeForNumbers() {
        List<VisitedWater> visits = List.of(new VisitedWater(List.of(new VisitedWater.Piece(0, 2000))));
        List<Registration> registrations = new ArrayList<>();
        List<Constraint> notes = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            registrations.add(new Registration(1000, 0));
            if (i % 2 == 1) {
                notes.add(new Constraint.Simultaneous(registrations.get(i), registrations.get(i - 1)));
            }
        }
        Grain grain = new Grain(CELL, 150, 1500);
        double all = new StretchWeights(
                        new Cells(new SurveyedLine(0, 2000, visits, registrations, notes, 0), grain), NATURE)
                .log(6, 14);
        double half = new StretchWeights(
                        new Cells(
                                new SurveyedLine(
                                        0, 2000, visits, registrations.subList(0, 100), notes.subList(0, 50), 0),
                                grain),
                        NATURE)
                .log(6, 14);

        assertThat(all).isFinite().isGreaterThan(half);
        assertThat(all - half).isCloseTo(half, within(0.02 * half));
    }

    private static List<Registration> onVisit(List<Registration> registrations, int visit) {
        return registrations.stream()
                .filter(one -> one.visit() == visit)
                .sorted(Comparator.comparingDouble(Registration::position))
                .toList();
    }

    private static double byQuadrature(Nature nature, SurveyedLine line, double lower, double upper) {
        BetaDistribution finding = new BetaDistribution(
                nature.detection() * nature.concentration(), (1 - nature.detection()) * nature.concentration());
        double sum = 0;
        int foci = 0;
        for (double focus = lower + CELL / 2; focus < upper; focus += CELL, foci++) {
            double at = focus;
            sum += new IterativeLegendreGaussIntegrator(40, 1e-10, 1e-14)
                    .integrate(
                            100_000,
                            p -> finding.density(p) * given(nature, p, at, line, lower, upper),
                            1e-12,
                            1 - 1e-12);
        }
        return sum / foci;
    }

    private static double given(Nature nature, double p, double focus, SurveyedLine line, double lower, double upper) {
        NormalDistribution about = new NormalDistribution(focus, nature.focalSpread());
        double inside = about.cumulativeProbability(upper) - about.cumulativeProbability(lower);
        double ratio = 1;
        for (int v = 0; v < line.visits().size(); v++) {
            VisitedWater.Piece piece = line.visits().get(v).pieces().get(0);
            double from = Math.max(lower, piece.lower());
            double share = nature.evenUse() * (upper - from) / (upper - lower)
                    + (1 - nature.evenUse())
                            * (about.cumulativeProbability(upper) - about.cumulativeProbability(from))
                            / inside;
            List<Registration> met = onVisit(line.registrations(), v).stream()
                    .filter(one -> one.position() >= from && one.position() < upper)
                    .toList();
            double product = 0;
            for (int set = 0; set < 1 << met.size(); set++) {
                double weight = noted(nature, met, set, line);
                for (int i = 0; i < met.size(); i++) {
                    if ((set >> i & 1) == 1) {
                        double density = nature.evenUse() / (upper - lower)
                                + (1 - nature.evenUse())
                                        * about.density(met.get(i).position())
                                        / inside;
                        weight *= nature.repeats() * density / (nature.strays() / 1000 * share);
                    }
                }
                product += weight;
            }
            ratio *= 1 - p * share + p * share / Math.expm1(nature.repeats()) * (product - 1);
        }
        return ratio;
    }

    /** Whether a set of registrations of one visit can be of one pair, and how much more probable the notes then are. */
    private static double noted(Nature nature, List<Registration> met, int set, SurveyedLine line) {
        double weight = 1;
        for (int i = 0; i < met.size(); i++) {
            for (int j = 0; j < i; j++) {
                if ((set >> i & 1) == 1 && (set >> j & 1) == 1) {
                    boolean atOnce = line.constraints().contains(new Constraint.Simultaneous(met.get(i), met.get(j)))
                            || line.constraints().contains(new Constraint.Simultaneous(met.get(j), met.get(i)));
                    boolean near =
                            j == i - 1 && met.get(i).position() - met.get(j).position() <= line.inSight();
                    weight *= atOnce ? 0 : near ? 1 / (1 - nature.noting()) : 1;
                }
            }
        }
        return weight;
    }
}

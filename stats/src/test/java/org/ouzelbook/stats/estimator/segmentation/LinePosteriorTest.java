package org.ouzelbook.stats.estimator.segmentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.MersenneTwister;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The recursions against every map of small lines: each way of cutting 14 cells is written down with its weight, and all that the
 * recursions tell is added up from that list. Only the weight of a single stretch is shared.
 */
class LinePosteriorTest {
    private static final Grain GRAIN = new Grain(50, 100, 350);
    private static final Nature NATURE = new Nature(220, 0.4, 0.45, 150, 0.7, 9, 0.6, 0.4, 60, 0.3, 0.3);
    private static final int CELLS = 14;

    private record Cut(List<int[]> territories, double weight) {}

    private static SurveyedLine line(int seed) {
        Random random = new Random(seed);
        List<VisitedWater> visits =
                List.of(walked(0, 700), walked(random.nextInt(300), 700), walked(0, 400 + random.nextInt(300)));
        List<Registration> registrations = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            registrations.add(new Registration(random.nextInt(700), i < 2 ? 0 : random.nextInt(4) - 1));
        }
        List<Constraint> known = List.of(
                new Constraint.Apart(120, 260, 0.01),
                new Constraint.Bond(300, 420, 0.1),
                new Constraint.Turn(480, 610, 60, 5, 0.05),
                new Constraint.Held(330),
                new Constraint.Simultaneous(registrations.get(0), registrations.get(1)),
                seed % 2 == 0 ? new Constraint.Limit(250) : new Constraint.Vacant(640, 700));
        return new SurveyedLine(0, 700, visits, registrations, known, 120);
    }

    private static VisitedWater walked(double lower, double upper) {
        return new VisitedWater(List.of(new VisitedWater.Piece(lower, upper)));
    }

    private static List<Cut> everyCut(Cells cells) {
        List<Cut> cuts = new ArrayList<>();
        grow(
                cells,
                new StretchWeights(cells, NATURE),
                LengthLaw.of(NATURE, cells),
                0,
                false,
                new ArrayList<>(),
                1,
                cuts);
        return cuts;
    }

    private static void grow(
            Cells cells,
            StretchWeights weights,
            double[] lengths,
            int at,
            boolean afterVacant,
            List<int[]> below,
            double weight,
            List<Cut> cuts) {
        if (at == cells.count) {
            cuts.add(new Cut(List.copyOf(below), weight));
            return;
        }
        double end = cells.width / (NATURE.vacantLength() + cells.width);
        double limit = at == 0 ? 1 : Math.exp(cells.limit[at]);
        double begin = limit * (afterVacant ? end : NATURE.abutting());
        for (int n = cells.shortest; n <= Math.min(cells.longest, cells.count - at); n++) {
            int to = at + n;
            double one = Math.exp(weights.log(at, to) + lengths[n]) * known(cells, at, to);
            if (one > 0) {
                below.add(new int[] {at, to});
                grow(cells, weights, lengths, to, false, below, weight * begin * one, cuts);
                below.remove(below.size() - 1);
            }
        }
        if (cells.canBeVacant[at]) {
            double stay = afterVacant ? 1 - end : limit * (1 - NATURE.abutting());
            grow(cells, weights, lengths, at + 1, true, below, weight * stay, cuts);
        }
    }

    private static double known(Cells cells, int from, int to) {
        double factor = 1;
        for (int c = from; c < to; c++) {
            for (Cells.ApartCells pair : cells.apart.get(c)) {
                factor *= pair.lower() >= from ? Math.exp(pair.logFactor()) : 1;
            }
            for (Cells.TurnCells turn : cells.turns.get(c)) {
                factor *= Math.exp(turn.log(from, to));
            }
        }
        return factor;
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6})
    void tellsWhatAllMapsTogetherTell(int seed) {
        SurveyedLine line = line(seed);
        Cells cells = new Cells(line, GRAIN);
        List<Cut> cuts = everyCut(cells);
        double total = cuts.stream().mapToDouble(Cut::weight).sum();
        assertThat(cells.count).isEqualTo(CELLS);
        assertThat(TreeRecursion.of(new Tree(SurveyedTree.of(line), GRAIN), NATURE)
                        .logTotal())
                .isCloseTo(Math.log(total), within(1e-9));

        LinePosterior posterior = LinePosterior.of(line, GRAIN, List.of(new NaturePosterior.Draw(NATURE, 1)))
                .orElseThrow();
        double[] held = new double[CELLS];
        double[] unseen = new double[CELLS];
        double[] law = new double[CELLS / 2 + 1];
        double[] lowerHalf = new double[CELLS / 2 + 1];
        double together = 0;
        for (Cut cut : cuts) {
            double probability = cut.weight / total;
            law[cut.territories.size()] += probability;
            lowerHalf[
                    (int) cut.territories.stream()
                            .filter(one -> (one[0] + one[1]) * 25 < 350)
                            .count()] += probability;
            for (int[] one : cut.territories) {
                boolean met = cells.below[one[1]] > cells.below[one[0]];
                for (int c = one[0]; c < one[1]; c++) {
                    held[c] += probability;
                    unseen[c] += met ? 0 : probability;
                }
                together += one[0] <= 4 && one[1] > 7 ? probability : 0;
            }
        }
        assertThat(posterior.held()).containsExactly(held, within(1e-9));
        assertThat(posterior.unseen()).containsExactly(unseen, within(1e-9));
        assertThat(posterior.countLaw(middle -> true)).containsExactly(law, within(1e-9));
        assertThat(posterior.countLaw(middle -> middle < 350)).containsExactly(lowerHalf, within(1e-9));
        assertThat(posterior.together(210, 390)).isCloseTo(together, within(1e-9));
        assertThat(posterior.ground(210, 0.05).probability()).isCloseTo(held[4], within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4})
    void findsTheMostProbableMapAndDrawsEachAsOftenAsItIsProbable(int seed) {
        SurveyedLine line = line(seed);
        Cells cells = new Cells(line, GRAIN);
        List<Cut> cuts = everyCut(cells);
        LinePosterior posterior = LinePosterior.of(line, GRAIN, List.of(new NaturePosterior.Draw(NATURE, 1)))
                .orElseThrow();
        Cut best = cuts.stream()
                .max((one, other) -> Double.compare(one.weight, other.weight))
                .orElseThrow();
        assertThat(posterior.mostProbable())
                .isEqualTo(best.territories.stream()
                        .map(one -> new LinePosterior.Span(
                                cells.place(one[0]),
                                cells.place(one[1]),
                                (cells.place(one[0]) + cells.place(one[1])) / 2,
                                Optional.empty()))
                        .toList());

        MersenneTwister random = new MersenneTwister(seed);
        int draws = 4000;
        double mean = IntStream.range(0, draws)
                .mapToDouble(i -> posterior.draw(random).size())
                .average()
                .orElseThrow();
        double[] law = posterior.countLaw(middle -> true);
        double expected = 0;
        double square = 0;
        for (int k = 0; k < law.length; k++) {
            expected += k * law[k];
            square += k * k * law[k];
        }
        double error = Math.sqrt((square - expected * expected) / draws);
        assertThat(mean).isCloseTo(expected, within(4 * error + 1e-9));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 300})
    void staysFiniteWithNoBirdAndWithHundredsOnOneStone(int birds) {
        List<Registration> registrations = IntStream.range(0, birds)
                .mapToObj(i -> new Registration(5000, i % 3))
                .toList();
        SurveyedLine line = new SurveyedLine(
                0,
                200_000,
                List.of(walked(0, 200_000), walked(0, 200_000), walked(0, 200_000)),
                registrations,
                birds > 1
                        ? List.of(new Constraint.Simultaneous(registrations.get(0), registrations.get(3)))
                        : List.of(),
                500);
        double[] law = LinePosterior.of(line, new Grain(200, 200, 3000), List.of(new NaturePosterior.Draw(NATURE, 1)))
                .orElseThrow()
                .countLaw(middle -> true);
        double sum = 0;
        for (double probability : law) {
            assertThat(probability).isBetween(0.0, 1 + 1e-9);
            sum += probability;
        }
        assertThat(sum).isCloseTo(1, within(1e-6));
    }
}

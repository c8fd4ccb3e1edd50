package org.ouzelbook.stats.estimator.segmentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.apache.commons.math3.random.MersenneTwister;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.stats.estimator.segmentation.SurveyedTree.Birds;
import org.ouzelbook.stats.estimator.segmentation.SurveyedTree.Branch;
import org.ouzelbook.stats.estimator.segmentation.SurveyedTree.Link;
import org.ouzelbook.stats.estimator.segmentation.SurveyedTree.Mouth;
import org.ouzelbook.stats.estimator.segmentation.SurveyedTree.Places;

/** The recursions over waters that meet, against every map of small ones ({@link EveryTreeMap}). */
class TreePosteriorTest {
    private static final Grain GRAIN = new Grain(50, 100, 250);
    private static final Grain COARSE = new Grain(100, 200, 500);
    private static final Nature NATURE = new Nature(180, 0.4, 0.45, 150, 0.7, 9, 0.6, 0.4, 60, 0.3, 0.3);
    private static final List<NaturePosterior.Draw> NATURES = List.of(new NaturePosterior.Draw(NATURE, 1));

    private static VisitedWater walked(double lower, double upper) {
        return new VisitedWater(List.of(new VisitedWater.Piece(lower, upper)));
    }

    private static Branch branch(
            double metres, Random random, List<Long> days, List<Constraint> known, Optional<Mouth> mouth) {
        List<VisitedWater> visits = new ArrayList<>();
        days.forEach(day -> visits.add(walked(0, metres * (0.5 + random.nextDouble() / 2))));
        List<Registration> registrations = new ArrayList<>();
        for (int i = 0; i < metres / 100; i++) {
            registrations.add(new Registration(random.nextInt((int) metres), random.nextInt(days.size() + 1) - 1));
        }
        return new Branch(new SurveyedLine(0, metres, visits, registrations, known, 120), days, mouth);
    }

    /** A line of 9 cells and a tributary of 6, with whatever can be known of them. */
    private static SurveyedTree two(int seed, double at) {
        Random random = new Random(seed);
        List<Constraint> onMain = List.of(
                new Constraint.Apart(60, 240, 0.1),
                new Constraint.Bond(160, 330, 0.2),
                new Constraint.Turn(220, 120, 40, 5, 0.3),
                new Constraint.Turn(130, 260, 40, 5, 0.3),
                new Constraint.Turn(370, 280, 60, 5, 0.3),
                new Constraint.Held(330),
                seed % 3 == 0 ? new Constraint.Limit(at + (seed % 2 == 0 ? 5 : -5)) : new Constraint.Vacant(410, 450));
        List<Constraint> onTributary = List.of(
                new Constraint.Turn(80, 30, 40, 5, 0.3),
                new Constraint.Turn(40, 130, 40, 5, 0.3),
                new Constraint.Apart(20, 120, 0.2),
                new Constraint.Held(170));
        List<Link> links = new ArrayList<>(List.of(
                new Places(1, 30, 0, at - 40, true, 0.3),
                new Places(1, 90, 0, at + 60, true, 0.2),
                new Places(1, 70, 0, at + 70, false, 0.4),
                new Places(1, 120, 0, at - 70, false, 0.3)));
        Branch main = branch(450, random, List.of(1L, 2L, 3L), onMain, Optional.empty());
        Branch side = branch(300, random, List.of(2L, 5L), onTributary, Optional.of(new Mouth(0, at)));
        seenAtOnce(side, 0, main, 1).ifPresent(links::add);
        return new SurveyedTree(List.of(main, side), links);
    }

    /** Two birds of one day on two lines, seen at one time, if both lines have one. */
    private static Optional<Link> seenAtOnce(Branch side, int visit, Branch main, int visitOfMain) {
        Optional<Registration> one = side.line().registrations().stream()
                .filter(bird -> bird.visit() == visit)
                .findFirst();
        return main.line().registrations().stream()
                .filter(bird -> bird.visit() == visitOfMain && one.isPresent())
                .findFirst()
                .map(other -> new Birds(1, one.orElseThrow(), 0, other));
    }

    /** A line, a tributary, and a tributary of that; if asked, one more on the line beside or at the same place. */
    private static SurveyedTree deep(int seed, double at, double inner, double second) {
        Random random = new Random(seed);
        List<Branch> branches = new ArrayList<>(List.of(
                branch(300, random, List.of(1L, 2L), List.of(new Constraint.Bond(80, 230, 0.3)), Optional.empty()),
                branch(200, random, List.of(2L), List.of(), Optional.of(new Mouth(0, at))),
                branch(100, random, List.of(3L), List.of(), Optional.of(new Mouth(1, inner)))));
        List<Link> links =
                new ArrayList<>(List.of(new Places(2, 60, 1, 160, false, 0.5), new Places(1, 60, 0, 80, true, 0.5)));
        if (second >= 0) {
            branches.add(branch(100, random, List.of(1L), List.of(), Optional.of(new Mouth(0, second))));
            links.add(new Places(3, 40, 0, 40, false, 0.5));
        }
        return new SurveyedTree(branches, links);
    }

    @ParameterizedTest
    @CsvSource({"1, 200", "2, 200", "3, 200", "4, 200", "5, 105", "6, 190", "7, 0", "8, 450", "9, 400"})
    void tellsOfALineAndATributaryWhatAllMapsTogetherTell(int seed, double at) {
        check(two(seed, at));
    }

    @ParameterizedTest
    @CsvSource({
        "1, 150, 100, -1",
        "2, 150, 50, -1",
        "3, 150, 0, -1",
        "4, 300, 200, -1",
        "5, 150, 100, 200",
        "6, 100, 150, 100",
        "7, 300, 100, 300",
        "8, 0, 100, 250"
    })
    void tellsOfTributariesOfTributariesWhatAllMapsTogetherTell(int seed, double at, double inner, double second) {
        check(deep(seed, at, inner, second));
    }

    private static void check(SurveyedTree waters) {
        Tree tree = new Tree(waters, GRAIN);
        EveryTreeMap every = new EveryTreeMap(tree, NATURE);
        double total = every.total();
        TreeRecursion recursion = TreeRecursion.of(tree, NATURE);
        assertThat(recursion.logTotal()).isCloseTo(Math.log(total), within(1e-9));
        TreePosterior posterior = TreePosterior.of(waters, GRAIN, NATURES).orElseThrow();
        for (int line = 0; line < tree.lines.size(); line++) {
            checkCells(every, tree, posterior, line);
            checkNumbers(every, posterior, line);
        }
        checkTogether(every, tree, posterior);
    }

    private static void checkCells(EveryTreeMap every, Tree tree, TreePosterior posterior, int line) {
        int count = tree.lines.get(line).count;
        double[] held = new double[count];
        double[] unseen = new double[count];
        for (EveryTreeMap.OneMap map : every.maps()) {
            for (EveryTreeMap.Piece piece : map.territories()) {
                for (int c = 0; c < count; c++) {
                    if (piece.cells().contains(every.cell(line, c))) {
                        held[c] += map.weight() / every.total();
                        unseen[c] += piece.met() ? 0 : map.weight() / every.total();
                    }
                }
            }
        }
        assertThat(posterior.line(line).held()).containsExactly(held, within(1e-9));
        assertThat(posterior.line(line).unseen()).containsExactly(unseen, within(1e-9));
        for (int c = 0; c < count; c++) {
            double middle = tree.lines.get(line).place(c) + 1;
            assertThat(posterior.line(line).ground(middle, 0.05).probability()).isCloseTo(held[c], within(1e-9));
        }
    }

    private static void checkNumbers(EveryTreeMap every, TreePosterior posterior, int line) {
        double[] all = posterior.line(line).countLaw(middle -> true);
        double[] lower = posterior.line(line).countLaw(middle -> middle < 140);
        double[] expected = new double[all.length];
        double[] expectedLower = new double[all.length];
        double unseen = 0;
        for (EveryTreeMap.OneMap map : every.maps()) {
            int number = 0;
            int numberLower = 0;
            for (EveryTreeMap.Piece piece : map.territories()) {
                int counts = piece.found().line() == line ? 1 : 0;
                number += counts;
                numberLower += piece.found().middle() < 140 ? counts : 0;
                unseen += piece.met() ? 0 : counts * map.weight() / every.total();
            }
            expected[number] += map.weight() / every.total();
            expectedLower[numberLower] += map.weight() / every.total();
        }
        assertThat(all).containsExactly(expected, within(1e-9));
        assertThat(lower).containsExactly(expectedLower, within(1e-9));
        assertThat(posterior.line(line).expectedUnseen(middle -> true)).isCloseTo(unseen, within(1e-9));
    }

    private static void checkTogether(EveryTreeMap every, Tree tree, TreePosterior posterior) {
        Random random = new Random(3);
        for (int i = 0; i < 60; i++) {
            int one = random.nextInt(tree.lines.size());
            int other = random.nextInt(tree.lines.size());
            int oneCell = random.nextInt(tree.lines.get(one).count);
            int otherCell = random.nextInt(tree.lines.get(other).count);
            double together = 0;
            for (EveryTreeMap.OneMap map : every.maps()) {
                for (EveryTreeMap.Piece piece : map.territories()) {
                    boolean both = piece.cells().contains(every.cell(one, oneCell))
                            && piece.cells().contains(every.cell(other, otherCell));
                    together += both ? map.weight() / every.total() : 0;
                }
            }
            assertThat(posterior
                            .line(one)
                            .together(
                                    tree.lines.get(one).place(oneCell) + 10,
                                    other,
                                    tree.lines.get(other).place(otherCell) + 10))
                    .isCloseTo(together, within(1e-9));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6})
    void findsTheMostProbableMapAndDrawsEachAsOftenAsItIsProbable(int seed) {
        SurveyedTree waters = seed % 2 == 0 ? two(seed, 200) : deep(seed, 150, 100, seed == 3 ? 150 : 200);
        Tree tree = new Tree(waters, GRAIN);
        EveryTreeMap every = new EveryTreeMap(tree, NATURE);
        TreePosterior posterior = TreePosterior.of(waters, GRAIN, NATURES).orElseThrow();
        EveryTreeMap.OneMap best = every.maps().stream()
                .max((one, other) -> Double.compare(one.weight(), other.weight()))
                .orElseThrow();
        assertThat(posterior.mostProbable())
                .containsExactlyInAnyOrderElementsOf(best.territories().stream()
                        .map(EveryTreeMap.Piece::found)
                        .toList());

        // Each cell is held by as many drawn maps as is probable, within four standard errors.
        int draws = 4000;
        MersenneTwister random = new MersenneTwister(seed);
        List<double[]> drawn = new ArrayList<>();
        tree.lines.forEach(line -> drawn.add(new double[line.count]));
        double bent = 0;
        for (int i = 0; i < draws; i++) {
            for (Found one : Walk.drawn(posterior.drawn(0.5), random)) {
                for (int c = one.from(); c < one.to(); c++) {
                    drawn.get(one.line())[c] += 1.0 / draws;
                }
                if (one.beyond().isPresent()) {
                    bent += 1.0 / draws;
                    Found.Beyond beyond = one.beyond().get();
                    for (int c = beyond.from(); c < beyond.to(); c++) {
                        drawn.get(beyond.line())[c] += 1.0 / draws;
                    }
                }
            }
        }
        for (int line = 0; line < tree.lines.size(); line++) {
            double[] held = posterior.line(line).held();
            for (int c = 0; c < held.length; c++) {
                double error = Math.sqrt(Math.max(0, held[c] * (1 - held[c])) / draws);
                assertThat(drawn.get(line)[c]).isCloseTo(held[c], within(4 * error + 1e-9));
            }
        }
        double bends = 0;
        for (EveryTreeMap.OneMap map : every.maps()) {
            bends += map.weight()
                    / every.total()
                    * map.territories().stream()
                            .filter(piece -> piece.found().beyond().isPresent())
                            .count();
        }
        assertThat(bent).isCloseTo(bends, within(4 * Math.sqrt(bends / draws) + 1e-9));
    }

    /**
     * A tributary that joins where a line ends goes on with it: cut in two there, a line tells what it told whole. Cells as wide as focal places
     * are apart, so that the cut moves none.
     */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4})
    void goesOnWhereALineEndsAsIfItWereOne(int seed) {
        Random random = new Random(seed);
        List<Registration> registrations = new ArrayList<>();
        for (int i = 0; i < 9; i++) {
            registrations.add(new Registration(random.nextInt(1400), random.nextInt(3) - 1));
        }
        registrations.add(new Registration(690, 1));
        registrations.add(new Registration(710, 1));
        List<Constraint> below = List.of(new Constraint.Apart(40, 260, 0.1), new Constraint.Bond(120, 440, 0.3));
        List<Constraint> above = List.of(new Constraint.Apart(840, 1060, 0.1), new Constraint.Held(1220));
        List<Constraint> known = new ArrayList<>(below);
        known.addAll(above);
        known.add(new Constraint.Apart(560, 720, 0.1));
        known.add(new Constraint.Bond(620, 960, 0.3));
        known.add(new Constraint.Simultaneous(new Registration(690, 1), new Registration(710, 1)));
        SurveyedLine whole =
                new SurveyedLine(0, 1400, List.of(walked(0, 1400), walked(300, 1000)), registrations, known, 200);
        SurveyedLine lower = new SurveyedLine(
                0,
                700,
                List.of(walked(0, 700), walked(300, 700)),
                registrations.stream().filter(one -> one.position() < 700).toList(),
                below,
                200);
        SurveyedLine upper = new SurveyedLine(
                700,
                1400,
                List.of(walked(700, 1000), walked(700, 1400)),
                registrations.stream()
                        .filter(one -> one.position() >= 700)
                        .map(one -> new Registration(one.position(), one.visit() < 0 ? one.visit() : 1 - one.visit()))
                        .toList(),
                above,
                200);
        SurveyedTree cut = new SurveyedTree(
                List.of(
                        new Branch(lower, List.of(1L, 2L), Optional.empty()),
                        new Branch(upper, List.of(2L, 1L), Optional.of(new Mouth(0, 700)))),
                List.of(
                        new Places(1, 720, 0, 560, true, 0.1),
                        new Places(1, 960, 0, 620, false, 0.3),
                        new Birds(1, new Registration(710, 0), 0, new Registration(690, 1))));

        LinePosterior one = LinePosterior.of(whole, COARSE, NATURES).orElseThrow();
        TreePosterior two = TreePosterior.of(cut, COARSE, NATURES).orElseThrow();

        double[] held = one.held();
        assertThat(two.line(0).held()).containsExactly(Arrays.copyOf(held, 7), within(1e-9));
        assertThat(two.line(1).held()).containsExactly(Arrays.copyOfRange(held, 7, 14), within(1e-9));
        assertThat(two.line(0).together(560, 1, 740)).isCloseTo(one.together(560, 740), within(1e-9));
        assertThat(two.mostProbable()).hasSameSizeAs(one.mostProbable());
    }

    /** Far from all ends and with nothing met, each two arms are as likely to be those that a territory reaches through. */
    @Test
    void prefersNoTwoArms() {
        Branch main = new Branch(
                new SurveyedLine(0, 40_000, List.of(), List.of(), List.of(), 0), List.of(), Optional.empty());
        Branch side = new Branch(
                new SurveyedLine(0, 20_000, List.of(), List.of(), List.of(), 0),
                List.of(),
                Optional.of(new Mouth(0, 20_000)));
        Grain grain = new Grain(100, 150, 3000);
        Nature nature = new Nature(900, 0.4, 0.5, 800, 0.75, 8, 0.6, 0.4, 180, 0.05, 0.3);
        TreePosterior posterior = TreePosterior.of(
                        new SurveyedTree(List.of(main, side), List.of()),
                        grain,
                        List.of(new NaturePosterior.Draw(nature, 1)))
                .orElseThrow();

        double along = posterior.line(0).together(19_950, 20_050);
        double fromBelow = posterior.line(1).together(50, 0, 19_950);
        double fromAbove = posterior.line(1).together(50, 0, 20_050);

        assertThat(fromBelow).isCloseTo(along, within(0.01));
        assertThat(fromAbove).isCloseTo(along, within(0.01));
        double anywhere = posterior.line(0).together(10_050, 10_150);
        assertThat(along + fromBelow + fromAbove).isCloseTo(anywhere, within(0.02));
    }

    /** Nothing may reach across: then the lines tell what they tell alone, but for what is next to the confluence. */
    @Test
    void leavesLinesAloneFarFromTheConfluence() {
        SurveyedTree waters = two(3, 225);
        Branch far = branch(9000, new Random(5), List.of(1L, 2L), List.of(), Optional.empty());
        Branch side = new Branch(
                waters.branches().get(1).line(), waters.branches().get(1).days(), Optional.of(new Mouth(0, 8000)));
        LinePosterior alone = LinePosterior.of(far.line(), GRAIN, NATURES).orElseThrow();
        LinePosterior beside = TreePosterior.of(new SurveyedTree(List.of(far, side), List.of()), GRAIN, NATURES)
                .orElseThrow()
                .line(0);

        assertThat(Arrays.copyOf(beside.held(), 60)).containsExactly(Arrays.copyOf(alone.held(), 60), within(1e-6));
    }

    @Test
    void refusesLinesThatMakeNoTree() {
        Branch main = two(1, 200).branches().get(0);
        Branch side = two(1, 200).branches().get(1);

        assertThatIllegalArgumentException()
                .isThrownBy(() -> new SurveyedTree(List.of(side, main), List.of()))
                .withMessageContaining("joins none before it");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new SurveyedTree(List.of(main, side), List.of(new Places(0, 10, 1, 10, true, 0.5))))
                .withMessageContaining("No tributary");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Branch(main.line(), List.of(1L, 1L, 2L), Optional.empty()))
                .withMessageContaining("a day of its own");
    }
}

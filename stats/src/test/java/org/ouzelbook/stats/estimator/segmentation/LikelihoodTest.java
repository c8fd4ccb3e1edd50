package org.ouzelbook.stats.estimator.segmentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The gradient by Fisher's identity against central differences of the likelihood itself. */
class LikelihoodTest {
    @Test
    void climbsTheWayThatDifferencesPoint() {
        Random random = new Random(4);
        List<VisitedWater> visits = List.of(
                new VisitedWater(List.of(new VisitedWater.Piece(0, 6000))),
                new VisitedWater(List.of(new VisitedWater.Piece(0, 4000))),
                new VisitedWater(List.of(new VisitedWater.Piece(1500, 6000))));
        List<Registration> registrations = new ArrayList<>();
        for (int i = 0; i < 25; i++) {
            registrations.add(new Registration(random.nextInt(6000), random.nextInt(4) - 1));
        }
        SurveyedLine line = new SurveyedLine(0, 6000, visits, registrations, known(registrations), 900);
        check(SurveyedTree.of(line));

        SurveyedLine side = new SurveyedLine(
                0,
                2500,
                List.of(new VisitedWater(List.of(new VisitedWater.Piece(0, 2500)))),
                List.of(new Registration(300, 0), new Registration(450, 0), new Registration(1700, 0)),
                List.of(),
                900);
        check(new SurveyedTree(
                List.of(
                        new SurveyedTree.Branch(line, List.of(1L, 2L, 3L), Optional.empty()),
                        new SurveyedTree.Branch(side, List.of(2L), Optional.of(new SurveyedTree.Mouth(0, 3000)))),
                List.of(
                        new SurveyedTree.Places(1, 300, 0, 2800, false, 0.01),
                        new SurveyedTree.Birds(
                                1,
                                side.registrations().get(1),
                                0,
                                line.registrations().stream()
                                        .filter(one -> one.visit() == 1 && one.position() > 2000)
                                        .findFirst()
                                        .orElseThrow()))));
    }

    private static void check(SurveyedTree waters) {
        Likelihood likelihood = new Likelihood(List.of(new Tree(waters, new Grain(100, 150, 3000))));
        double[] point = new Nature(800, 0.45, 0.4, 700, 0.7, 7, 0.5, 0.5, 200, 0.08, 0.3).point();

        double[] gradient = likelihood.slope(point).gradient();

        for (int j = 0; j < Nature.SIZE; j++) {
            double[] up = point.clone();
            double[] down = point.clone();
            up[j] += 1e-4;
            down[j] -= 1e-4;
            double difference = (likelihood.log(up) - likelihood.log(down)) / 2e-4;
            assertThat(gradient[j]).as("number %d", j).isCloseTo(difference, within(2e-3));
        }
    }

    /** Two nests, and each third bird noted as seen at once with the next on its visit. */
    private static List<Constraint> known(List<Registration> registrations) {
        List<Constraint> known = new ArrayList<>(List.of(new Constraint.Apart(1800, 2300, 1e-3)));
        for (int i = 0; i < registrations.size(); i += 3) {
            Registration one = registrations.get(i);
            registrations.stream()
                    .filter(other -> other.visit() == one.visit() && other.position() > one.position())
                    .min(Comparator.comparingDouble(Registration::position))
                    .ifPresent(other -> known.add(new Constraint.Simultaneous(one, other)));
        }
        return known;
    }
}

package org.ouzelbook.stats.estimator.segmentation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The short way against the plain one: every line is cut anew without each of its points, and the two cuts are held together. */
class LeaveOneOutTest {
    /** Small lines of coarse positions, where many partitions are equally good, with walls, pairs, bonds and decisions. */
    @Test
    void agreesWithCuttingSmallLinesAnew() {
        Random random = new Random(20261128);
        for (int trial = 0; trial < 3000; trial++) {
            agrees(PartitionTest.randomLine(random), PartitionTest.randomAcceptance(random), "small " + trial);
        }
    }

    /** Longer lines, on which what is best below and above a point is more than a few clusters. */
    @Test
    void agreesWithCuttingLongLinesAnew() {
        Random random = new Random(7);
        for (int trial = 0; trial < 25; trial++) {
            agrees(longLine(random), new Acceptance(List.of(), 2, 3, 9, 10), "long " + trial);
        }
    }

    private static Line longLine(Random random) {
        List<Double> positions = random.doubles(150, 0, 9000).sorted().boxed().toList();
        List<LinePoint> points = positions.stream()
                .map(at -> new LinePoint(at, 30, List.of(random.nextInt(30) * 4), random.nextInt(20) == 0))
                .toList();
        Set<PointPair> apart = new HashSet<>();
        for (int i = 0; i < 8; i++) {
            int lower = random.nextInt(140);
            apart.add(PointPair.of(lower, lower + 1 + random.nextInt(8)));
        }
        return new Line(points, apart, Set.of(), List.of(random.nextDouble() * 9000), 1500, Decided.NOTHING);
    }

    private static void agrees(Line line, Acceptance acceptance, String trial) {
        LeaveOneOut quick = LeaveOneOut.of(line, acceptance);
        for (int left = 0; left < line.points().size(); left++) {
            assertThat(quick.without(left))
                    .as("%s without point %d of %s", trial, left, line)
                    .isEqualTo(Partition.of(line.without(left), acceptance));
        }
    }
}

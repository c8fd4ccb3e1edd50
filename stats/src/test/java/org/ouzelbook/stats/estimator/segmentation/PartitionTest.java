package org.ouzelbook.stats.estimator.segmentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.segmentation.Partition.Cluster;

class PartitionTest {
    private static final Acceptance TWO_DAYS = new Acceptance(List.of(), 2, 3, 9, 10);

    private static LinePoint point(double position, int day) {
        return new LinePoint(position, 0, List.of(day), false);
    }

    private static Line line(LinePoint... points) {
        return new Line(List.of(points), Set.of(), Set.of(), List.of(), 1500);
    }

    /** Every partition of small random lines, judged one by one: the dynamic program must find none better. */
    @Test
    void findsTheBestOfAllPartitions() {
        Random random = new Random(20260315);
        for (int trial = 0; trial < 400; trial++) {
            Line line = randomLine(random);
            Acceptance acceptance = randomAcceptance(random);

            List<Cluster> found = Partition.of(line, acceptance).clusters();

            List<List<Cluster>> allowed = allPartitions(line, acceptance);
            Score best = allowed.stream()
                    .map(clusters -> score(line, clusters))
                    .min(Comparator.naturalOrder())
                    .orElseThrow();
            assertThat(allowed).as("trial %d", trial).contains(found);
            assertThat(score(line, found)).as("trial %d", trial).isEqualTo(best);
        }
    }

    private static Line randomLine(Random random) {
        int size = random.nextInt(11);
        List<LinePoint> points = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            double position = 100 * random.nextInt(40);
            double uncertainty = random.nextBoolean() ? 0 : 50;
            points.add(new LinePoint(position, uncertainty, List.of(random.nextInt(6) * 7), random.nextInt(12) == 0));
        }
        points.sort(Comparator.comparingDouble(LinePoint::position));
        List<Double> walls = new ArrayList<>();
        for (int i = random.nextInt(3); i > 0; i--) {
            walls.add(50.0 * random.nextInt(80));
        }
        return new Line(points, randomPairs(random, size), randomPairs(random, size), walls, 1500);
    }

    private static Set<PointPair> randomPairs(Random random, int size) {
        Set<PointPair> pairs = new HashSet<>();
        for (int i = 0; i < 2 && size > 1; i++) {
            int one = random.nextInt(size);
            int other = random.nextInt(size);
            if (one != other && random.nextBoolean()) {
                pairs.add(PointPair.of(one, other));
            }
        }
        return pairs;
    }

    private static Acceptance randomAcceptance(Random random) {
        List<VisitedWater> visits = new ArrayList<>();
        for (int i = random.nextInt(12); i > 0; i--) {
            double from = 500 * random.nextInt(8);
            visits.add(new VisitedWater(List.of(new VisitedWater.Piece(from, from + 2000))));
        }
        return new Acceptance(visits, 2, 3, 5, 10);
    }

    /** Every way to cut the points, by the bits of a number, that keeps to length, walls and pairs apart. */
    private static List<List<Cluster>> allPartitions(Line line, Acceptance acceptance) {
        int size = line.points().size();
        List<List<Cluster>> partitions = new ArrayList<>();
        for (int cuts = 0; cuts < 1 << Math.max(0, size - 1); cuts++) {
            List<Cluster> clusters = new ArrayList<>();
            int from = 0;
            boolean allowed = true;
            for (int to = 1; to <= size; to++) {
                if (to == size || (cuts >> (to - 1) & 1) == 1) {
                    allowed &= isAllowed(line, from, to);
                    clusters.add(new Cluster(from, to, isAccepted(line, from, to, acceptance)));
                    from = to;
                }
            }
            if (allowed) {
                partitions.add(clusters);
            }
        }
        return partitions;
    }

    private static boolean isAllowed(Line line, int from, int to) {
        List<LinePoint> points = line.points().subList(from, to);
        boolean shortEnough =
                points.get(points.size() - 1).position() - points.get(0).position() <= 1500;
        boolean noPair = line.apart().stream().noneMatch(pair -> pair.lower() >= from && pair.upper() < to);
        boolean noWall = line.walls().stream()
                .noneMatch(wall -> points.stream().anyMatch(point -> point.position() + point.uncertainty() < wall)
                        && points.stream().anyMatch(point -> point.position() - point.uncertainty() > wall));
        return shortEnough && noPair && noWall;
    }

    private static boolean isAccepted(Line line, int from, int to, Acceptance acceptance) {
        List<LinePoint> points = line.points().subList(from, to);
        List<Integer> days = points.stream()
                .flatMap(point -> point.days().stream())
                .distinct()
                .sorted()
                .toList();
        return acceptance.accepts(
                points.stream().anyMatch(LinePoint::decisive),
                days.size(),
                days.get(days.size() - 1) - days.get(0),
                points.get(0).position(),
                points.get(points.size() - 1).position());
    }

    private static Score score(Line line, List<Cluster> clusters) {
        Score score = Score.NOTHING;
        for (Cluster cluster : clusters) {
            int broken = (int) line.together().stream()
                    .filter(pair -> pair.lower() < cluster.to() && cluster.to() <= pair.upper())
                    .count();
            int size = cluster.to() - cluster.from();
            double span = line.points().get(cluster.to() - 1).position()
                    - line.points().get(cluster.from()).position();
            score = score.plus(new Score(
                    broken,
                    cluster.accepted() ? 0 : size,
                    cluster.accepted() ? 1 : 0,
                    cluster.accepted() ? 0 : 1,
                    Math.round(span * 1000)));
        }
        return score;
    }

    @Test
    void makesNoClusterOfNoPoints() {
        assertThat(Partition.of(line(), TWO_DAYS).clusters()).isEmpty();
    }

    @Test
    void takesASpanOfExactlyTheMaximumLength() {
        assertThat(Partition.of(line(point(0, 1), point(1500, 20)), TWO_DAYS).clusters())
                .containsExactly(new Cluster(0, 2, true));
        assertThat(Partition.of(line(point(0, 1), point(1500.5, 20)), TWO_DAYS).clusters())
                .hasSize(2);
    }

    @Test
    void countsEachDayOnce() {
        assertThat(Partition.of(line(point(0, 1), point(50, 1), point(90, 1)), TWO_DAYS)
                        .clusters())
                .containsExactly(new Cluster(0, 3, false));
    }

    @Test
    void reachesAcrossNoWall() {
        Line walled = new Line(List.of(point(0, 1), point(400, 20)), Set.of(), Set.of(), List.of(200.0), 1500);

        assertThat(Partition.of(walled, TWO_DAYS).clusters()).hasSize(2);
    }

    @Test
    void letsAPointWithinItsUncertaintyOfAWallLieOnEitherSide() {
        LinePoint nearTheWall = new LinePoint(210, 20, List.of(20), false);
        Line walled = new Line(List.of(point(0, 1), nearTheWall), Set.of(), Set.of(), List.of(200.0), 1500);

        assertThat(Partition.of(walled, TWO_DAYS).clusters()).containsExactly(new Cluster(0, 2, true));
    }

    @Test
    void asksForMoreDaysWhereMoreVisitsCovered() {
        VisitedWater visit = new VisitedWater(List.of(new VisitedWater.Piece(0, 1000)));
        Acceptance eight = new Acceptance(Collections.nCopies(8, visit), 2, 3, 9, 10);
        Acceptance nine = new Acceptance(Collections.nCopies(9, visit), 2, 3, 9, 10);

        assertThat(eight.daysNeeded(100, 300)).isEqualTo(2);
        assertThat(nine.daysNeeded(100, 300)).isEqualTo(3);
        assertThat(nine.daysNeeded(2000, 2300)).isEqualTo(2);
    }

    @Test
    void refusesPointsOutOfOrder() {
        assertThatThrownBy(() -> line(point(10, 1), point(5, 1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("point 1");
    }

    @Test
    void refusesAPairOfAPointThatIsNotThere() {
        assertThatThrownBy(() -> new Line(List.of(point(1, 1)), Set.of(new PointPair(0, 1)), Set.of(), List.of(), 1500))
                .isInstanceOf(IllegalArgumentException.class);
    }
}

package org.ouzelbook.stats.estimator.segmentation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.segmentation.Partition.Cluster;

class PartitionTest {
    private static final Acceptance TWO_DAYS = new Acceptance(List.of(), 2, 3, 9, 10);

    private static LinePoint point(double position, int day) {
        return new LinePoint(position, 0, List.of(day), false);
    }

    private static Line line(LinePoint... points) {
        return new Line(List.of(points), Set.of(), Set.of(), List.of(), 1500, Decided.NOTHING);
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

    static Line randomLine(Random random) {
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
        return new Line(
                points, randomPairs(random, size), randomPairs(random, size), walls, 1500, randomDecided(random));
    }

    /** At most one of each: a limit, a span that is together and a vacant one, none contradicting another. */
    private static Decided randomDecided(Random random) {
        List<Double> limits = random.nextInt(3) == 0 ? List.of(50.0 * random.nextInt(20)) : List.of();
        List<Decided.Span> together = random.nextInt(3) == 0 ? List.of(randomSpan(random, 1000)) : List.of();
        List<Decided.Span> vacant = random.nextInt(3) == 0 ? List.of(randomSpan(random, 3000)) : List.of();
        return new Decided(limits, together, vacant);
    }

    private static Decided.Span randomSpan(Random random, double from) {
        double lower = from + 50 * random.nextInt(20);
        return new Decided.Span(lower, lower + 50 * (1 + random.nextInt(20)));
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

    static Acceptance randomAcceptance(Random random) {
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
        double lower = points.get(0).position();
        double upper = points.get(points.size() - 1).position();
        Decided decided = line.decided();
        boolean shortEnough =
                upper - lower <= 1500 || decided.together().stream().anyMatch(holdsBoth(lower, upper));
        boolean noPair = line.apart().stream()
                .filter(pair -> decided.together().stream()
                        .noneMatch(holdsBoth(
                                line.points().get(pair.lower()).position(),
                                line.points().get(pair.upper()).position())))
                .noneMatch(pair -> pair.lower() >= from && pair.upper() < to);
        boolean noWall = line.walls().stream()
                .filter(wall -> !isInsideWhatIsTogether(line, wall))
                .noneMatch(wall -> points.stream().anyMatch(point -> point.position() + point.uncertainty() < wall)
                        && points.stream().anyMatch(point -> point.position() - point.uncertainty() > wall));
        return shortEnough && noPair && noWall && keepsToWhatIsDecided(line, from, to, lower, upper);
    }

    private static Predicate<Decided.Span> holdsBoth(double one, double other) {
        return span -> span.holds(one) && span.holds(other);
    }

    private static boolean isInsideWhatIsTogether(Line line, double wall) {
        return line.decided().together().stream().anyMatch(span -> {
            DoubleSummaryStatistics inside = line.points().stream()
                    .mapToDouble(LinePoint::position)
                    .filter(span::holds)
                    .summaryStatistics();
            return inside.getCount() > 1 && inside.getMin() <= wall && wall <= inside.getMax();
        });
    }

    private static boolean keepsToWhatIsDecided(Line line, int from, int to, double lower, double upper) {
        Decided decided = line.decided();
        List<LinePoint> points = line.points();
        boolean noLimit = decided.limits().stream().noneMatch(limit -> lower < limit && limit < upper);
        boolean uncut = decided.together().stream()
                .noneMatch(span -> (from > 0
                                && holdsBoth(points.get(from - 1).position(), lower)
                                        .test(span))
                        || (to < points.size()
                                && holdsBoth(upper, points.get(to).position()).test(span)));
        boolean outOrIn = decided.vacant().stream()
                .allMatch(span -> (span.lower() <= lower && upper <= span.upper())
                        || upper < span.lower()
                        || lower > span.upper());
        return noLimit && uncut && outOrIn;
    }

    private static boolean isAccepted(Line line, int from, int to, Acceptance acceptance) {
        List<LinePoint> points = line.points().subList(from, to);
        List<Integer> days = points.stream()
                .flatMap(point -> point.days().stream())
                .distinct()
                .sorted()
                .toList();
        double lowest = points.get(0).position();
        return line.decided().vacant().stream().noneMatch(span -> span.holds(lowest))
                && acceptance.accepts(
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
        Line walled = new Line(
                List.of(point(0, 1), point(400, 20)), Set.of(), Set.of(), List.of(200.0), 1500, Decided.NOTHING);

        assertThat(Partition.of(walled, TWO_DAYS).clusters()).hasSize(2);
    }

    @Test
    void letsAPointWithinItsUncertaintyOfAWallLieOnEitherSide() {
        LinePoint nearTheWall = new LinePoint(210, 20, List.of(20), false);
        Line walled =
                new Line(List.of(point(0, 1), nearTheWall), Set.of(), Set.of(), List.of(200.0), 1500, Decided.NOTHING);

        assertThat(Partition.of(walled, TWO_DAYS).clusters()).containsExactly(new Cluster(0, 2, true));
    }

    @Test
    void reachesAcrossNoSettledLimitHoweverUncertainAPointIs() {
        LinePoint near = new LinePoint(210, 20, List.of(20), false);
        Decided limit = new Decided(List.of(200.0), List.of(), List.of());

        assertThat(Partition.of(decided(limit, point(0, 1), near), TWO_DAYS).clusters())
                .containsExactly(new Cluster(0, 1, false), new Cluster(1, 2, false));
    }

    @Test
    void keepsTogetherWhatIsSettledWhateverLengthWallsAndPairsSay() {
        Decided together = new Decided(List.of(), List.of(new Decided.Span(0, 2000)), List.of());
        Line line = new Line(
                List.of(point(0, 1), point(900, 20), point(2000, 20), point(2100, 40)),
                Set.of(new PointPair(0, 1)),
                Set.of(),
                List.of(500.0),
                1500,
                together);

        assertThat(Partition.of(line, TWO_DAYS).clusters())
                .containsExactly(new Cluster(0, 3, true), new Cluster(3, 4, false));
    }

    @Test
    void acceptsNothingWhereNoClusterMayBe() {
        Decided vacant = new Decided(List.of(), List.of(), List.of(new Decided.Span(100, 500)));

        assertThat(Partition.of(decided(vacant, point(50, 1), point(100, 1), point(300, 20), point(550, 20)), TWO_DAYS)
                        .clusters())
                .containsExactly(new Cluster(0, 1, false), new Cluster(1, 3, false), new Cluster(3, 4, false));
        assertThat(Partition.of(decided(vacant, point(50, 1), point(550, 20)), TWO_DAYS)
                        .clusters())
                .hasSize(2);
    }

    private static Line decided(Decided decided, LinePoint... points) {
        return new Line(List.of(points), Set.of(), Set.of(), List.of(), 1500, decided);
    }

    @Test
    void refusesWhatCannotBothBeSettled() {
        List<Decided.Span> span = List.of(new Decided.Span(100, 500));

        assertThatThrownBy(() -> new Decided(List.of(300.0), span, List.of()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Decided(List.of(), span, List.of(new Decided.Span(400, 700))))
                .isInstanceOf(IllegalArgumentException.class);
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
        assertThatThrownBy(() -> new Line(
                        List.of(point(1, 1)), Set.of(new PointPair(0, 1)), Set.of(), List.of(), 1500, Decided.NOTHING))
                .isInstanceOf(IllegalArgumentException.class);
    }
}

package org.ouzelbook.stats.simulate.mechanism;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.stats.simulate.mechanism.Mechanism.Kind;

class SimulatedBookTest {
    private static final FieldPlan TWELVE_KM = new FieldPlan(12_000, false, 6, 0.2, 0.3, 0.1);
    private static final FieldPlan LONG = new FieldPlan(400_000, false, 5, 0, 0, 0);

    @ParameterizedTest
    @EnumSource
    void makesTheSameBookFromTheSameSeed(Kind kind) {
        BookPlan plan = new BookPlan(kind, 900, 3, TWELVE_KM);

        assertThat(SimulatedBook.of(plan, 4)).isEqualTo(SimulatedBook.of(plan, 4));
        assertThat(SimulatedBook.of(plan, 4)).isNotEqualTo(SimulatedBook.of(plan, 5));
    }

    @ParameterizedTest
    @EnumSource
    void meetsBirdsOnlyWhereTheVisitWent(Kind kind) {
        for (RiverSeason season :
                SimulatedBook.of(new BookPlan(kind, 700, 4, TWELVE_KM), 1).seasons()) {
            Set<String> names = new HashSet<>();
            for (Registration registration : season.registrations()) {
                Walk walk = season.walks().get(registration.visit());
                assertThat(names.add(registration.id())).isTrue();
                assertThat(registration.metres()).isBetween(walk.fromMetres() - 100, walk.toMetres() + 100);
            }
            for (Together pair : season.together()) {
                assertThat(names).contains(pair.one(), pair.other());
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void countsOnAPieceOnlyTerritoriesWithTheirMiddleOnIt(Kind kind) {
        FieldPlan piece = new FieldPlan(3000, true, 5, 0, 0, 0);
        List<Ground> across = new ArrayList<>();
        for (RiverSeason season :
                SimulatedBook.of(new BookPlan(kind, 1000, 60, piece), 2).seasons()) {
            for (Ground ground : season.grounds()) {
                assertThat(ground.toMetres()).isPositive();
                assertThat(ground.fromMetres()).isLessThan(3000);
                if (ground.middle() < 0 || ground.middle() > 3000) {
                    across.add(ground);
                }
            }
            assertThat(season.trueCount()).isLessThanOrEqualTo(season.grounds().size());
        }
        assertThat(across).isNotEmpty();
    }

    /** 400 km hold several hundred grounds: the median and the share that abut lie within three of their standard errors. */
    @Test
    void followsTheModelsOwnLaws() {
        ModelledPairs pairs = new ModelledPairs(800, 0.3, 2500, 0.4, 500, 0.7, 10, 0.5, 0.5, 100, 0.05);
        RiverSeason season = pairs.season(LONG, Draws.of(11));
        List<Ground> grounds = season.grounds();
        int n = grounds.size();
        double[] lengths = grounds.stream().mapToDouble(Ground::length).sorted().toArray();
        int touching = 0;
        for (int i = 1; i < n; i++) {
            assertThat(grounds.get(i).fromMetres())
                    .isGreaterThanOrEqualTo(grounds.get(i - 1).toMetres());
            touching += grounds.get(i).fromMetres() == grounds.get(i - 1).toMetres() ? 1 : 0;
        }

        // The standard error of a median is √(π/2)·σ/√n on the log scale; both limits of the length hardly cut here.
        assertThat(Math.log(lengths[n / 2] / 800)).isCloseTo(0, within(3 * 1.2533 * 0.3 / Math.sqrt(n)));
        assertThat((double) touching / n).isCloseTo(0.4, within(3 * Math.sqrt(0.24 / n)));

        // Per pair and visit 0.7·r/(1 − e^−r) registrations with r = 0.5, and 20 strays a visit.
        double expected = 5 * (n * 0.7 * 0.5 / (1 - Math.exp(-0.5)) + 20);
        assertThat((double) season.registrations().size()).isCloseTo(expected, within(4 * Math.sqrt(2 * expected)));
    }

    @Test
    void letsRangesOverlapButByNoMoreThanSaid() {
        Mechanism ranges = new OverlappingRanges(900, 0.2, 0.2, 0, 500, 0.8, 10, 0.4, true, 0.3, 0);
        RiverSeason season = ranges.season(LONG, Draws.of(3));
        List<Ground> grounds = season.grounds();
        for (int i = 1; i < grounds.size(); i++) {
            assertThat(grounds.get(i - 1).toMetres() - grounds.get(i).fromMetres())
                    .isBetween(0.0, 0.2 * 900);
        }
    }

    /** One range on free water: what is met off it was a chase, on three in ten of the visits that found the pair. */
    @Test
    void metOffItsRangeABirdIsChasing() {
        Mechanism ranges = new OverlappingRanges(900, 0.2, 0.2, 1, 50_000, 0.8, 10, 0.4, true, 0.3, 0);
        RiverSeason season = ranges.season(new FieldPlan(400_000, false, 60, 0, 0, 0), Draws.of(3));
        long off = season.registrations().stream()
                .filter(one -> season.grounds().stream().noneMatch(ground -> ground.contains(one.metres())))
                .count();

        assertThat((double) off / (season.trueCount() * 60)).isCloseTo(0.8 * 0.3, within(0.08));
    }

    @Test
    void makesSparseRiversSparserThanClusteredOnes() {
        RiverSeason sparse = SimulatedBook.of(new BookPlan(Kind.SPARSE, 900, 1, LONG), 9)
                .seasons()
                .get(0);
        RiverSeason clustered = SimulatedBook.of(new BookPlan(Kind.CLUSTERED, 900, 1, LONG), 9)
                .seasons()
                .get(0);

        assertThat(sparse.trueCount()).isBetween(50, 150);
        assertThat(clustered.trueCount()).isBetween(200, 360);
    }
}

package org.ouzelbook.stats.simulate.mechanism;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.simulate.mechanism.Mechanism.Kind;

class ForkedBookTest {
    private static final BookPlan PLAN =
            new BookPlan(Kind.CLUSTERED, 900, 12, new FieldPlan(12_000, false, 5, 0.3, 0.3, 0));

    @Test
    void makesTheSameBookFromTheSameSeed() {
        assertThat(ForkedBook.of(PLAN, 4)).isEqualTo(ForkedBook.of(PLAN, 4)).isNotEqualTo(ForkedBook.of(PLAN, 5));
    }

    @Test
    void meetsBirdsOnlyWhereTheVisitWent() {
        for (ForkedSeason season : ForkedBook.of(PLAN, 1).seasons()) {
            for (RiverSeason river : List.of(season.river(), season.tributary())) {
                Set<String> names = new HashSet<>();
                for (Registration one : river.registrations()) {
                    Walk walk = river.walks().get(one.visit());
                    assertThat(names.add(one.id())).isTrue();
                    assertThat(one.metres()).isBetween(walk.fromMetres() - 100, walk.toMetres() + 100);
                    assertThat(one.metres()).isBetween(0.0, river.riverMetres());
                }
                for (Together pair : river.together()) {
                    assertThat(names).contains(pair.one(), pair.other());
                }
            }
        }
    }

    /** Each of the three ways through the confluence is some season’s: walks along the river, or from it into the tributary. */
    @Test
    void changesTheWayThroughFromSeasonToSeason() {
        Set<String> ways = new HashSet<>();
        for (ForkedSeason season : ForkedBook.of(PLAN, 2).seasons()) {
            Walk first = season.river().walks().get(0);
            boolean tributary = season.tributary().walks().get(0).toMetres() > 0;
            ways.add(tributary ? (first.fromMetres() < 4000 ? "below" : "above") : "along");
            assertThat(season.trueCount()).isBetween(1, 25);
        }

        assertThat(ways).containsExactlyInAnyOrder("below", "above", "along");
    }
}

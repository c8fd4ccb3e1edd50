package org.ouzelbook.stats.simulate.skerra;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.GeoPoint;

class SkerraTest {
    private final Skerra skerra = new Skerra();

    @Test
    void theRiversAreAsLongAsToldAndMeetAtBeckfoot() {
        assertThat(skerra.line(Skerra.ARREL).length()).isBetween(18_000.0, 18_400.0);
        assertThat(skerra.line(Skerra.SORN).length()).isBetween(7_000.0, 7_300.0);
        GeoPoint mouth = skerra.drawn(Skerra.SORN).points().get(0);
        assertThat(skerra.line(Skerra.ARREL).nearest(mouth).offsetMetres()).isLessThan(0.1);
    }

    /** 52° N 20° W is open Atlantic, more than 600 km from any shore. */
    @Test
    void theIslandLiesWhereNoLandIs() {
        assertThat(skerra.drawn(Skerra.ARREL).points()).allSatisfy(point -> {
            assertThat(point.latitude()).isBetween(51.8, 52.2);
            assertThat(point.longitude()).isBetween(-20.3, -19.7);
        });
    }

    @Test
    void theLineNeverComesNearAnOlderPartOfItself() {
        List<GeoPoint> points = skerra.drawn(Skerra.ARREL).points();
        for (int i = 0; i < points.size(); i++) {
            for (int j = i + 8; j < points.size(); j++) {
                double north =
                        111_270 * (points.get(i).latitude() - points.get(j).latitude());
                double east =
                        68_500 * (points.get(i).longitude() - points.get(j).longitude());
                assertThat(Math.hypot(north, east)).isGreaterThan(60);
            }
        }
    }

    @Test
    void noTwoLandmarksShareAName() {
        Set<String> names = new HashSet<>();
        for (KnownPlace place : KnownPlace.all()) {
            assertThat(names.add(place.name().toLowerCase(Locale.ROOT))).isTrue();
            place.aliases()
                    .forEach(alias -> assertThat(names.add(alias.toLowerCase(Locale.ROOT)))
                            .as(alias)
                            .isTrue());
        }
        assertThat(KnownPlace.all()).hasSizeGreaterThan(25);
    }
}

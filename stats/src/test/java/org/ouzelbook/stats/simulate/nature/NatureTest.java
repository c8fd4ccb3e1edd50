package org.ouzelbook.stats.simulate.nature;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.simulate.Draws;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

class NatureTest {
    private static final UUID MAIN = new UUID(1, 1);
    private static final UUID SIDE = new UUID(1, 2);
    private static final Course MAIN_COURSE = new Course(new River(MAIN, "Main", Optional.empty()), 40_000);

    private static List<TruePair> dippers(Conditions conditions, List<NestingSite> sites, Course... courses) {
        Nature nature =
                new Nature(Species.DIPPER, sites, PopulationSettings.dipper(), BreedingSettings.dipper(), conditions);
        return nature.pairs(List.of(courses), 2001, 2010, Draws.of(11));
    }

    private static List<NestingSite> manySites() {
        return NestingSite.along(MAIN_COURSE, 700, 0.3, 0.4, Draws.of(5));
    }

    private static long count(List<TruePair> pairs, int season) {
        return pairs.stream().filter(pair -> pair.season() == season).count();
    }

    @Test
    void aSpillEmptiesItsStretchAndNoOther() {
        SeasonEffect spill = new SeasonEffect(2006, 2006, MAIN, Stretch.ofKm(0, 20), -1, -4, -4, 2);
        List<TruePair> pairs = dippers(new Conditions(List.of(spill), List.of()), manySites(), MAIN_COURSE);

        assertThat(below20(pairs, 2005)).isGreaterThan(8);
        assertThat(below20(pairs, 2006)).isLessThan(below20(pairs, 2005) / 2);
        assertThat(count(pairs, 2006) - below20(pairs, 2006)).isGreaterThan(10);
        assertThat(below20(pairs, 2010)).as("recovery").isGreaterThan(below20(pairs, 2006));
    }

    private static long below20(List<TruePair> pairs, int season) {
        return pairs.stream()
                .filter(pair -> pair.season() == season && pair.site().at().km() <= 20)
                .count();
    }

    @Test
    void aFloodTakesNestsInUseOnItsDay() {
        LocalDate day = LocalDate.of(2004, 4, 20);
        List<TruePair> pairs =
                dippers(new Conditions(List.of(), List.of(new Flood(day, 0.9))), manySites(), MAIN_COURSE);
        List<Attempt> inUse = pairs.stream()
                .filter(pair -> pair.season() == 2004)
                .flatMap(pair -> pair.attempts().stream())
                .filter(attempt ->
                        attempt.firstEgg().isBefore(day) && attempt.fledging().isAfter(day))
                .filter(attempt ->
                        attempt.lost().map(loss -> !loss.day().isBefore(day)).orElse(true))
                .toList();

        long washedOut = inUse.stream()
                .filter(attempt -> attempt.lost()
                        .map(loss -> loss.cause() == Attempt.Cause.FLOOD
                                && loss.day().equals(day))
                        .orElse(false))
                .count();
        assertThat(inUse).hasSizeGreaterThan(15);
        assertThat((double) washedOut / inUse.size()).isBetween(0.7, 1.0);
    }

    @Test
    void aPairAtAConfluenceHoldsWaterInBothArms() {
        Course side =
                new Course(new River(SIDE, "Side", Optional.of(new River.Confluence(MAIN, Chainage.ofKm(5)))), 3_000);
        NestingSite site = new NestingSite("below the meeting", MAIN, Chainage.ofKm(4.95), Bank.LEFT, NestSite.ROCK, 9);

        TruePair pair =
                dippers(Conditions.even(), List.of(site), MAIN_COURSE, side).get(0);

        assertThat(pair.grounds()).hasSize(2);
        assertThat(pair.grounds().get(0).stretch().contains(Chainage.ofKm(5))).isTrue();
        assertThat(pair.grounds().get(1).riverId()).isEqualTo(SIDE);
        assertThat(pair.grounds().get(1).stretch().lower().metres()).isZero();
    }

    @Test
    void noBirdHoldsTwoSitesAtOnceAndSomeYoungComeHome() {
        List<TruePair> pairs = dippers(Conditions.even(), manySites(), MAIN_COURSE);
        Set<String> young = new HashSet<>();
        int home = 0;
        for (int season = 2001; season <= 2010; season++) {
            Set<Bird> holders = new HashSet<>();
            for (TruePair pair : pairs) {
                if (pair.season() == season) {
                    assertThat(holders.add(pair.female())).isTrue();
                    assertThat(holders.add(pair.male())).isTrue();
                }
            }
            home += (int) holders.stream()
                    .filter(bird -> young.contains(bird.label()))
                    .count();
            pairs.stream().flatMap(pair -> pair.young().stream()).forEach(bird -> young.add(bird.label()));
        }
        assertThat(home).isPositive();
    }

    /** Lebreton et al. (1992), Ecol. Monogr. 62:67–118: 0.56 of grown dippers lived to the next season. */
    @Test
    void holdersSurviveAsOftenAsSet() {
        List<TruePair> pairs = dippers(Conditions.even(), manySites(), MAIN_COURSE);
        int seen = 0;
        int back = 0;
        for (int season = 2001; season < 2010; season++) {
            Set<Bird> next = holders(pairs, season + 1);
            Set<Bird> now = holders(pairs, season);
            seen += now.size();
            back += (int) now.stream().filter(next::contains).count();
        }
        // A few survivors find no site; four standard errors of a share of 0.55 of these birds.
        double tolerance = 4 * Math.sqrt(0.55 * 0.45 / seen);
        assertThat((double) back / seen).isBetween(0.56 - tolerance - 0.03, 0.56 + tolerance);
    }

    private static Set<Bird> holders(List<TruePair> pairs, int season) {
        Set<Bird> holders = new HashSet<>();
        pairs.stream().filter(pair -> pair.season() == season).forEach(pair -> {
            holders.add(pair.female());
            holders.add(pair.male());
        });
        return holders;
    }
}

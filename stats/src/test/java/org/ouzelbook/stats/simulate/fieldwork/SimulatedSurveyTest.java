package org.ouzelbook.stats.simulate.fieldwork;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.simulate.nature.TruePair;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Visit;

class SimulatedSurveyTest {
    private static final SimulatedSurvey SURVEY = SimulatedSurvey.of(TestRiver.settings(10, 0.1, 0.2), 42);

    @Test
    void theSameSeedMakesTheSameSurvey() {
        assertThat(SimulatedSurvey.of(TestRiver.settings(3, 0.1, 0.2), 42))
                .isEqualTo(SimulatedSurvey.of(TestRiver.settings(3, 0.1, 0.2), 42))
                .isNotEqualTo(SimulatedSurvey.of(TestRiver.settings(3, 0.1, 0.2), 43));
    }

    @Test
    void worseFieldworkLeavesTheTruthAlone() {
        assertThat(SimulatedSurvey.of(TestRiver.settings(3, 0.9, 0), 42).truth())
                .isEqualTo(SimulatedSurvey.of(TestRiver.settings(3, 0, 0), 42).truth());
    }

    @Test
    void neighboursHoldDifferentWater() {
        for (int season = 2001; season <= 2010; season++) {
            List<TruePair> pairs = SURVEY.truth().pairs(Species.DIPPER, season);
            for (int i = 1; i < pairs.size(); i++) {
                assertThat(pairs.get(i - 1).home().stretch().upper())
                        .isLessThanOrEqualTo(pairs.get(i).home().stretch().lower());
            }
        }
    }

    @Test
    void aPairNestsOnItsOwnWater() {
        assertThat(SURVEY.truth().pairs())
                .isNotEmpty()
                .allSatisfy(pair -> assertThat(
                                pair.home().stretch().contains(pair.site().at()))
                        .isTrue());
    }

    @Test
    void mostSitesAreHeldAgain() {
        long kept = 0;
        long held = 0;
        for (int season = 2001; season < 2010; season++) {
            List<String> next = sites(season + 1);
            held += sites(season).size();
            kept += sites(season).stream().filter(next::contains).count();
        }

        assertThat((double) kept / held).isBetween(0.75, 0.95);
    }

    private static List<String> sites(int season) {
        return SURVEY.truth().pairs(Species.DIPPER, season).stream()
                .map(pair -> pair.site().name())
                .toList();
    }

    @Test
    void nothingIsSeenOnWaterThatWasNotWalked() {
        Map<UUID, Visit> visits = SURVEY.visits().stream().collect(Collectors.toMap(Visit::id, Function.identity()));

        assertThat(SURVEY.sightings()).isNotEmpty().allSatisfy(sighting -> {
            Visit visit = requireNonNull(visits.get(sighting.visitId().orElseThrow()));
            assertThat(visit.walked().orElseThrow().contains(sighting.place().chainage()))
                    .isTrue();
        });
        assertThat(SURVEY.visits())
                .anySatisfy(visit -> assertThat(visit.walked()).isEmpty());
    }

    /** D'Amico and Hémery (2003), Ibis 145:83–86: a pair was found on 63 to 94 % of visits, by site. */
    @Test
    void aPairIsFoundAboutAsOftenAsPublished() {
        SimulatedSurvey survey = SimulatedSurvey.of(TestRiver.settings(30, 0, 0), 5);
        Map<String, int[]> bySite = new HashMap<>();
        for (Visit visit : survey.visits()) {
            List<Sighting> seen = survey.sightings().stream()
                    .filter(sighting -> sighting.visitId().orElseThrow().equals(visit.id()))
                    .toList();
            for (TruePair pair :
                    survey.truth().pairs(Species.DIPPER, visit.date().getYear())) {
                boolean found = seen.stream()
                        .anyMatch(sighting ->
                                pair.home().stretch().contains(sighting.place().chainage()));
                int[] tally = bySite.computeIfAbsent(pair.site().name(), name -> new int[2]);
                tally[0] += found ? 1 : 0;
                tally[1]++;
            }
        }

        List<Double> shares = bySite.values().stream()
                .filter(tally -> tally[1] >= 50)
                .map(tally -> (double) tally[0] / tally[1])
                .sorted()
                .toList();
        assertThat(shares).hasSizeGreaterThan(5);
        assertThat(shares.stream().mapToDouble(share -> share).average().orElseThrow())
                .isBetween(0.70, 0.90);
        assertThat(shares.get(shares.size() - 1) - shares.get(0))
                .as("sites differ")
                .isGreaterThan(0.08);
    }

    @Test
    void birdsSeenAtOnceNameEachOther() {
        Map<UUID, Sighting> byId =
                SURVEY.sightings().stream().collect(Collectors.toMap(Sighting::id, Function.identity()));

        assertThat(SURVEY.sightings())
                .anySatisfy(sighting -> assertThat(sighting.simultaneousWith()).isNotEmpty())
                .allSatisfy(sighting -> assertThat(sighting.simultaneousWith())
                        .allSatisfy(other -> assertThat(
                                        requireNonNull(byId.get(other)).simultaneousWith())
                                .contains(sighting.id())));
    }

    @Test
    void aBirdTurnsBackAtTheEndOfAPairsWater() {
        List<Sighting> turned =
                SURVEY.sightings().stream().filter(Sighting::turnedBack).toList();

        assertThat(turned)
                .isNotEmpty()
                .allSatisfy(sighting -> assertThat(SURVEY.truth()
                                .pairs(Species.DIPPER, sighting.date().getYear()))
                        .anySatisfy(pair -> assertThat(
                                        sighting.flewTo().orElseThrow().distanceTo(end(pair, sighting)))
                                .isLessThanOrEqualTo(5)));
    }

    private static Chainage end(TruePair pair, Sighting sighting) {
        return sighting.flewTo().orElseThrow().compareTo(sighting.place().chainage()) >= 0
                ? pair.home().stretch().upper()
                : pair.home().stretch().lower();
    }

    @Test
    void eachFoundNestIsCheckedUntilItIsEmpty() {
        Map<UUID, List<NestCheck>> checks =
                SURVEY.nestChecks().stream().collect(Collectors.groupingBy(NestCheck::nestId));

        assertThat(SURVEY.nests()).isNotEmpty().allSatisfy(nest -> {
            NestCheck last = requireNonNull(checks.get(nest.id())).stream()
                    .max(Comparator.comparing(NestCheck::date))
                    .orElseThrow();
            assertThat(last.outcome()).isPresent();
        });
    }
}

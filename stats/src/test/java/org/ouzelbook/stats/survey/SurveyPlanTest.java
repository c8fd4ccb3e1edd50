package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.ouzelbook.stats.survey.Notebook.ARREL;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Answer;
import org.ouzelbook.stats.estimator.Reason;
import org.ouzelbook.stats.survey.SurveyPlan.Assumed;
import org.ouzelbook.stats.survey.SurveyPlan.Choice;
import org.ouzelbook.stats.survey.SurveyPlan.Way;
import org.ouzelbook.stats.survey.SurveyPlan.Window;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;

class SurveyPlanTest {
    /** Each year three walks of 10 km, on which each of some pairs, 2 km apart, was met every time. */
    private static Notebook notebook(int firstYear, int... pairs) {
        Notebook book = new Notebook();
        for (int i = 0; i < pairs.length; i++) {
            for (String day : List.of("-03-01", "-03-20", "-04-10")) {
                String visit = firstYear + i + day;
                book.visit(visit, visit, ARREL, 0, 10);
                for (int pair = 0; pair < pairs[i]; pair++) {
                    book.bird(visit + " " + pair, visit, 0.5 + 2 * pair).noted();
                }
            }
        }
        return book;
    }

    private static SurveyPlan plan(Notebook book, int from, int to, String today) {
        SurveyRecords records = book.records();
        List<TerritoryMap> maps = IntStream.rangeClosed(from, to)
                .mapToObj(year ->
                        TerritoryMap.of(records, Species.DIPPER, year, MapSettings.usualFor(Species.DIPPER), Water.ALL))
                .toList();
        LocalDate day = LocalDate.parse(today);
        return SurveyPlan.of(
                records,
                CountTrend.of(records, maps, Water.ALL, 0.95),
                maps,
                day.getYear(),
                day,
                0.95,
                Optional.empty(),
                Progress.NONE);
    }

    @Test
    void stopsAtWhateverStepItIsAskedTo() {
        Notebook book = notebook(2021, 4, 5, 3, 5, 4);
        SurveyRecords records = book.records();
        SeasonMaps seasons = SeasonMaps.of(records, Species.DIPPER, MapSettings.usualFor(Species.DIPPER));
        List<TerritoryMap> maps = seasons.all(List.of(2021, 2022, 2023, 2024, 2025), Water.ALL, Progress.NONE);
        CountTrend trend = CountTrend.of(records, maps, Water.ALL, 0.95);
        LocalDate day = LocalDate.of(2026, 2, 1);
        List<Long> steps = new ArrayList<>();
        SurveyPlan.of(records, trend, maps, 2026, day, 0.95, Optional.empty(), (done, total) -> steps.add(done));

        assertThat(steps).isSorted().hasSizeGreaterThan(4);
        for (int last = 0; last < steps.size(); last++) {
            AtomicInteger left = new AtomicInteger(last);
            assertThatThrownBy(() -> SurveyPlan.of(
                            records,
                            trend,
                            maps,
                            2026,
                            day,
                            0.95,
                            Optional.empty(),
                            (done, total) -> left.getAndDecrement() > 0))
                    .isInstanceOf(CancellationException.class);
        }
    }

    @Test
    void takesTheMapsThatAreThereAndMakesTheOthers() {
        SurveyRecords records = notebook(2021, 4, 5, 3, 5, 4).records();
        SeasonMaps none = SeasonMaps.of(records, Species.DIPPER, MapSettings.usualFor(Species.DIPPER));
        List<TerritoryMap> made = none.all(List.of(2022, 2023), Water.ALL, Progress.NONE);
        SeasonMaps some = new SeasonMaps(records, Species.DIPPER, none.settings(), Map.of(2022, made.get(0)));

        List<TerritoryMap> again = some.all(List.of(2022, 2023), Water.ALL, Progress.NONE);

        assertThat(again.get(0)).isSameAs(made.get(0));
        assertThat(again).isEqualTo(made);
        assertThat(some.all(List.of(2022), Water.ofRiver(ARREL.id()), Progress.NONE)
                        .get(0))
                .isNotSameAs(made.get(0));
    }

    @Test
    void beginsFromWhatWasCounted() {
        SurveyPlan plan = plan(notebook(2021, 4, 5, 3, 5, 4), 2021, 2025, "2026-02-01");

        assertThat(plan.countedSeasons()).isEqualTo(5);
        assertThat(plan.present().territories()).isCloseTo(4, within(1e-12));
        assertThat(plan.surveyedKm()).isCloseTo(10, within(1e-9));
        assertThat(plan.present().visits()).isEqualTo(3);
        assertThat(plan.choices()).extracting(Choice::way).containsExactly(Way.values());
    }

    /** Five seasons do not tell how much years differ; six and more do, and then nothing is assumed of it. */
    @Test
    void assumesTheNoiseOfYearsOnlyWhereTheBookDoesNotTellIt() {
        SurveyPlan few = plan(notebook(2021, 4, 5, 3, 5, 4), 2021, 2025, "2026-02-01");
        SurveyPlan enough = plan(notebook(2020, 1, 5, 1, 5, 1, 5), 2020, 2025, "2026-02-01");
        SurveyPlan even = plan(notebook(2020, 4, 4, 4, 4, 4, 4), 2020, 2025, "2026-02-01");

        assertThat(few.assumed()).contains(Assumed.YEAR_NOISE);
        assertThat(few.yearNoise()).isEqualTo(Answer.notEstimable(Reason.TOO_FEW_VALUES, 5, 6));
        assertThat(few.present().yearNoise()).isEqualTo(0.15);
        assertThat(enough.assumed()).doesNotContain(Assumed.YEAR_NOISE);
        assertThat(enough.present().yearNoise())
                .isEqualTo(enough.yearNoise().found().orElseThrow().sigma())
                .isGreaterThan(0.05);
        assertThat(even.present().yearNoise()).isEqualTo(0.05);
    }

    /** More of anything never shows less: rounds are the same for every plan. */
    @Test
    void moreEffortShowsMore() {
        List<Choice> choices =
                plan(notebook(2021, 5, 5, 4, 5, 5), 2021, 2025, "2026-02-01").choices();

        assertThat(choices.get(2).powerForHalving())
                .isGreaterThan(choices.get(0).powerForHalving());
        assertThat(choices.get(3).powerForHalving())
                .isGreaterThan(choices.get(0).powerForHalving());
    }

    @Test
    void plansVisitsInSeasonAsFarApartAsTheRulesAsk() {
        List<Window> windows =
                plan(notebook(2021, 4, 5, 3, 5, 4), 2021, 2025, "2026-03-10").calendar();

        assertThat(windows).isNotEmpty();
        assertThat(windows.get(0).from()).isEqualTo("2026-03-10");
        for (int i = 1; i < windows.size(); i++) {
            assertThat(windows.get(i).from())
                    .isAfterOrEqualTo(windows.get(i - 1).to().plusDays(10));
        }
        assertThat(windows.get(windows.size() - 1).to()).isEqualTo("2026-06-15");
        assertThat(plan(notebook(2021, 4, 5, 3, 5, 4), 2021, 2025, "2026-09-01").calendar())
                .isEmpty();
    }

    /** Only the upper half was walked this year, so a visit to the lower half is worth more. */
    @Test
    void oneMoreVisitIsWorthMostWhereFewestWere() {
        Notebook book = notebook(2021, 4, 5, 3, 5, 4)
                .visit("now1", "2026-02-20", ARREL, 5, 10)
                .visit("now2", "2026-03-05", ARREL, 5, 10);

        List<SurveyPlan.Worth> worth = plan(book, 2021, 2025, "2026-03-20").worthMaking();

        assertThat(worth.get(0).stretch().upper().km()).isLessThanOrEqualTo(5);
        assertThat(worth.get(0).visits()).isZero();
    }

    /** By the model too, and by more: the lower half has no visit yet; long water is told in parts of 3 km at most. */
    @Test
    void oneMoreVisitMakesTheModelSurestWhereFewestWere() {
        Notebook book = notebook(2021, 4, 5, 3, 5, 4)
                .visit("now1", "2026-02-20", ARREL, 5, 10)
                .visit("now2", "2026-03-05", ARREL, 5, 10);
        SurveyRecords records = book.records();
        MapSettings settings = MapSettings.usualFor(Species.DIPPER);
        List<TerritoryMap> maps = IntStream.rangeClosed(2021, 2025)
                .mapToObj(year -> TerritoryMap.of(records, Species.DIPPER, year, settings, Water.ALL))
                .toList();
        SurveyPlan plan = SurveyPlan.of(
                records,
                CountTrend.of(records, maps, Water.ALL, 0.95),
                maps,
                2026,
                LocalDate.parse("2026-03-20"),
                0.95,
                Optional.of(TerritoryModel.of(records, Species.DIPPER, settings, Progress.NONE)),
                Progress.NONE);
        SurveyPlan.Worth best = plan.worthMaking().get(0);

        assertThat(best.visits()).isZero();
        assertThat(plan.worthMaking())
                .allSatisfy(worth -> assertThat(worth.stretch().length()).isLessThanOrEqualTo(3000))
                .allSatisfy(worth -> assertThat(worth.surer().orElseThrow().deviationAfter())
                        .isLessThanOrEqualTo(worth.surer().orElseThrow().deviation()));
        assertThat(best.surer().orElseThrow().bits()).isPositive();
    }

    @Test
    void hasNoChoicesWhereNothingWasCounted() {
        SurveyPlan plan = plan(new Notebook().visit("V", "2025-03-01", ARREL, 0, 5), 2025, 2025, "2026-02-01");

        assertThat(plan.choices()).isEmpty();
        assertThat(plan.assumed()).containsExactlyInAnyOrder(Assumed.values());
    }
}

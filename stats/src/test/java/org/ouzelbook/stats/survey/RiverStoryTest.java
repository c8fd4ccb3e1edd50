package org.ouzelbook.stats.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.ouzelbook.stats.survey.Notebook.key;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.estimator.Estimate;
import org.ouzelbook.stats.survey.RiverStory.Basis;
import org.ouzelbook.stats.survey.RiverStory.Finding;
import org.ouzelbook.stats.survey.RiverStory.Topic;
import org.ouzelbook.tracker.domain.Activity;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.NestOutcome;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Species;

class RiverStoryTest {
    private static RiverStory story(Notebook book, Integer... seasons) {
        SurveyRecords records = book.records();
        List<TerritoryMap> maps = List.of(seasons).stream()
                .map(season -> TerritoryMap.of(
                        records, Species.DIPPER, season, MapSettings.usualFor(Species.DIPPER), Water.ALL))
                .toList();
        return RiverStory.of(
                records, maps, CountTrend.of(records, maps, Water.ALL, 0.95), Optional.empty(), Water.ALL, 0.95);
    }

    private static Finding first(RiverStory story, Topic topic) {
        return story.about(topic).get(0);
    }

    /** The season of {@link SixVisits}: three territories on 5 km, ten registrations in them. */
    @Test
    void beginsWithTheCountAndTheRecordsThatItRestsOn() {
        Finding count = story(SixVisits.notebook(), 2026).findings().get(0);

        assertThat(count.topic()).isEqualTo(Topic.COUNT);
        assertThat(count.basis()).isEqualTo(Basis.COUNTED);
        assertThat(count.sentence().key()).isEqualTo("story.countWithRange");
        assertThat(count.sentence().facts().get(0)).isEqualTo(3);
        assertThat(count.records()).hasSize(10).contains(key("a1"), key("c3")).doesNotContain(key("e1"));
        assertThat(count.caveat()).isPresent();
    }

    @Test
    void doesNotCallOneSeasonStable() {
        Finding direction = first(story(SixVisits.notebook(), 2026), Topic.DIRECTION);

        assertThat(direction.basis()).isEqualTo(Basis.JUDGED);
        assertThat(direction.sentence().facts().get(0))
                .isInstanceOfSatisfying(
                        Message.class, verdict -> assertThat(verdict.key()).isEqualTo("trend.verdict.fewSeasons"));
        assertThat(story(SixVisits.notebook(), 2026).about(Topic.CHANGE)).isEmpty();
        assertThat(story(SixVisits.notebook(), 2026).about(Topic.TREND)).isEmpty();
    }

    /** 3 territories against 2 on the same water: two-sided exact p is 1 (binomial, 5 trials, one half). */
    @Test
    void comparesWithTheSeasonBeforeExactly() {
        Notebook book = SixVisits.notebook();
        for (String date : List.of("2025-03-01", "2025-03-20", "2025-04-10")) {
            book.visit(date, date, Notebook.ARREL, 12, 17);
            book.bird("x" + date, date, 12.5).noted();
            book.bird("y" + date, date, 15.5).noted();
        }

        Finding change = first(story(book, 2025, 2026), Topic.CHANGE);

        assertThat(change.sentence().key()).isEqualTo("story.unchanged");
        assertThat(change.sentence().facts().get(0)).isEqualTo(2);
        assertThat((Double) change.sentence().facts().get(4)).isCloseTo(1, within(1e-12));
        assertThat(change.caveat()).contains(Message.of("story.caveat.neighbours"));
    }

    @Test
    void tellsThatTheSurveyorDecided() {
        RiverStory decided = story(
                SixVisits.notebook()
                        .decide(2026, DecisionKind.TOGETHER, 14.0, 15.2, "one pair")
                        .decide(2026, DecisionKind.NOTE, 12.5, 12.5, "nest seen"),
                2026);

        assertThat(first(decided, Topic.DECISIONS).sentence()).isEqualTo(Message.of("story.decisions", 1));
        assertThat(first(decided, Topic.COUNT).sentence().facts().get(0)).isEqualTo(2);
    }

    @Test
    void saysThatNothingWasCountedWhereNobodyWentTwice() {
        RiverStory empty = story(new Notebook().visit("V1", "2026-03-01", Notebook.ARREL, 12, 17), 2026);

        assertThat(empty.findings().get(0).sentence().key()).isEqualTo("story.noCount");
        assertThat(empty.about(Topic.DENSITY)).isEmpty();
        assertThat(empty.about(Topic.BREEDING)).isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RiverStory.of(
                        new Notebook().records(),
                        List.of(),
                        CountTrend.of(
                                SixVisits.notebook().records(),
                                List.of(SixVisits.notebook().map(2026)),
                                Water.ALL,
                                0.95),
                        Optional.empty(),
                        Water.ALL,
                        0.95));
    }

    /** Three attempts: one fledged, one lost, one unknown; figures by hand, days of exposure from the estimator’s own tests. */
    @Test
    void tellsHowNestsFaredWithoutSayingWhere() {
        Notebook book = SixVisits.notebook()
                .nest("N1", Notebook.ARREL, 12.44)
                .check("N1", "2026-04-01", NestStage.EGGS)
                .check("N1", "2026-04-11", NestStage.YOUNG)
                .check("N1", "2026-05-08", NestStage.EMPTY, Optional.of(NestOutcome.SUCCESS))
                .nest("N2", Notebook.ARREL, 14.27)
                .check("N2", "2026-04-01", NestStage.EGGS)
                .check("N2", "2026-04-11", NestStage.EMPTY, Optional.of(NestOutcome.FAILURE))
                .nest("N3", Notebook.ARREL, 16.31)
                .check("N3", "2026-04-01", NestStage.EGGS)
                .check("N3", "2026-04-06", NestStage.EGGS);

        List<Finding> nests = story(book, 2026).about(Topic.NESTS);

        assertThat(nests).hasSize(2);
        assertThat(nests.get(0).basis()).isEqualTo(Basis.COUNTED);
        assertThat(nests.get(0).sentence()).isEqualTo(Message.of("story.nests", 3, 1L, 1L, 1L));
        assertThat(nests.get(1).basis()).isEqualTo(Basis.ESTIMATED);
        assertThat(nests.get(1).caveat()).contains(Message.of("story.caveat.fewLosses", 1L));
        assertThat(nests).allSatisfy(finding -> {
            assertThat(finding.records()).isEmpty();
            assertThat(finding.sentence().facts().toString())
                    .doesNotContain("N1")
                    .doesNotContain("12.4")
                    .doesNotContain("14.2");
        });
    }

    @Test
    void tellsHowMuchOfTheWaterWasUsedWithoutTheSeasonsToCome() {
        Notebook book = SixVisits.notebook();
        for (String date : List.of("2027-03-01", "2027-03-20")) {
            book.visit(date, date, Notebook.ARREL, 12, 17);
        }
        Finding used = first(story(book, 2026), Topic.OCCUPANCY);
        SiteOccupancy alone = SiteOccupancy.of(
                book.records(),
                Species.DIPPER,
                List.of(2026),
                Water.ALL,
                SiteSettings.usualFor(Species.DIPPER),
                SiteOccupancy.Model.CONSTANT,
                false,
                0.95);

        assertThat(used.basis()).isEqualTo(Basis.ESTIMATED);
        assertThat(used.n()).isEqualTo(alone.visits().visits().size());
        assertThat(used.sentence().facts().subList(0, 3))
                .containsExactly(
                        alone.visits().naive().get(0).detected(),
                        alone.visits().naive().get(0).visited(),
                        500.0);
        Estimate share =
                alone.fit().found().orElseThrow().ofTheseSites().get(0).found().orElseThrow();
        assertThat(used.sentence().facts().subList(3, 6)).containsExactly(share.value(), share.lower(), share.upper());
        assertThat(used.caveat()).contains(Message.of("story.caveat.used"));
    }

    @Test
    void tellsTheWaterUsedByWhatTheSeasonsBeforeTellOfDetection() {
        Notebook book = SixVisits.notebook();
        for (String date : List.of("2025-03-01", "2025-03-20", "2025-04-10")) {
            book.visit(date, date, Notebook.ARREL, 12, 17);
        }
        for (String date : List.of("2025-03-01", "2025-04-10")) {
            book.bird("seen " + date, date, 13.2).doing(Activity.SINGING).noted();
        }
        SiteOccupancy both = SiteOccupancy.of(
                book.records(),
                Species.DIPPER,
                List.of(2025, 2026),
                Water.ALL,
                SiteSettings.usualFor(Species.DIPPER),
                SiteOccupancy.Model.CONSTANT,
                false,
                0.95);

        assertThat(first(story(book, 2025, 2026), Topic.OCCUPANCY)
                        .sentence()
                        .facts()
                        .get(3))
                .isEqualTo(both.fit()
                        .found()
                        .orElseThrow()
                        .ofTheseSites()
                        .get(1)
                        .found()
                        .orElseThrow()
                        .value());
    }

    @Test
    void tellsNothingOfRingedBirdsWhereThereAreNone() {
        assertThat(story(SixVisits.notebook(), 2026).about(Topic.SURVIVAL)).isEmpty();
    }
}

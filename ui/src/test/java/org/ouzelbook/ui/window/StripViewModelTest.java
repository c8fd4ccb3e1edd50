package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.river.RiverNetwork;
import org.ouzelbook.ui.strip.Across;
import org.ouzelbook.ui.strip.HitArea;
import org.ouzelbook.ui.strip.SampleRiver;
import org.ouzelbook.ui.strip.Shape;
import org.ouzelbook.ui.strip.StripDrawing;
import org.ouzelbook.ui.strip.StripView;
import org.ouzelbook.ui.strip.Subject;

class StripViewModelTest {
    private final StripViewModel strip = new StripViewModel();

    @BeforeEach
    void showTheSample() {
        strip.resize(1040, 600);
        strip.show(BookContents.of(SampleRiver.of2026().records(), Optional.empty(), Progress.NONE));
    }

    private StripDrawing drawing() {
        return strip.drawing().get().orElseThrow();
    }

    @Test
    void startsWithTheLastSeasonAndAllItsWater() {
        assertThat(strip.season().get()).isEqualTo(2026);
        assertThat(strip.allSeasons().get()).isFalse();
        assertThat(strip.isFitted()).isTrue();
        assertThat(drawing().width()).isEqualTo(1040);
    }

    @Test
    void zoomsAboutThePointerAndBackToAllWater() {
        double under = drawing().across().metres(400);

        strip.zoom(2, 400);

        assertThat(strip.isFitted()).isFalse();
        assertThat(drawing().across().metres(400)).isCloseTo(under, within(1e-6));

        strip.fit();

        assertThat(strip.isFitted()).isTrue();
    }

    @Test
    void leadsFromTheSeasonToAllSeasonsWhereItCannotGoFartherAndBackByAYear() {
        strip.zoom(0.5, 400);

        assertThat(strip.allSeasons().get()).isTrue();

        HitArea year = drawing().areas().stream()
                .filter(area -> area.subject() instanceof Subject.OfSeason)
                .findFirst()
                .orElseThrow();
        strip.openAt(5, year.area().y() + year.area().height() / 2);

        assertThat(strip.allSeasons().get()).isFalse();
        assertThat(strip.season().get()).isEqualTo(2026);
    }

    private Subject landmark(String name) {
        return drawing().areas().stream()
                .filter(area -> area.subject() instanceof Subject.OfLandmark
                        && area.name().equals(name))
                .map(HitArea::subject)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void goesIntoAPlaceAndOutAgain() {
        strip.select(Optional.of(landmark("Otter Stone")));
        strip.open();

        assertThat(strip.view()).isInstanceOfSatisfying(StripView.OnePlace.class, place -> {
            assertThat(place.name()).isEqualTo("Otter Stone");
            assertThat(place.around().contains(Chainage.ofKm(9.05))).isTrue();
        });
        assertThat(strip.path().get()).hasSize(3);
        assertThat(drawing().title()).contains("Otter Stone");

        strip.out();
        assertThat(strip.view()).isEqualTo(new StripView.OneSeason(2026));
        strip.out();
        assertThat(strip.allSeasons().get()).isTrue();
        strip.out();
        assertThat(strip.allSeasons().get()).isTrue();
    }

    @Test
    void goesFromPlaceToPlaceAlongTheRiver() {
        strip.select(Optional.of(landmark("Otter Stone")));
        strip.open();
        strip.later();

        assertThat(((StripView.OnePlace) strip.view()).name()).isEqualTo("Heron Wall");
        assertThat(strip.path().get()).hasSize(3);

        strip.earlier();
        strip.earlier();
        assertThat(((StripView.OnePlace) strip.view()).name()).isEqualTo("Long Weir");
    }

    /** A territory over the years; a year of it leads back to that season. */
    @Test
    void goesFromATerritoryToItsGroundOverTheYearsAndBackToAYear() {
        strip.select(Optional.of(new Subject.OfTerritory(2026, SampleRiver.ARREL.id(), "B")));
        strip.open();
        assertThat(strip.view()).isInstanceOf(StripView.OnePlace.class);

        strip.select(Optional.of(new Subject.OfSeason(2026, SampleRiver.ARREL.id())));
        strip.open();
        assertThat(strip.view()).isEqualTo(new StripView.OneSeason(2026));
    }

    @Test
    void givesTimeMoreRoomAndComesOutToAllSeasonsWhereItCannotTakeMore() {
        double before = drawing().height();

        assertThat(strip.stretch(2, 300)).isEqualTo(2);
        assertThat(drawing().height()).isGreaterThan(before * 1.5);

        strip.stretch(0.5, 300);
        strip.stretch(0.5, 300);
        assertThat(strip.allSeasons().get()).isTrue();
    }

    @Test
    void foldsATributaryAwayAndKeepsTheScaleOfTheRiver() {
        Across before = drawing().across();
        Subject sorn = new Subject.OfRiver(SampleRiver.SORN.id());
        strip.select(Optional.of(sorn));
        strip.open();

        assertThat(drawing().shapes())
                .noneMatch(shape ->
                        shape instanceof Shape.Label label && label.text().equals("Sorn Beck"))
                .anyMatch(shape ->
                        shape instanceof Shape.Label label && label.text().equals("Sorn Beck joins, folded"));
        assertThat(drawing().across()).isEqualTo(before);

        strip.open();
        assertThat(drawing().shapes())
                .anyMatch(shape ->
                        shape instanceof Shape.Label label && label.text().equals("Sorn Beck"));
    }

    @Test
    void drawsNothingAnewWhereSomethingIsChosen() {
        List<Shape> before = drawing().shapes();
        strip.select(Optional.of(new Subject.OfTerritory(2026, SampleRiver.ARREL.id(), "B")));

        assertThat(drawing().shapes()).isSameAs(before);
        assertThat(drawing().over()).isNotEmpty();
    }

    @Test
    void movesAlongTheWaterButNotBeyondIt() {
        strip.zoom(4);
        Across before = drawing().across();

        strip.pan(50);

        assertThat(drawing().across().from()).isCloseTo(before.from() + 50 * before.metresPerPixel(), within(1e-6));

        strip.pan(1e9);

        assertThat(drawing().across().to()).isLessThan(16_000);
    }

    @Test
    void selectsWhatLiesUnderAPointAndNothingOnBarePaper() {
        HitArea sighting = drawing().areas().stream()
                .filter(area -> area.subject() instanceof Subject.OfSighting)
                .findFirst()
                .orElseThrow();

        strip.selectAt(sighting.area().x() + 10, sighting.area().y() + 10);
        assertThat(strip.selected().get()).contains(sighting.subject());

        strip.selectAt(2, drawing().height() - 1);
        assertThat(strip.selected().get()).isEmpty();
    }

    @Test
    void stepsThroughTerritoriesFirstAndRoundAgain() {
        strip.selectNext(1);
        assertThat(strip.selected().get()).contains(new Subject.OfTerritory(2026, SampleRiver.ARREL.id(), "A"));

        strip.selectNext(-1);
        assertThat(strip.selected().get().orElseThrow())
                .isInstanceOfAny(Subject.OfLandmark.class, Subject.OfRiver.class);

        strip.selectNext(1);
        assertThat(strip.selected().get()).contains(new Subject.OfTerritory(2026, SampleRiver.ARREL.id(), "A"));
    }

    @Test
    void hasNothingToDrawInAnEmptyBook() {
        StripViewModel empty = new StripViewModel();
        SurveyRecords nothing = new SurveyRecords(
                RiverNetwork.of(List.of(), List.of()),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());

        empty.show(BookContents.of(nothing, Optional.empty(), Progress.NONE));
        empty.zoom(0.5);
        empty.pan(10);
        empty.earlier();
        empty.later();
        empty.open();
        empty.selectNext(1);

        assertThat(empty.drawing().get()).isEmpty();
    }
}

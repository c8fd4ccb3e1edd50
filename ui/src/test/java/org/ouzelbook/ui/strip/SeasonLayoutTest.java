package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Landmark;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Species;

class SeasonLayoutTest {
    private static final SampleRiver SAMPLE = SampleRiver.of2026();
    private static final SeasonScene SCENE = SeasonScene.of(SAMPLE.records(), SAMPLE.map2026());

    private static StripDrawing drawing(double width) {
        return RiverStrip.season(SCENE, Frame.fitting(SCENE.waters(), width, 600), Optional.empty());
    }

    private static <T extends Shape> List<T> all(StripDrawing drawing, Class<T> kind) {
        return drawing.shapes().stream()
                .flatMap(shape -> Stream.concat(
                        Stream.of(shape),
                        shape instanceof Shape.Mark mark
                                ? mark.parts().stream()
                                : shape instanceof Shape.Tablet tablet ? tablet.parts().stream() : Stream.of()))
                .filter(kind::isInstance)
                .map(kind::cast)
                .toList();
    }

    /** A laptop's pane, a narrow window, a wide screen. */
    @ParameterizedTest
    @ValueSource(doubles = {690, 1000, 1040, 2560})
    void noWordsOverlapAndAllStayOnThePaper(double width) {
        StripDrawing drawing = drawing(width);
        List<Shape.Label> labels = all(drawing, Shape.Label.class);
        Rect paper = new Rect(0, 0, drawing.width(), drawing.height());

        assertThat(labels).isNotEmpty();
        for (int i = 0; i < labels.size(); i++) {
            Rect bounds = labels.get(i).bounds();
            assertThat(bounds.x()).as(labels.get(i).text()).isGreaterThanOrEqualTo(0);
            assertThat(bounds.right()).as(labels.get(i).text()).isLessThanOrEqualTo(paper.right());
            assertThat(bounds.bottom()).as(labels.get(i).text()).isLessThanOrEqualTo(paper.bottom());
            for (int j = 0; j < i; j++) {
                assertThat(bounds.overlaps(labels.get(j).bounds()))
                        .as("%s over %s", labels.get(i).text(), labels.get(j).text())
                        .isFalse();
            }
        }
    }

    @Test
    void drawsEachSightingOnce() {
        StripDrawing drawing = drawing(1040);

        assertThat(all(drawing, Shape.Mark.class)).hasSize(SCENE.sightings().size());
        assertThat(drawing.areas().stream()
                        .filter(area -> area.subject() instanceof Subject.OfSighting)
                        .map(HitArea::subject))
                .doesNotHaveDuplicates()
                .hasSize(SCENE.sightings().size());
    }

    @Test
    void keepsEverySymbolApartFromTheOthersOfItsDay() {
        List<Shape.Mark> marks = all(drawing(1040), Shape.Mark.class);

        assertThat(marks.stream().map(Shape.Mark::centre)).doesNotHaveDuplicates();
    }

    @Test
    void hatchesExactlyTheWaterThatNobodyWalked() {
        StripDrawing drawing = drawing(1040);
        double metres = all(drawing, Shape.Hatch.class).stream()
                .mapToDouble(hatch -> hatch.area().width() * drawing.across().metresPerPixel())
                .sum();

        // 3.3 km on 30 March, 1.4 km on 11 May; on the beck all 2.6 km of the visit in spate, and 0.5 km on 12 May.
        assertThat(metres).isCloseTo(3300 + 1400 + 2600 + 500, within(1.0));
    }

    /** Where nests are is private: a book with nests draws the very same strip. */
    @Test
    void drawsNoNestAndNoNestSite() {
        SurveyRecords open = SAMPLE.records();
        Landmark bridge = open.landmarks().get(0);
        Landmark nestBridge = new Landmark(bridge.id(), bridge.name(), bridge.kind(), bridge.place(), List.of(), true);
        List<Landmark> landmarks = new ArrayList<>(open.landmarks());
        landmarks.set(0, nestBridge);
        Nest nest = new Nest(
                SampleRiver.key("nest"),
                "N1",
                open.landmarks().get(2).place(),
                Species.DIPPER,
                NestSite.ROCK,
                OptionalDouble.empty(),
                Optional.empty(),
                "");
        SurveyRecords nested = new SurveyRecords(
                open.rivers(),
                landmarks,
                List.of(),
                open.visits(),
                open.sightings(),
                List.of(nest),
                List.of(),
                List.of(),
                List.of(),
                List.of());
        SeasonScene scene = SeasonScene.of(nested, SAMPLE.map2026());

        assertThat(RiverStrip.season(scene, Frame.fitting(scene.waters(), 1040, 600), Optional.empty()))
                .isEqualTo(drawing(1040));
    }

    @Test
    void pointsOutTheChosenTerritoryAndWhatItHangsOn() {
        Subject chosen = new Subject.OfTerritory(2026, SampleRiver.ARREL.id(), "E");
        Frame frame = Frame.fitting(SCENE.waters(), 1040, 600);
        StripDrawing plain = RiverStrip.season(SCENE, frame, Optional.empty());
        StripDrawing pointedOut = RiverStrip.season(SCENE, frame, Optional.of(chosen));

        assertThat(pointedOut.shapes()).isEqualTo(plain.shapes());
        assertThat(plain.over()).isEmpty();
        assertThat(pointedOut.over()).hasSize(2).hasOnlyElementsOfTypes(Shape.Box.class, Shape.Disc.class);
    }

    @Test
    void leavesOutWhatLiesBeyondTheWaterInView() {
        Frame near = Frame.fitting(SCENE.waters(), 1040, 600).showing(8500, 9500);
        StripDrawing drawing = RiverStrip.season(SCENE, near, Optional.empty());
        long inView = SCENE.sightings().stream()
                .filter(one -> one.place().riverId().equals(SampleRiver.ARREL.id()))
                .mapToDouble(one -> one.place().chainage().metres())
                .filter(metres -> metres >= 8500 && metres <= 9500)
                .count();

        assertThat(all(drawing, Shape.Mark.class)).hasSize((int) inView);
        assertThat(all(drawing, Shape.Hatch.class)).isEmpty();
        assertThat(all(drawing, Shape.Band.class)).allSatisfy(band -> {
            assertThat(band.area().x()).isGreaterThanOrEqualTo(drawing.across().left());
            assertThat(band.area().right()).isLessThanOrEqualTo(drawing.across().right());
        });
    }

    @Test
    void answersWithTheSightingThatLiesOverATerritory() {
        StripDrawing drawing = drawing(1040);
        HitArea c1 = drawing.areas().stream()
                .filter(area -> area.subject().equals(new Subject.OfSighting(SampleRiver.key("c1"))))
                .findFirst()
                .orElseThrow();
        double x = c1.area().x() + c1.area().width() / 2;
        double y = c1.area().y() + c1.area().height() / 2;

        assertThat(HitIndex.of(drawing.areas()).at(x, y).map(HitArea::subject)).contains(c1.subject());
    }

    @Test
    void tellsTheWholeStripInWords() {
        assertThat(drawing(1040).description())
                .contains("Arrel Water, 2026: 6 territories (range 6 to 8) on 9.4 km walked, 6 visits that count.")
                .contains("Territory C, km 8.90–9.20, confirmed, 6 sightings.")
                .contains("Territory G, km 14.50–14.75, edge, 2 sightings.");
    }

    /** A hundred thousand symbols would be a black smear and slow: where they would overlap, one tablet tells how many. */
    @Test
    void drawsCrowdsWhereSightingsAreManyAndCountsEveryOneOfThem() {
        SurveyRecords records = SAMPLE.records();
        List<Sighting> many = new ArrayList<>();
        for (int i = 0; i < 2000; i++) {
            many.add(SampleRiver.moved(records.sightings().get(0), i, 6000 + i * 9400.0 / 2000));
        }
        SeasonScene crowded = new SeasonScene(
                SCENE.waters(),
                SCENE.landmarks(),
                SCENE.map(),
                SCENE.visits(),
                many,
                List.of(),
                Optional.empty(),
                List.of());
        StripDrawing drawing = RiverStrip.season(crowded, Frame.fitting(crowded.waters(), 1040, 600), Optional.empty());
        List<HitArea> crowds = drawing.areas().stream()
                .filter(area -> area.subject() instanceof Subject.OfCrowd)
                .toList();
        int told = all(drawing, Shape.Label.class).stream()
                .filter(label -> crowds.stream()
                        .anyMatch(crowd ->
                                crowd.area().contains(label.at().x(), label.at().y())))
                .mapToInt(label -> Integer.parseInt(label.text()))
                .sum();

        assertThat(all(drawing, Shape.Mark.class)).isEmpty();
        assertThat(told).isEqualTo(2000);
        for (int i = 1; i < crowds.size(); i++) {
            assertThat(crowds.get(i - 1).area().overlaps(crowds.get(i).area())).isFalse();
        }
    }

    private static SeasonScene scene(List<Landmark> landmarks) {
        return new SeasonScene(
                SCENE.waters(),
                landmarks,
                SCENE.map(),
                SCENE.visits(),
                SCENE.sightings(),
                List.of(),
                Optional.empty(),
                List.of());
    }

    @Test
    void cutsLongNamesSoThatTheOthersHaveRoomToo() {
        List<Landmark> longNamed = SCENE.landmarks().stream()
                .map(mark -> new Landmark(
                        mark.id(),
                        mark.name() + " behind the old footbridge of the Upper Farm on the left bank",
                        mark.kind(),
                        mark.place(),
                        mark.aliases(),
                        mark.nestSite()))
                .toList();
        SeasonScene scene = scene(longNamed);
        StripDrawing drawing = RiverStrip.season(scene, Frame.fitting(scene.waters(), 1400, 600), Optional.empty());

        assertThat(all(drawing, Shape.Label.class))
                .filteredOn(label -> label.text().endsWith("…"))
                .hasSizeGreaterThanOrEqualTo(3)
                .allSatisfy(label -> assertThat(label.bounds().width()).isLessThanOrEqualTo(171));
        assertThat(drawing.areas())
                .as("the whole name is still said")
                .anyMatch(area -> area.name().endsWith("on the left bank"));
    }

    @ParameterizedTest
    @ValueSource(doubles = {690, 1000, 1400, 2560})
    void writesNotWalkedWhereNoSightingStands(double width) {
        StripDrawing drawing = drawing(width);

        for (Shape.Label label : all(drawing, Shape.Label.class)) {
            if (label.text().equals("not walked")) {
                assertThat(all(drawing, Shape.Mark.class))
                        .noneMatch(mark -> label.bounds()
                                .contains(mark.centre().x(), mark.centre().y()));
            }
        }
    }

    /** The frame round a territory that is selected leaves its words readable. */
    @Test
    void framesATerritoryWithoutGoingThroughItsWords() {
        StripDrawing drawing = RiverStrip.season(
                SCENE,
                Frame.fitting(SCENE.waters(), 1040, 600),
                Optional.of(new Subject.OfTerritory(2026, SampleRiver.ARREL.id(), "B")));
        Rect frame = drawing.over().stream()
                .filter(Shape.Box.class::isInstance)
                .map(Shape.Box.class::cast)
                .map(Shape.Box::area)
                .max(Comparator.comparingDouble(Rect::height))
                .orElseThrow();

        assertThat(all(drawing, Shape.Label.class))
                .filteredOn(label ->
                        label.text().equals("confirmed") || label.text().equals("probable"))
                .isNotEmpty()
                .noneMatch(label -> label.bounds().overlaps(frame));
    }
}

package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SeasonsLayoutTest {
    private static final SampleRiver SAMPLE = SampleRiver.of2026();
    private static final SeasonsScene SCENE = SeasonsScene.of(SAMPLE.records(), SAMPLE.tenSeasons());

    private static StripDrawing drawing(double width) {
        return RiverStrip.seasons(SCENE, Frame.fitting(SCENE.waters(), width, 600), Optional.empty());
    }

    private static List<Shape.Label> labels(StripDrawing drawing) {
        return drawing.shapes().stream()
                .filter(Shape.Label.class::isInstance)
                .map(Shape.Label.class::cast)
                .toList();
    }

    @ParameterizedTest
    @ValueSource(doubles = {690, 1000, 1040, 2560})
    void noWordsOverlapAndAllStayOnThePaper(double width) {
        StripDrawing drawing = drawing(width);
        List<Shape.Label> labels = labels(drawing);

        for (int i = 0; i < labels.size(); i++) {
            Rect bounds = labels.get(i).bounds();
            assertThat(bounds.x()).isGreaterThanOrEqualTo(0);
            assertThat(bounds.right()).isLessThanOrEqualTo(drawing.width());
            assertThat(bounds.bottom()).isLessThanOrEqualTo(drawing.height());
            for (int j = 0; j < i; j++) {
                assertThat(bounds.overlaps(labels.get(j).bounds()))
                        .as("%s over %s", labels.get(i).text(), labels.get(j).text())
                        .isFalse();
            }
        }
    }

    @Test
    void hasARowForEverySeasonAndRiver() {
        List<String> words =
                labels(drawing(1040)).stream().map(Shape.Label::text).toList();

        for (int year = 2017; year <= 2026; year++) {
            assertThat(words.stream().filter(Integer.toString(year)::equals)).hasSize(2);
        }
    }

    /** What frames a chosen year begins at its figures, not at the edge of the paper. */
    @Test
    void answersForAYearFromItsFiguresOn() {
        StripDrawing drawing = drawing(1040);

        assertThat(drawing.areas().stream()
                        .filter(area -> area.subject() instanceof Subject.OfSeason)
                        .toList())
                .hasSize(20)
                .allSatisfy(area -> assertThat(area.area().x())
                        .isBetween(40.0, drawing.across().left()))
                .allSatisfy(area -> assertThat(area.area().right()).isEqualTo(drawing.width()));
    }

    /** What a laptop of 1366 by 768 leaves for the strip. */
    @Test
    void fitsTwoRiversAndTenSeasonsOnALaptop() {
        StripDrawing drawing = RiverStrip.seasons(SCENE, Frame.fitting(SCENE.waters(), 1038, 614), Optional.empty());

        assertThat(drawing.height()).isLessThanOrEqualTo(614);
    }

    @Test
    void neverTakesASeasonWithOneVisitForACount() {
        assertThat(labels(drawing(1040)).stream().map(Shape.Label::text)).contains("one visit: no count");
    }

    @Test
    void hatchesWhatWasNotWalkedInEachSeason() {
        StripDrawing drawing = drawing(1040);
        double metres = drawing.shapes().stream()
                .filter(Shape.Hatch.class::isInstance)
                .mapToDouble(shape ->
                        ((Shape.Hatch) shape).area().width() * drawing.across().metresPerPixel())
                .sum();

        // 1.5 km in 2019; 4.4 and 3.2 km in 2024; and on the beck all 2.6 km in the nine seasons before 2026.
        assertThat(metres).isCloseTo(1500 + 4400 + 3200 + 9 * 2600, within(2.0));
    }

    @Test
    void refusesSeasonsOfNoSpecies() {
        assertThatIllegalArgumentException().isThrownBy(() -> SeasonsScene.of(SAMPLE.records(), List.of()));
    }

    /** Colour alone tells nothing: each evidence class has a bar of its own height. */
    @Test
    void givesEachEvidenceClassAHeightOfItsOwn() {
        var heights = drawing(1040).shapes().stream()
                .filter(Shape.Band.class::isInstance)
                .map(Shape.Band.class::cast)
                .collect(Collectors.groupingBy(
                        Shape.Band::ink, Collectors.mapping(band -> band.area().height(), Collectors.toSet())));

        assertThat(heights).hasSizeGreaterThanOrEqualTo(2);
        assertThat(heights.values()).allSatisfy(of -> assertThat(of).hasSize(1)).doesNotHaveDuplicates();
    }
}

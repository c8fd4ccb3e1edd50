package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.survey.ModelCount;
import org.ouzelbook.tracker.domain.Stretch;
import org.ouzelbook.ui.app.ModelShading;

/** A season with what the model makes of it: fading ends, probabilities, room for a pair nobody found. */
class ShadingTest {
    private static final SampleRiver SAMPLE = SampleRiver.of2026();
    private static final ModelShading SHADING = new ModelShading(
            2026,
            List.of(new ModelShading.OnRiver(
                    SampleRiver.ARREL.id(),
                    0.9,
                    6.4,
                    6,
                    8,
                    Map.of("C", new ModelShading.Ground(0.99, Stretch.ofKm(8.5, 8.8), Stretch.ofKm(9.3, 9.8))),
                    List.of(new ModelCount.Room(Stretch.ofKm(12.0, 12.4), 0.17)))));

    private static StripDrawing drawing() {
        SeasonScene scene = SeasonScene.of(SAMPLE.records(), SAMPLE.map2026()).shaded(Optional.of(SHADING));
        return RiverStrip.season(scene, Frame.fitting(scene.waters(), 1040, 600), Optional.empty());
    }

    @Test
    void fadesATerritoryOverTheWaterOnWhichItsEndsLie() {
        StripDrawing drawing = drawing();
        Across across = drawing.across();

        assertThat(drawing.shapes())
                .filteredOn(shape ->
                        shape instanceof Shape.Band band && Math.abs(band.area().x() - across.x(8500)) < 0.01)
                .singleElement()
                .satisfies(shape -> {
                    Shape.Band band = (Shape.Band) shape;
                    assertThat(band.area().right()).isCloseTo(across.x(9800), within(0.01));
                    assertThat(band.fadeLeft()).isCloseTo(across.x(8800) - across.x(8500), within(0.01));
                    assertThat(band.fadeRight()).isCloseTo(across.x(9800) - across.x(9300), within(0.01));
                });
    }

    @Test
    void dotsTheRoomForAPairThatNobodyFoundAndAnswersThere() {
        assertThat(drawing().areas())
                .filteredOn(area -> area.subject() instanceof Subject.OfRoom)
                .singleElement()
                .satisfies(area -> assertThat(area.name())
                        .isEqualTo("A pair that no visit found would fit at km 12.00–12.40 (17%)"));
    }

    @Test
    void saysTheModelsNumberInWords() {
        assertThat(drawing().description())
                .contains("By the model 6.4 territories (6 to 8 with probability 90%).")
                .contains("by the model 99%, lower end km 8.50–8.80, upper end km 9.30–9.80");
    }
}

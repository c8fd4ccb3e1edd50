package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.domain.Stretch;

class PlaceLayoutTest {
    private static final SampleRiver SAMPLE = SampleRiver.of2026();
    private static final StripView.OnePlace STONE =
            new StripView.OnePlace(SampleRiver.ARREL.id(), Stretch.ofKm(8.9, 9.2), "Otter Stone");
    private static final PlaceScene SCENE = PlaceScene.of(SAMPLE.records(), Species.DIPPER, STONE, false);

    private static StripDrawing drawing(double width) {
        ReadyStrip strip = RiverStrip.ready(SCENE);
        return strip.drawing(strip.farthest(width, 500));
    }

    /** By hand from the sample's own list of sightings and visits, not from the scene. */
    @Test
    void holdsWhatWasSeenThereAndEveryVisitThatCameBy() {
        long seen = SAMPLE.records().sightings().stream()
                .filter(one -> one.place().riverId().equals(SampleRiver.ARREL.id()))
                .filter(one -> one.place().chainage().km() >= 8.9
                        && one.place().chainage().km() <= 9.2)
                .count();
        long cameBy = SAMPLE.records().visits().stream()
                .filter(visit -> visit.riverId().equals(SampleRiver.ARREL.id()) && visit.effective())
                .filter(visit -> visit.walked().orElseThrow().lower().km() <= 9.05
                        && visit.walked().orElseThrow().upper().km() >= 9.05)
                .count();

        assertThat(SCENE.sightings()).hasSize((int) seen).isNotEmpty();
        assertThat(SCENE.passing()).hasSize((int) cameBy).isNotEmpty();
    }

    @Test
    void hatchesAYearInWhichNobodyCameBy() {
        List<Shape> hatches = drawing(1000).shapes().stream()
                .filter(Shape.Hatch.class::isInstance)
                .toList();
        long without = SCENE.years().stream()
                .filter(year -> SCENE.passingIn(year).isEmpty())
                .count();

        assertThat(hatches).hasSize((int) without);
    }

    @Test
    void noWordsOverlapAndAllStayOnThePaper() {
        for (double width : new double[] {690, 1040, 2560}) {
            StripDrawing drawing = drawing(width);
            List<Shape.Label> labels = drawing.shapes().stream()
                    .filter(Shape.Label.class::isInstance)
                    .map(Shape.Label.class::cast)
                    .toList();
            for (int i = 0; i < labels.size(); i++) {
                Rect bounds = labels.get(i).bounds();
                assertThat(bounds.x()).isGreaterThanOrEqualTo(0);
                assertThat(bounds.right()).isLessThanOrEqualTo(drawing.width());
                for (int j = 0; j < i; j++) {
                    assertThat(bounds.overlaps(labels.get(j).bounds()))
                            .as(
                                    "%s over %s",
                                    labels.get(i).text(), labels.get(j).text())
                            .isFalse();
                }
            }
        }
    }

    @Test
    void tellsEveryYearInWords() {
        assertThat(drawing(1000).title()).isEqualTo("Otter Stone, Arrel Water, km 8.90–9.20: dipper over the years");
        assertThat(drawing(1000).description()).contains("2026: 6 visits came by, ");
    }
}

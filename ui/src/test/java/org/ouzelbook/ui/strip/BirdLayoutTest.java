package org.ouzelbook.ui.strip;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Sighting;

class BirdLayoutTest {
    private static final SampleRiver SAMPLE = SampleRiver.of2026();
    private static final RingedBird RED = bird("Red", "R", "mG");
    private static final RingedBird WHITE = bird("White", "W", "mG");

    private static RingedBird bird(String label, String left, String right) {
        return new RingedBird(
                SampleRiver.key(label),
                label,
                "",
                left,
                "",
                right,
                "",
                Sex.UNKNOWN,
                Optional.empty(),
                Optional.of(LocalDate.of(2018, 3, 1)),
                "");
    }

    private static Sighting read(Sighting seen, String rings) {
        return new Sighting(
                seen.id(),
                seen.label(),
                seen.visitId(),
                seen.date(),
                seen.time(),
                seen.place(),
                seen.species(),
                seen.count(),
                seen.age(),
                seen.sex(),
                seen.activities(),
                seen.breedingCode(),
                rings,
                seen.simultaneousWith(),
                seen.flewTo(),
                seen.turnedBack(),
                seen.observer(),
                seen.note());
    }

    private static SurveyRecords records() {
        SurveyRecords open = SAMPLE.records();
        List<Sighting> sightings = new ArrayList<>(open.sightings());
        sightings.set(0, read(sightings.get(0), "R/mG"));
        sightings.set(3, read(sightings.get(3), "R/mG"));
        // The left leg was not seen: either bird.
        sightings.set(5, read(sightings.get(5), "?/mG"));
        sightings.set(6, read(sightings.get(6), "W/mG"));
        return new SurveyRecords(
                open.rivers(),
                open.landmarks(),
                open.reaches(),
                open.visits(),
                sightings,
                List.of(),
                List.of(),
                List.of(RED, WHITE),
                List.of(),
                List.of());
    }

    private static final BirdScene SCENE = BirdScene.of(records(), RED, SAMPLE.tenSeasons());

    @Test
    void tellsCertainReadingsFromThoseThatFitOthersToo() {
        assertThat(SCENE.readings()).hasSize(3);
        assertThat(SCENE.readings().stream().filter(BirdScene.Reading::certain)).hasSize(2);
        assertThat(BirdScene.mostRead(records())).contains(RED);
    }

    @Test
    void drawsEachReadingAndALineOnlyBetweenCertainOnes() {
        ReadyStrip strip = RiverStrip.ready(SCENE);
        StripDrawing drawing = strip.drawing(strip.farthest(1040, 600));

        assertThat(drawing.shapes().stream().filter(Shape.Mark.class::isInstance))
                .hasSize(3);
        assertThat(drawing.shapes())
                .filteredOn(shape ->
                        shape instanceof Shape.Line line && line.pencil().ink() == Ink.CONFIRMED)
                .singleElement()
                .satisfies(shape ->
                        assertThat(((Shape.Line) shape).pencil().dotted()).isFalse());
        assertThat(drawing.shapes())
                .filteredOn(shape ->
                        shape instanceof Shape.Label label && label.text().equals("?"))
                .hasSize(1);
    }

    @Test
    void tellsTheLifeInWords() {
        ReadyStrip strip = RiverStrip.ready(SCENE);

        assertThat(strip.drawing(strip.farthest(1040, 600)).description())
                .startsWith("Ringed 1 Mar 2018.")
                .contains("; the reading fits other birds too.");
    }
}

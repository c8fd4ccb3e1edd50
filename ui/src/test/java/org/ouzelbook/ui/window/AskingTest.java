package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.ouzelbook.stats.survey.SurveyRecords;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.KickSample;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.RingedBird;
import org.ouzelbook.tracker.domain.Sex;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.ui.app.ShadeByModel;
import org.ouzelbook.ui.strip.BirdScene;
import org.ouzelbook.ui.strip.HitArea;
import org.ouzelbook.ui.strip.HitIndex;
import org.ouzelbook.ui.strip.Rect;
import org.ouzelbook.ui.strip.SampleRiver;
import org.ouzelbook.ui.strip.Shape;
import org.ouzelbook.ui.strip.StripDrawing;
import org.ouzelbook.ui.strip.StripView;
import org.ouzelbook.ui.strip.Subject;

/** Everything on the strip can be asked what it is, by the pointer and by keys, in every view. */
class AskingTest {
    private final StripViewModel strip = new StripViewModel();
    private final SurveyRecords records = withEverything(SampleRiver.of2026().records());
    private final BookContents contents = BookContents.of(records, Optional.empty(), Progress.NONE);

    private static Place place(double km) {
        return new Place(SampleRiver.ARREL.id(), Chainage.ofKm(km), Bank.LEFT, 20, 1);
    }

    /** The sample river with a kick sample, a nest that was looked at, and a ringed bird. */
    private static SurveyRecords withEverything(SurveyRecords plain) {
        UUID nest = SampleRiver.key("nest");
        KickSample sample = new KickSample(
                SampleRiver.key("sample"),
                "K1",
                LocalDate.of(2026, 4, 2),
                place(9.05),
                OptionalDouble.of(3),
                "kick",
                "HB",
                "",
                List.of(new KickSample.Taxon("Baetidae", "40"), new KickSample.Taxon("Gammaridae", "B")));
        RingedBird bird = new RingedBird(
                SampleRiver.key("bird"),
                "D1",
                "",
                "red",
                "",
                "metal",
                "",
                Sex.FEMALE,
                Optional.empty(),
                Optional.empty(),
                "");
        return new SurveyRecords(
                plain.rivers(),
                plain.landmarks(),
                plain.reaches(),
                plain.visits(),
                plain.sightings(),
                List.of(new Nest(
                        nest,
                        "N1",
                        place(9.05),
                        Species.DIPPER,
                        NestSite.BRIDGE,
                        OptionalDouble.empty(),
                        Optional.of(LocalDate.of(2026, 4, 1)),
                        "")),
                List.of(),
                List.of(bird),
                List.of(sample),
                plain.decisions());
    }

    @BeforeEach
    void showTheSample() {
        strip.resize(1040, 600);
        strip.show(contents);
        strip.shade(ShadeByModel.of(records, contents.maps().values(), Progress.NONE));
        strip.switchNests();
    }

    private StripDrawing drawing() {
        return strip.drawing().get().orElseThrow();
    }

    private Optional<Explanation> told(Subject subject) {
        Subject whole = subject instanceof Subject.OfEnd end
                ? new Subject.OfTerritory(end.season(), end.riverId(), end.id())
                : subject;
        return new WhyWords(contents, strip::shading, year -> Optional.empty(), true).of(whole);
    }

    private void inEveryView(Consumer<String> look) {
        look.accept("one season");
        strip.showAllSeasons();
        look.accept("all seasons");
        strip.go(StripSteps.into(
                        contents, new StripView.AllSeasons(), new Subject.OfLandmark(SampleRiver.key("Otter Stone")))
                .orElseThrow());
        assertThat(strip.view()).isInstanceOf(StripView.OnePlace.class);
        look.accept("one place");
        strip.showBirds();
        assertThat(strip.view()).isInstanceOf(StripView.OneBird.class);
        look.accept("one bird");
    }

    @Test
    void tellsWhatEveryPlaceThatAnswersIs() {
        Set<Class<?>> kinds = new LinkedHashSet<>();
        inEveryView(view -> {
            for (HitArea area : drawing().areas()) {
                assertThat(area.name()).as("%s, %s", view, area).isNotBlank();
                Explanation told = told(area.subject())
                        .orElseThrow(() -> new AssertionError(view + ": nothing is told of " + area));
                String words = told.title()
                        + told.sections().stream()
                                .flatMap(section -> section.sentences().stream())
                                .collect(Collectors.joining("\n"));
                assertThat(words).as("%s, %s", view, area).isNotBlank().doesNotContain("NaN");
                kinds.add(area.subject().getClass());
            }
        });
        assertThat(kinds)
                .contains(
                        Subject.OfTerritory.class,
                        Subject.OfEnd.class,
                        Subject.OfSighting.class,
                        Subject.OfVisit.class,
                        Subject.OfSeason.class,
                        Subject.OfLandmark.class,
                        Subject.OfRiver.class,
                        Subject.OfUnwalked.class,
                        Subject.OfSample.class,
                        Subject.OfNest.class);
    }

    @Test
    void answersWhereASymbolAHatchingOrABandIsDrawn() {
        inEveryView(view -> {
            HitIndex index = HitIndex.of(drawing().areas());
            for (Shape shape : drawing().shapes()) {
                if (shape instanceof Shape.Mark mark) {
                    assertThat(index.at(mark.centre().x(), mark.centre().y()))
                            .as("%s, %s", view, mark)
                            .isPresent();
                } else if (shape instanceof Shape.Hatch hatch) {
                    answers(view, index, hatch.area());
                } else if (shape instanceof Shape.Band band) {
                    answers(view, index, band.area());
                }
            }
        });
    }

    private static void answers(String view, HitIndex index, Rect area) {
        assertThat(index.at(area.x() + area.width() / 2, area.y() + area.height() / 2))
                .as("%s, %s", view, area)
                .isPresent();
    }

    @Test
    void tellsWhatAKickSampleHoldsAndWhatItMayBeSetBeside() {
        Subject sample = drawing().areas().stream()
                .map(HitArea::subject)
                .filter(Subject.OfSample.class::isInstance)
                .findFirst()
                .orElseThrow();

        List<String> sentences = told(sample).orElseThrow().sections().stream()
                .flatMap(section -> section.sentences().stream())
                .toList();

        assertThat(sentences).anyMatch(line -> line.startsWith("BMWP score"));
        assertThat(sentences).anyMatch(line -> line.contains("dippers eat"));
        assertThat(sentences).anyMatch(line -> line.contains("the same minutes and method"));
    }

    @Test
    void reachesEverythingByKeys() {
        Set<Subject> all = drawing().areas().stream()
                .map(HitArea::subject)
                .filter(subject -> !(subject instanceof Subject.OfEnd))
                .collect(Collectors.toSet());
        Set<Subject> reached = new LinkedHashSet<>();
        for (int i = 0; i < all.size(); i++) {
            strip.selectNext(1);
            reached.add(strip.selected().get().orElseThrow());
        }
        assertThat(reached).isEqualTo(all);
    }

    /** Two rivers: a reading that fits others too may lie on the one that is not drawn. */
    @Test
    void namesTheRiverOfEachReadingOfABird() {
        BirdScene plain = BirdScene.of(
                records,
                records.ringedBirds().get(0),
                List.copyOf(contents.maps().values()));
        BirdScene read = new BirdScene(
                plain.waters(),
                plain.landmarks(),
                plain.bird(),
                List.of(new BirdScene.Reading(records.sightings().get(0), false)),
                plain.maps());

        assertThat(new WhyMarks(contents)
                        .bird(read)
                        .sections()
                        .get(1)
                        .sentences()
                        .get(0))
                .contains(" · Arrel Water · ")
                .endsWith("fits other birds too");
    }
}

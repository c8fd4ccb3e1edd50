package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.SightingQuery;
import org.ouzelbook.ui.app.BookCounts;
import org.ouzelbook.ui.app.DensityAnswer;
import org.ouzelbook.ui.strip.SampleRiver;
import org.ouzelbook.ui.strip.Subject;

/** The window without a window: its view-models on a real book. */
class BookViewModelTest {
    @TempDir
    private Path folder;

    private Book book;
    private BookViewModel viewModel;

    @BeforeEach
    void openABook() {
        book = SampleBook.create(folder.resolve("arrel"));
        viewModel = new BookViewModel(book, new DirectWork(), "HB");
        viewModel.strip().resize(1040, 600);
        viewModel.read(Optional.empty());
    }

    @AfterEach
    void closeIt() {
        book.close();
    }

    private String told() {
        Explanation explanation = viewModel.explanation().get().orElseThrow();
        return explanation.title() + "\n" + explanation.subtitle() + "\n"
                + explanation.sections().stream()
                        .map(section -> section.heading() + "\n" + String.join("\n", section.sentences()))
                        .collect(Collectors.joining("\n"));
    }

    private void select(String sighting) {
        viewModel.strip().select(Optional.of(new Subject.OfSighting(SampleRiver.key(sighting))));
    }

    private int sightings() {
        return book.read(view -> view.sightings(SightingQuery.ALL)).size();
    }

    @Test
    void saysTheFindingFirst() {
        Finding finding = viewModel.finding().get().orElseThrow();

        assertThat(finding.when()).isEqualTo("2026");
        assertThat(finding.what()).isEqualTo("9 visits · 12.0 km walked");
        assertThat(finding.count()).endsWith("territories");
        assertThat(finding.range()).endsWith("per km");
    }

    @Test
    void putsTheModelFirstOnceItHasCountedAndKeepsItWhileItCountsAnew() {
        Finding byRules = viewModel.finding().get().orElseThrow();
        assertThat(byRules.beside()).isEqualTo("by the mapping rules · the model is still counting");
        ModelCounting counting = new ModelCounting(viewModel, new DirectWork(), () -> {});
        assertThat(counting).isNotNull();

        viewModel.model().countAgain();

        DensityAnswer asCommand = new BookCounts(
                        viewModel.contents().get().orElseThrow().mapped(),
                        viewModel.model().counts().get().orElseThrow())
                .density(Progress.NONE);
        double expected = 0;
        double km = 0;
        for (DensityAnswer.Row row : asCommand.rows()) {
            expected += row.byModel().orElseThrow().perKm() * row.surveyedKm();
            km += row.surveyedKm();
        }
        Finding byModel = viewModel.finding().get().orElseThrow();
        assertThat(byModel.count()).isEqualTo(Math.round(expected) + " territories");
        assertThat(byModel.range()).endsWith(String.format(Locale.ROOT, " · %.2f per km", expected / km));
        assertThat(byModel.beside())
                .startsWith("by the model,")
                .endsWith("by the mapping rules "
                        + byRules.count().replace("territories", "")
                        + byRules.range().replaceAll(" ·.*", ""));

        viewModel.model().about(viewModel.species());
        Finding meanwhile = Finding.of(
                viewModel.strip().map().orElseThrow(), viewModel.model().told());
        assertThat(meanwhile.count() + meanwhile.range()).isEqualTo(byModel.count() + byModel.range());
        assertThat(meanwhile.beside()).startsWith("by the model before the last change, counting anew");

        viewModel.model().about(Species.KINGFISHER);
        assertThat(viewModel.model().told().counts()).isEmpty();
    }

    @Test
    void saysThatTheModelHasNotCountedWhereSomebodyStoppedIt() {
        viewModel.model().stop();

        assertThat(viewModel.finding().get().orElseThrow().beside()).endsWith("has not counted");
    }

    @Test
    void stopsTheModelAlsoBetweenItsLookingAndItsCounting() {
        AtomicBoolean goesOn = new AtomicBoolean(true);
        Work stoppedWhenDone = new Work() {
            @Override
            public <T> void start(
                    String what, Function<Progress, T> job, Consumer<T> done, Consumer<Throwable> failed) {
                T result = job.apply((part, whole) -> goesOn.get());
                goesOn.set(false);
                done.accept(result);
            }
        };
        assertThat(new ModelCounting(viewModel, stoppedWhenDone, () -> {})).isNotNull();

        viewModel.model().countAgain();

        assertThat(viewModel.model().counts().get()).isEmpty();
        assertThat(viewModel.finding().get().orElseThrow().beside()).endsWith("has not counted");
    }

    @Test
    void tellsWhyATerritoryStandsAndWhyItIsNotPartOfItsNeighbour() {
        viewModel.strip().select(Optional.of(new Subject.OfTerritory(2026, SampleRiver.ARREL.id(), "B")));

        assertThat(told())
                .startsWith("Territory B")
                .contains("Why it is not part of its neighbour")
                .contains("seen at once on 16 Mar")
                .contains("What it hangs on")
                .contains("16 Mar 2026, km 8.00, 2 birds · b2");
    }

    @Test
    void tellsASightingAsItStandsInTheNotebook() {
        select("c1");

        assertThat(told())
                .contains("Sighting c1")
                .contains("16 Mar 2026 · Arrel Water, km 8.90 ± 20 m")
                .contains("calling")
                .contains("At the same time as another bird: 16 Mar 2026, km 8.00, 2 birds · b2.")
                .contains("Seen by HB on visit Arrel Water 2026-03-16.")
                .contains("Territory C");
    }

    @Test
    void tellsWhereABirdTurnedBack() {
        select("b3");

        assertThat(told()).contains("turned back at km 8.55");
    }

    @Test
    void tellsAVisitWithItsStretchAndWhatItDidNotFind() {
        viewModel.strip().select(Optional.of(new Subject.OfVisit(SampleRiver.key("Sorn Beck2026-04-14"))));

        assertThat(told())
                .contains("Visit of 14 Apr 2026")
                .contains("Not effective")
                .contains("dipper: none.");
    }

    @Test
    void logsALineUndoesItAndDoesItAgain() {
        int before = sightings();
        viewModel
                .notebook()
                .visit()
                .set(viewModel.notebook().visits().get().stream()
                        .filter(visit -> visit.date().equals(LocalDate.of(2026, 5, 11)))
                        .findFirst());
        viewModel.notebook().line().set("otter stone 0712 2 song");

        assertThat(viewModel.notebook().clear().get()).isTrue();
        assertThat(viewModel.notebook().readBack().get()).contains("9.05").contains("07:12");

        viewModel.notebook().save();

        assertThat(sightings()).isEqualTo(before + 1);
        assertThat(viewModel.notebook().line().get()).isEmpty();
        assertThat(viewModel.notice().get()).startsWith("Saved:");

        viewModel.undo();

        assertThat(sightings()).isEqualTo(before);
        assertThat(viewModel.notice().get()).isNotBlank().doesNotStartWith("Saved:");

        viewModel.redo();

        assertThat(sightings()).isEqualTo(before + 1);
    }

    @Test
    void writesIntoTheVisitThatALineHasJustOpened() {
        viewModel.notebook().line().set("visit 25 may 2026 mill bridge to otter stone, HB, looking for dipper");
        viewModel.notebook().save();

        assertThat(viewModel.notebook().visit().get().orElseThrow().date()).isEqualTo(LocalDate.of(2026, 5, 25));

        viewModel.notebook().line().set("otter stone song");
        viewModel.notebook().save();
        viewModel
                .strip()
                .select(Optional.of(new Subject.OfVisit(
                        viewModel.notebook().visit().get().orElseThrow().id())));

        assertThat(told()).contains("Visit of 25 May 2026").contains("dipper: 1 sighting.");
    }

    @Test
    void asksAboutAnUnclearLineAndSavesNothingOfIt() {
        int before = sightings();
        viewModel.notebook().line().set("zorn stone 2 song");

        assertThat(viewModel.notebook().clear().get()).isFalse();
        assertThat(viewModel.notebook().readBack().get()).isNotBlank();

        viewModel.notebook().save();

        assertThat(sightings()).isEqualTo(before);
        assertThat(viewModel.notebook().line().get()).isEqualTo("zorn stone 2 song");
    }

    @Test
    void saysThatThereIsNothingLeftToDoAgain() {
        viewModel.redo();

        assertThat(viewModel.notice().get()).isNotBlank().doesNotContain("Exception");
    }

    @Test
    void tellsARangeOnlyWhereThereIsOne() {
        assertThat(Finding.range(11, 13, 0.49)).isEqualTo("(11–13) · 0.49 per km");
        assertThat(Finding.range(12, 12, 0.49)).isEqualTo("0.49 per km");
    }
}

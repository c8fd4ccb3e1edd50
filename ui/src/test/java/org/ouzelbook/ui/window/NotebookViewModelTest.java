package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.notebook.Completion;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.SightingQuery;
import org.ouzelbook.ui.strip.HitArea;
import org.ouzelbook.ui.strip.SampleRiver;
import org.ouzelbook.ui.strip.Subject;

/** An evening at the notebook: a visit typed in, corrected, and closed, without a window. */
class NotebookViewModelTest {
    @TempDir
    private Path folder;

    private Book book;
    private BookViewModel viewModel;
    private NotebookViewModel notebook;

    @BeforeEach
    void openABook() {
        book = SampleBook.create(folder.resolve("arrel"));
        viewModel = new BookViewModel(book, new DirectWork(), "HB");
        viewModel.strip().resize(1040, 600);
        viewModel.read(Optional.empty());
        notebook = viewModel.notebook();
    }

    @AfterEach
    void closeIt() {
        book.close();
    }

    private void type(String text) {
        notebook.line().set(text);
        notebook.cursor().set(text.length());
        notebook.suggest();
    }

    private void enter(String text) {
        type(text);
        assertThat(notebook.clear().get()).as(notebook.readBack().get()).isTrue();
        notebook.save();
    }

    private List<String> offered() {
        return notebook.suggestions().list().get().stream()
                .map(Completion.Suggestion::text)
                .toList();
    }

    private List<Sighting> sightingsOf(LocalDate date) {
        return book.read(view -> view.sightings(SightingQuery.ALL.between(date, date)));
    }

    private Optional<Sighting> kept(Sighting sighting) {
        return book.read(view -> view.sighting(sighting.id()));
    }

    private Visit visitOf(LocalDate date) {
        return book.read(view -> view.visits(date, date)).get(0);
    }

    @Test
    void remindsOfAVisitThatNobodyClosed() {
        enter("visit 24 may 2026 mill bridge to otter stone, 0700, HB, looking for dipper");

        BookViewModel tomorrow = new BookViewModel(book, new DirectWork(), "HB");
        tomorrow.read(Optional.empty());
        assertThat(tomorrow.notice().get())
                .contains("24 May 2026")
                .contains("Arrel Water")
                .contains("end 0935");

        enter("end 0935");
        BookViewModel later = new BookViewModel(book, new DirectWork(), "HB");
        later.read(Optional.empty());
        assertThat(later.notice().get()).isBlank();
    }

    @Test
    void offersWhatMayBeMeantAndWritesIt() {
        type("ott");

        assertThat(offered()).first().isEqualTo("Otter Stone");
        assertThat(notebook.take()).isTrue();
        assertThat(notebook.line().get()).isEqualTo("Otter Stone ");
        assertThat(notebook.cursor().get()).isEqualTo("Otter Stone ".length());
        assertThat(notebook.suggestions().list().get()).isEmpty();
        assertThat(notebook.take()).isFalse();
    }

    @Test
    void pointsToASuggestionByTheArrows() {
        type("8.4 fl");
        String second = offered().get(1);
        notebook.suggestions().point(1);
        notebook.suggestions().point(1);

        assertThat(notebook.suggestions().isPointed()).isTrue();
        notebook.take();

        assertThat(notebook.line().get()).startsWith("8.4 " + second.strip());
    }

    @Test
    void typesAWholeVisitWithWhatItDidNotFind() {
        LocalDate day = LocalDate.of(2026, 5, 24);
        enter("visit 24 may 2026 mill bridge to otter stone, 0700, HB, looking for dipper kingfisher, level low");
        enter("mill bridge 0712 pair");
        enter("= otter stone song");
        enter("8.4 0830 flew up, tb 8.9");
        type("end 0935");

        assertThat(notebook.readBack().get()).contains("Not seen: kingfisher");

        enter("end 0935");

        assertThat(visitOf(day).end()).isPresent();
        assertThat(sightingsOf(day)).hasSize(3);
        assertThat(sightingsOf(day).get(0).simultaneousWith())
                .containsExactly(sightingsOf(day).get(1).id());
        assertThat(sightingsOf(day).get(2).turnedBack()).isTrue();
        assertThat(viewModel.strip().selected().get())
                .contains(new Subject.OfVisit(visitOf(day).id()));
        assertThat(book.history(10)).hasSize(6);
    }

    @Test
    void correctsTheLineJustSaved() {
        LocalDate day = LocalDate.of(2026, 5, 24);
        enter("visit 24 may 2026 mill bridge to otter stone, 0700, HB, looking for dipper");
        enter("8.2 0712 song");
        notebook.correctLast();

        assertThat(notebook.correcting().get()).isTrue();
        assertThat(notebook.line().get()).isEqualTo("8.2 0712 song");

        enter("8.9 0712 2 song");

        assertThat(notebook.correcting().get()).isFalse();
        assertThat(sightingsOf(day)).hasSize(1);
        assertThat(sightingsOf(day).get(0).place().chainage()).isEqualTo(Chainage.ofKm(8.9));
        assertThat(sightingsOf(day).get(0).count()).isEqualTo(2);
        assertThat(viewModel.notice().get()).startsWith("Corrected:");

        viewModel.undo();

        assertThat(sightingsOf(day).get(0).place().chainage()).isEqualTo(Chainage.ofKm(8.2));
    }

    @Test
    void keepsWhatALineCannotSay() {
        Sighting before =
                book.read(view -> view.sighting(SampleRiver.key("b2"))).orElseThrow();
        viewModel.strip().select(Optional.of(new Subject.OfSighting(before.id())));
        viewModel.correctSelected();
        String written = notebook.line().get();
        assertThat(written).startsWith("= ");

        notebook.save();

        assertThat(kept(before)).contains(before);

        viewModel.correctSelected();
        enter(written.substring(2));

        assertThat(book.read(view -> view.sighting(before.id())).orElseThrow().simultaneousWith())
                .as("without = the birds are no longer tied together")
                .isEmpty();
    }

    @Test
    void movesAVisitsSightingsWithItsDay() {
        LocalDate wrong = LocalDate.of(2026, 5, 24);
        enter("visit 24 may 2026 mill bridge to otter stone, 0700, HB, looking for dipper");
        enter("8.2 0712 song");
        viewModel.strip().select(Optional.of(new Subject.OfVisit(visitOf(wrong).id())));
        viewModel.correctSelected();
        enter(notebook.line().get().replace("2026-05-24", "2026-05-25"));

        LocalDate right = LocalDate.of(2026, 5, 25);
        assertThat(sightingsOf(wrong)).isEmpty();
        assertThat(sightingsOf(right)).hasSize(1);
        assertThat(visitOf(right).label()).isEqualTo("2026-05-25");
        assertThat(book.check(Progress.NONE)).isEmpty();
    }

    @Test
    void removesASightingAndRefusesToRemoveAVisitThatHasSome() {
        Sighting sighting =
                book.read(view -> view.sighting(SampleRiver.key("b2"))).orElseThrow();
        viewModel.strip().select(Optional.of(new Subject.OfSighting(sighting.id())));
        viewModel.removeSelected();

        assertThat(kept(sighting)).isEmpty();
        assertThat(viewModel.notice().get()).startsWith("Removed:");

        viewModel.undo();

        assertThat(kept(sighting)).contains(sighting);

        viewModel
                .strip()
                .select(Optional.of(new Subject.OfVisit(sighting.visitId().orElseThrow())));
        viewModel.removeSelected();

        assertThat(sightingsOf(sighting.date())).contains(sighting);
        assertThat(viewModel.notice().get()).contains("Remove those first");
    }

    @Test
    void leavesACorrectionWithTheRecordAsItWas() {
        viewModel.strip().select(Optional.of(new Subject.OfSighting(SampleRiver.key("b2"))));
        viewModel.correctSelected();
        notebook.leave();

        assertThat(notebook.line().get()).isEmpty();
        assertThat(notebook.correcting().get()).isFalse();
        assertThat(book.history(10)).hasSize(1);
    }

    @Test
    void writesThePlaceOfAClickOnTheStrip() {
        HitArea otter = viewModel.strip().drawing().get().orElseThrow().areas().stream()
                .filter(area -> area.subject() instanceof Subject.OfLandmark
                        && area.name().contains("Otter"))
                .findFirst()
                .orElseThrow();
        type("0712 song");
        notebook.cursor().set(4);

        assertThat(viewModel.place(otter.area().x() + 2, otter.area().y() + 2)).isTrue();
        assertThat(notebook.line().get()).isEqualTo("0712 Otter Stone song");

        HitArea territory = viewModel.strip().drawing().get().orElseThrow().areas().stream()
                .filter(area -> area.subject() instanceof Subject.OfTerritory)
                .findFirst()
                .orElseThrow();
        type("");
        viewModel.place(
                territory.area().x() + territory.area().width() / 2,
                territory.area().bottom() - 1);

        assertThat(notebook.line().get()).matches("Arrel Water \\d+\\.\\d\\d ");
    }
}

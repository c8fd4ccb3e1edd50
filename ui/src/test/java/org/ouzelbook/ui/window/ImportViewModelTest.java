package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.exchange.Problem;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.SightingQuery;
import org.ouzelbook.ui.app.ImportReport;
import org.ouzelbook.ui.app.RowText;

/** An import without a window: rehearsal, questions, what is wrong, taking it in, undoing it. */
class ImportViewModelTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 6, 30);

    @TempDir
    private Path folder;

    private Book book;
    private BookViewModel viewModel;
    private ImportViewModel imports;

    @BeforeEach
    void openABook() {
        book = SampleBook.create(folder.resolve("arrel"));
        viewModel = new BookViewModel(book, new DirectWork(), "HB");
        viewModel.read(Optional.empty());
        imports = new ImportViewModel(viewModel, new DirectWork(), TODAY);
    }

    @AfterEach
    void closeIt() {
        book.close();
    }

    private Path file(String... lines) throws IOException {
        return Files.write(folder.resolve("notes.csv"), List.of(lines));
    }

    private int sightings() {
        return book.read(view -> view.sightings(SightingQuery.ALL)).size();
    }

    private ImportReport report() {
        return imports.report().get().orElseThrow();
    }

    @Test
    void writesNothingBeforeItIsAccepted() throws IOException {
        int before = sightings();

        imports.rehearse(List.of(file("date,river,km,species,count", "2026-05-20,Arrel Water,7.1,dipper,2")));

        assertThat(report().rehearsal()).isTrue();
        assertThat(report().added()).isEqualTo(1);
        assertThat(imports.isReady()).isTrue();
        assertThat(sightings()).isEqualTo(before);
    }

    @Test
    void takesItInAsOneStepThatOneUndoTakesBack() throws IOException {
        int before = sightings();
        imports.rehearse(List.of(file(
                "date,river,km,species,count",
                "2026-05-20,Arrel Water,7.1,dipper,2",
                "2026-05-21,Arrel Water,7.2,dipper,1")));

        imports.accept();
        assertThat(report().imported()).isTrue();
        assertThat(sightings()).isEqualTo(before + 2);

        viewModel.undo();
        assertThat(sightings()).isEqualTo(before);
    }

    @Test
    void asksOnceForAllRowsAndGoesOnWithTheAnswer() throws IOException {
        imports.rehearse(List.of(file(
                "date,river,km,species", "03/04/2026,Arrel Water,7.1,dipper", "05/06/2026,Arrel Water,8.1,dipper")));

        assertThat(report().open()).isEqualTo(2);
        assertThat(imports.isReady()).isFalse();
        ImportQuestion question = imports.questions().get(0);
        assertThat(imports.questions()).hasSize(1);
        assertThat(question.words())
                .startsWith("Does the day or the month stand first?")
                .doesNotContain("--");
        assertThat(question.rows()).isEqualTo("notes.csv: rows 2, 3");
        assertThat(question.choices().stream().map(ImportQuestion.Choice::words))
                .containsExactly("day before month", "month before day");

        imports.answer(question.choices().get(0).answer());

        assertThat(imports.questions()).isEmpty();
        assertThat(report().added()).isEqualTo(2);
    }

    @Test
    void asksForNoRiverWhereTheVisitTellsIt() throws IOException {
        imports.rehearse(List.of(
                file("visit,km,species", "Sorn Beck 2026-05-12,1.4,dipper", "Arrel Water 2026-05-11,9.4,dipper")));

        assertThat(report().added()).isEqualTo(2);
        assertThat(imports.questions()).isEmpty();
    }

    @Test
    void asksForTheRiverOfRowsWithoutAVisitAndGoesOnWithTheAnswer() throws IOException {
        imports.rehearse(
                List.of(file("visit,date,km,species", "Sorn Beck 2026-05-12,,1.4,dipper", ",2026-05-20,9.4,dipper")));
        ImportQuestion question = imports.questions().get(0);

        assertThat(report().added()).isEqualTo(1);
        assertThat(question.rows()).isEqualTo("notes.csv: row 3");
        imports.answer(question.choices().get(0).answer());

        assertThat(imports.questions()).isEmpty();
        assertThat(report().added()).isEqualTo(2);
    }

    @Test
    void takesAWrittenYearAndRefusesNonsense() throws IOException {
        imports.rehearse(List.of(file("date,river,km,species", "3 April,Arrel Water,7.1,dipper")));
        ImportQuestion.Written written = imports.questions().get(0).written().orElseThrow();

        assertThat(written.answer().apply("last year")).isEmpty();
        imports.answer(written.answer().apply("2019").orElseThrow());

        assertThat(report().added()).isEqualTo(1);
    }

    @Test
    void showsTheRowOfAProblemAsItStandsInTheFile() throws IOException {
        imports.rehearse(List.of(file(
                "date,river,km,species,remark",
                "2026-04-13,Arrel Water,7.1,dipper,",
                "31/04/2026,Arrel Water,8.1,dipper,\"by the weir, late\"")));
        Problem problem = imports.groups().get(0).first().get(0);

        imports.look(problem);

        assertThat(problem.row()).isEqualTo(3);
        assertThat(imports.row().get().orElseThrow().cells())
                .contains(new RowText.Cell("date", "31/04/2026"), new RowText.Cell("remark", "by the weir, late"));
    }

    @Test
    void takesInWhatIsReadyAndWritesTheRestBesideTheBook() throws IOException {
        int before = sightings();
        imports.rehearse(List.of(file(
                "date,river,km,species", "2026-04-13,Arrel Water,7.1,dipper", "31/04/2026,Arrel Water,8.1,dipper")));

        imports.accept();

        assertThat(sightings()).isEqualTo(before + 1);
        assertThat(report().rejectedFiles())
                .containsExactly(folder.resolve("notes-rejected.csv").toString());
        assertThat(Files.readString(folder.resolve("notes-rejected.csv"))).contains("31/04/2026");
    }

    @Test
    void saysWhichFileIsNotThere() {
        imports.rehearse(List.of(folder.resolve("gone.csv")));

        assertThat(imports.refusal().get()).contains("gone.csv").contains("Check the name");
        assertThat(imports.report().get()).isEmpty();
    }

    @Test
    void forgetsEverythingWhereItIsLeft() throws IOException {
        imports.rehearse(List.of(file("date,river,km,species", "2026-04-13,Arrel Water,7.1,dipper")));

        imports.forget();

        assertThat(imports.files()).isEmpty();
        assertThat(imports.isReady()).isFalse();
    }
}

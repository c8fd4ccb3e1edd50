package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.store.Book;

/** The calendar without a window, on a real book. */
class CalendarViewModelTest {
    @TempDir
    private Path folder;

    private Book book;
    private BookViewModel viewModel;

    @BeforeEach
    void openABook() {
        book = SampleBook.create(folder.resolve("arrel"));
        viewModel = new BookViewModel(book, new DirectWork(), "HB");
        viewModel.read(Optional.empty());
    }

    @AfterEach
    void closeIt() {
        book.close();
    }

    private CalendarViewModel on(LocalDate today) {
        CalendarViewModel calendar = new CalendarViewModel(viewModel, new DirectWork(), today);
        calendar.read();
        return calendar;
    }

    private static String words(Explanation told) {
        return told.title() + "\n"
                + told.sections().stream()
                        .map(section -> section.heading() + "\n" + String.join("\n", section.sentences()))
                        .collect(Collectors.joining("\n"));
    }

    @Test
    void tellsTheVisitsOfTheYearThatIsPlanned() {
        String told = words(on(LocalDate.of(2027, 2, 1)).told().get().orElseThrow());

        assertThat(told)
                .startsWith("Next for the dipper, 2027")
                .contains("Visits due")
                .contains("visit 1:")
                .contains("2027");
    }

    @Test
    void saysThatNoVisitIsLeftAfterTheSeason() {
        String told = words(on(LocalDate.of(2026, 11, 20)).told().get().orElseThrow());

        assertThat(told).contains("No visit is left to plan this season.");
    }

    @Test
    void tellsWhatTheEffortShowsAndTheCautions() {
        String effort = words(on(LocalDate.of(2027, 2, 1)).effort().get().orElseThrow());

        assertThat(effort).contains("a halving in ten years would be found").contains("Before each visit");
    }
}

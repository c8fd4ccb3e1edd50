package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Bank;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Nest;
import org.ouzelbook.tracker.domain.NestCheck;
import org.ouzelbook.tracker.domain.NestSite;
import org.ouzelbook.tracker.domain.NestStage;
import org.ouzelbook.tracker.domain.Place;
import org.ouzelbook.tracker.domain.Species;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.strip.CalendarFigure;
import org.ouzelbook.ui.strip.Rect;
import org.ouzelbook.ui.strip.SampleRiver;

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

    private static final Nest NEST = new Nest(
            UUID.nameUUIDFromBytes(new byte[] {1}),
            "Kirk nest",
            new Place(SampleRiver.ARREL.id(), Chainage.ofKm(10.1), Bank.LEFT, 20, 1),
            Species.DIPPER,
            NestSite.BRIDGE,
            OptionalDouble.empty(),
            Optional.empty(),
            "");
    private static final NestCheck CHECK = new NestCheck(
            UUID.nameUUIDFromBytes(new byte[] {2}),
            NEST.id(),
            LocalDate.of(2026, 4, 12),
            Optional.empty(),
            NestStage.EGGS,
            "",
            OptionalInt.of(4),
            OptionalInt.empty(),
            OptionalInt.empty(),
            Optional.empty(),
            "");

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
    void drawsWhatIsDueAndWhatWasDoneOnItsMonths() {
        CalendarViewModel calendar = on(LocalDate.of(2026, 3, 1));
        CalendarFigure.Figure figure = calendar.picture().get().orElseThrow();

        assertThat(figure.picture().description())
                .contains("Arrel Water:")
                .contains("A visit of Arrel Water was made on")
                .contains("Nests: No nest of this year is waiting for a look.");
        assertThat(figure.places()).allSatisfy(placed -> {
            assertThat(placed.area().x()).isGreaterThanOrEqualTo(0);
            assertThat(placed.area().right())
                    .isLessThanOrEqualTo(figure.picture().width());
            assertThat(placed.area().bottom())
                    .isLessThanOrEqualTo(figure.picture().height());
        });

        calendar.choose(1);
        assertThat(calendar.chosen().get()).contains(figure.places().get(0));
        calendar.choose(-1);
        calendar.choose(-1);
        Rect last = figure.places().get(figure.places().size() - 2).area();
        assertThat(calendar.chosen().get().orElseThrow().area()).isEqualTo(last);
        calendar.chooseAt(-5, -5);
        assertThat(calendar.chosen().get()).isEmpty();
        calendar.chooseAt(last.x() + 1, last.y() + 1);
        assertThat(calendar.chosen().get()).isPresent();
    }

    @Test
    void plansTheNextSeasonOnceThisOneIsOver() {
        String told = words(on(LocalDate.of(2026, 11, 20)).told().get().orElseThrow());

        assertThat(told)
                .startsWith("Next for the dipper, 2027")
                .contains("visit 1:")
                .doesNotContain("No visit is left");
    }

    @Test
    void breaksOffWhereSomebodyStopsItAndPlansWhenAskedAgain() {
        StoppableWork work = new StoppableWork(2);
        CalendarViewModel calendar = new CalendarViewModel(viewModel, work, LocalDate.of(2027, 2, 1));

        calendar.read();
        assertThat(calendar.stopped().get()).isTrue();
        assertThat(calendar.refusal().get()).startsWith("Stopped before it was planned");
        assertThat(calendar.told().get()).isEmpty();

        work.stopAfter(Long.MAX_VALUE);
        calendar.read();
        assertThat(calendar.stopped().get()).isFalse();
        assertThat(calendar.refusal().get()).isEmpty();
        assertThat(calendar.told().get()).isPresent();
        assertThat(work.shares()).isSorted().hasSizeGreaterThan(4);
        assertThat(work.shares().get(work.shares().size() - 1)).isBetween(0.5, 1.0);
    }

    @Test
    void tellsWhatTheEffortShowsAndTheCautions() {
        String effort = words(on(LocalDate.of(2027, 2, 1)).effort().get().orElseThrow());

        assertThat(effort).contains("a halving in ten years would be found").contains("Before each visit");
    }

    @Test
    void keepsNestsBackUntilAskedAndOutOfTheTextToPrint() {
        book.change(Message.of("window.title"), "HB", edit -> {
            edit.add(NEST);
            edit.add(CHECK);
            return null;
        });
        viewModel.read(Optional.empty());
        CalendarViewModel calendar = on(LocalDate.of(2026, 4, 14));
        assertThat(words(calendar.told().get().orElseThrow()))
                .contains("1 nest waits for a look")
                .doesNotContain("Kirk nest");
        assertThat(calendar.picture().get().orElseThrow().picture().toString()).doesNotContain("Kirk nest");

        calendar.nestsShown().set(true);

        assertThat(words(calendar.told().get().orElseThrow()))
                .contains("Kirk nest, km 10.10: eggs on 12 Apr 2026; next 17 Apr 2026 to 20 Apr 2026, a short look");
        assertThat(calendar.picture().get().orElseThrow().picture().description())
                .contains("Kirk nest, km 10.10");
        assertThat(calendar.asText()).contains("Visits due").doesNotContain("Kirk nest");
    }
}

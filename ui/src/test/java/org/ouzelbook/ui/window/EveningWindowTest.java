package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ouzelbook.ui.window.LiveWindow.click;
import static org.ouzelbook.ui.window.LiveWindow.command;
import static org.ouzelbook.ui.window.LiveWindow.keep;
import static org.ouzelbook.ui.window.LiveWindow.onWindow;
import static org.ouzelbook.ui.window.LiveWindow.scene;
import static org.ouzelbook.ui.window.LiveWindow.type;
import static org.ouzelbook.ui.window.LiveWindow.write;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Seal;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.domain.Visit;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.tracker.store.SightingQuery;
import org.ouzelbook.ui.strip.SampleRiver;
import org.ouzelbook.ui.strip.Subject;

/** The evening after a walk, in the real window by keys alone: a visit typed in, a territory split, undone, and the season sealed. */
@Tag("window")
class EveningWindowTest {
    private static final LocalDate SUNDAY = LocalDate.of(2026, 5, 24);

    @TempDir
    private Path folder;

    @Test
    @Timeout(value = 6, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void logsAVisitSplitsATerritoryUndoesItAndSealsTheSeason() {
        Path file = folder.resolve("arrel");
        SampleBook.create(file).close();
        LiveWindow window = LiveWindow.open(Optional.of(file), folder);
        window.awaitWords("Before you go out");
        type(KeyCode.ESCAPE);
        window.await("the strip", () -> strip().onScreen(territory("B")).isPresent());

        logAVisit(window);
        splitATerritory(window);
        goBack(window);
        seal(window);

        window.close();
        try (Book book = Book.open(file)) {
            List<Visit> visits = book.read(view -> view.visits(SUNDAY, SUNDAY));
            List<Sighting> seen = book.read(view -> view.sightings(SightingQuery.ALL.between(SUNDAY, SUNDAY)));
            assertThat(visits).hasSize(1);
            assertThat(visits.get(0).end()).isPresent();
            assertThat(seen).hasSize(2);
            assertThat(seen.get(0).simultaneousWith())
                    .containsExactly(seen.get(1).id());
            List<Decision> decisions = book.read(BookView::decisions);
            List<Seal> seals = book.read(BookView::seals);
            assertThat(decisions).isEmpty();
            assertThat(seals).extracting(Seal::season).containsExactly(2026);
            assertThat(book.check(Progress.NONE)).isEmpty();
        }
    }

    private static void logAVisit(LiveWindow window) {
        type(KeyCode.N);
        window.await(
                "the notebook",
                () -> "notebook-line".equals(scene().getFocusOwner().getId()));
        enter(window, "visit 24 may 2026 mill bridge to otter stone, 0700, HB, looking for dipper kingfisher");
        write("mill br");
        window.await(
                "what may be meant",
                () -> !scene().getRoot().lookupAll(".suggestion").isEmpty());
        keep("evening-offered");
        type(KeyCode.TAB);
        window.await("the landmark written", () -> "Mill Bridge ".equals(field().getText()));
        write("0712 pair");
        save(window);
        enter(window, "= 9.0 song");
        put("end 0935");
        window.awaitWords("Not seen: kingfisher");
        keep("evening-visit");
        save(window);
        type(KeyCode.ESCAPE);
    }

    private static void splitATerritory(LiveWindow window) {
        click(onWindow(() -> strip().onScreen(territory("B")).orElseThrow()));
        window.awaitWords("Territory B");
        type(KeyCode.V);
        window.await("the boundary begun", () -> field().getText().startsWith("boundary at Arrel Water"));
        write("two pairs fed young");
        window.awaitWords("Enter decides");
        keep("evening-boundary");
        save(window);
        window.awaitWords("Decided: boundary");
        window.await("the keyboard on the strip", () -> scene().getFocusOwner() == strip());
        keep("evening-split");
    }

    private static void goBack(LiveWindow window) {
        type(KeyCode.H);
        window.awaitWords("the book is here");
        keep("evening-history");
        type(KeyCode.ESCAPE);
        command(KeyCode.Z);
        window.awaitWords("Undid step");
    }

    private static void seal(LiveWindow window) {
        type(KeyCode.S);
        window.awaitWords("Seal this season");
        click("Seal this season");
        window.awaitWords("Take the seal away");
        window.awaitWords("Today’s count by rule is the same");
        keep("evening-sealed");
    }

    /** Puts a line into the notebook; signs that a keyboard writes differently in every country are not typed one by one. */
    private static void put(String line) {
        onWindow(() -> {
            field().setText(line);
            field().end();
            return true;
        });
    }

    private static void enter(LiveWindow window, String line) {
        put(line);
        save(window);
    }

    private static void save(LiveWindow window) {
        BooleanSupplier clear = () -> LiveWindow.shows("Enter saves") || LiveWindow.shows("Enter decides");
        window.await("the line understood", clear);
        type(KeyCode.ENTER);
        window.await("the line saved", () -> field().getText().isEmpty());
    }

    private static TextField field() {
        return (TextField) scene().lookup("#notebook-line");
    }

    private static Subject territory(String letter) {
        return new Subject.OfTerritory(2026, SampleRiver.ARREL.id(), letter);
    }

    private static StripPane strip() {
        return (StripPane) scene().lookup(".strip");
    }
}

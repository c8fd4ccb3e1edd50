package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ouzelbook.ui.window.LiveWindow.click;
import static org.ouzelbook.ui.window.LiveWindow.keep;
import static org.ouzelbook.ui.window.LiveWindow.onWindow;
import static org.ouzelbook.ui.window.LiveWindow.scene;
import static org.ouzelbook.ui.window.LiveWindow.type;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javafx.scene.control.Hyperlink;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.SightingQuery;
import org.ouzelbook.ui.strip.SampleRiver;
import org.ouzelbook.ui.strip.StripView;
import org.ouzelbook.ui.strip.Subject;

/**
 * An hour with the real window: a file dropped on it, a record put right, the model stopped and begun again, the book taken several
 * steps back, and everything found where it was left.
 */
@Tag("window")
class ReturningWindowTest {
    private static final Subject A2 = new Subject.OfSighting(SampleRiver.key("a2"));
    private static final Subject STONE = new Subject.OfLandmark(SampleRiver.key("Otter Stone"));

    @TempDir
    private Path folder;

    @Test
    @Timeout(value = 6, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void dropsCorrectsStopsGoesBackAndComesBack() throws IOException {
        Path file = folder.resolve("arrel");
        SampleBook.create(file).close();
        LiveWindow window = LiveWindow.open(Optional.of(file), folder);
        window.awaitWords("Before you go out");
        type(KeyCode.ESCAPE);
        window.await("the strip", () -> strip().onScreen(A2).isPresent());

        drop(window);
        Runnable stopping = LiveWindow.stopWhenever("Counting by the model");
        correct(window);
        stopTheModel(window, stopping);
        goSeveralStepsBack(window);
        comeBack(window);

        window.close();
        Desk later = new Desk(folder.resolve(".ouzelbook").resolve("window.properties"));
        assertThat(later.view(folder.resolve("arrel.mv.db"))
                        .orElseThrow()
                        .place()
                        .view())
                .isInstanceOf(StripView.OnePlace.class);
        assertThat(later.place()).isPresent();
        try (Book book = Book.open(file)) {
            assertThat(sighting(book).place().chainage().km())
                    .as("the correction was taken back")
                    .isEqualTo(6.8);
            assertThat(book.check(Progress.NONE)).isEmpty();
        }
    }

    private void drop(LiveWindow window) throws IOException {
        Path notes = Files.write(
                folder.resolve("notes.csv"),
                List.of("date,river,km,species,count", "2026-04-05,Arrel Water,8.4,dipper,1"));
        onWindow(() -> {
            try {
                return DroppedFiles.on(strip(), List.of(notes));
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException(e);
            }
        });
        window.awaitWords("Import of notes.csv");
        window.awaitWords("Add 1 row");
        keep("returning-dropped");
        click("Add 1 row");
        window.awaitWords("Undo this import");
        type(KeyCode.ESCAPE);
        window.await("the strip again", () -> scene().lookup(".strip") != null);
    }

    private static void correct(LiveWindow window) {
        window.await("the sighting", () -> strip().onScreen(A2).isPresent());
        select(A2);
        window.awaitWords("Sighting a2");
        type(KeyCode.F2);
        window.await("its line", () -> field().getText().contains("6.8"));
        keep("returning-correcting");
        onWindow(() -> {
            field().setText(field().getText().replaceFirst("6\\.80?", "6.95"));
            field().end();
            return true;
        });
        window.awaitWords("Enter");
        LiveWindow.pause(400);
        type(KeyCode.ENTER);
        window.await("the line saved", () -> field().getText().isEmpty());
        type(KeyCode.ESCAPE);
    }

    /** Counts by the model, which somebody stops as often as it begins, and has it count again. */
    private static void stopTheModel(LiveWindow window, Runnable stopping) {
        window.await("the correction mapped", ReturningWindowTest::isMapped);
        type(KeyCode.F);
        window.awaitWords("has not counted");
        assertThat(onWindow(() -> LiveWindow.shows("by the model ("))).isFalse();
        keep("returning-stopped");
        stopping.run();
        click("Count by the model");
        window.awaitWords("per km by the model (");
        keep("returning-counted");
        type(KeyCode.ESCAPE);
        type(KeyCode.ESCAPE);
        window.await("the strip again", () -> scene().lookup(".strip") != null);
    }

    private static void goSeveralStepsBack(LiveWindow window) {
        type(KeyCode.H);
        window.awaitWords("the book is here");
        type(KeyCode.DOWN);
        type(KeyCode.DOWN);
        keep("returning-history");
        type(KeyCode.ENTER);
        window.await("two steps undone", () -> LiveWindow.shows("2 steps were played back"));
        keep("returning-back");
        type(KeyCode.ESCAPE);
        window.await("the strip again", () -> scene().lookup(".strip") != null);
    }

    private static void comeBack(LiveWindow window) {
        window.await("the landmark", () -> strip().onScreen(STONE).isPresent());
        select(STONE);
        window.awaitWords("Otter Stone");
        type(KeyCode.P);
        type(KeyCode.ENTER);
        window.await("the place", () -> model().view() instanceof StripView.OnePlace);
        assertThat(onWindow(() -> model().nestsShown().get())).isTrue();
        type(KeyCode.B);
        window.awaitWords("Opened lately");
        window.await("the last book ready for Enter", () -> scene().getFocusOwner() instanceof Hyperlink);
        keep("returning-start");
        click("arrel");
        window.await("the book again", () -> scene().getRoot() instanceof BookPane);
        window.await(
                "the place again",
                () -> model().view() instanceof StripView.OnePlace
                        && model().drawing().get().isPresent());
        assertThat(onWindow(() -> model().nestsShown().get()))
                .as("nests are hidden again")
                .isFalse();
        keep("returning-place");
    }

    /** The drawing may move while the model counts, so nobody aims with the mouse here. */
    private static void select(Subject subject) {
        onWindow(() -> {
            model().select(Optional.of(subject));
            return true;
        });
    }

    private static Sighting sighting(Book book) {
        return book.read(view -> view.sightings(SightingQuery.ALL)).stream()
                .filter(one -> one.id().equals(SampleRiver.key("a2")))
                .findFirst()
                .orElseThrow();
    }

    private static StripViewModel model() {
        return ((BookPane) scene().getRoot()).book().strip();
    }

    /** The correction is read and mapped, so that whatever counts now counts it. */
    private static boolean isMapped() {
        return ((BookPane) scene().getRoot())
                .book()
                .contents()
                .get()
                .filter(there -> there.behind().isEmpty()
                        && there.records().sightings().stream()
                                .anyMatch(one -> one.place().chainage().km() == 6.95))
                .isPresent();
    }

    private static TextField field() {
        return (TextField) scene().lookup("#notebook-line");
    }

    private static StripPane strip() {
        return (StripPane) scene().lookup(".strip");
    }
}

package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ouzelbook.ui.window.LiveWindow.command;
import static org.ouzelbook.ui.window.LiveWindow.keep;
import static org.ouzelbook.ui.window.LiveWindow.onWindow;
import static org.ouzelbook.ui.window.LiveWindow.pause;
import static org.ouzelbook.ui.window.LiveWindow.scene;
import static org.ouzelbook.ui.window.LiveWindow.type;
import static org.ouzelbook.ui.window.LiveWindow.write;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import javafx.geometry.Point2D;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.robot.Robot;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Decision;
import org.ouzelbook.tracker.domain.DecisionKind;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.BookView;
import org.ouzelbook.ui.strip.SampleRiver;
import org.ouzelbook.ui.strip.Subject;

/** The end of a territory dragged by the mouse in the real window, and moved by keys: the decision stands, and undo takes it away. */
@Tag("window")
class DraggingWindowTest {
    private static final Subject.OfEnd END = new Subject.OfEnd(2026, SampleRiver.ARREL.id(), "B", true);
    private static final Subject.OfTerritory B = new Subject.OfTerritory(2026, SampleRiver.ARREL.id(), "B");

    @TempDir
    private Path folder;

    @Test
    @Timeout(value = 6, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void decidesByDraggingAndByKeysAndUndoesIt() {
        Path file = folder.resolve("arrel");
        SampleBook.create(file).close();
        LiveWindow window = LiveWindow.open(Optional.of(file), folder);
        window.awaitWords("Before you go out");
        type(KeyCode.ESCAPE);
        window.await(
                "the strip",
                () -> !LiveWindow.shows("Before you go out")
                        && strip().onScreen(END).isPresent());

        leaveByEscape(window);
        dragAndGiveAReason(window);
        undo(window);
        moveByKeys(window);

        window.close();
        try (Book book = Book.open(file)) {
            List<Decision> decisions = book.read(BookView::decisions);
            assertThat(decisions).extracting(Decision::kind).containsExactly(DecisionKind.BOUNDARY);
            assertThat(decisions.get(0).note()).isEmpty();
            assertThat(book.history(20))
                    .as("dragged, given a reason, both undone, and decided by keys")
                    .hasSizeGreaterThanOrEqualTo(4);
        }
    }

    private static void leaveByEscape(LiveWindow window) {
        drag(-60);
        window.await("the end held", () -> ends().held().get().isPresent());
        type(KeyCode.ESCAPE);
        window.await("the end left", () -> ends().held().get().isEmpty());
        robot(robot -> robot.mouseRelease(MouseButton.PRIMARY));
        pause(300);
        assertThat(onWindow(() -> LiveWindow.shows("Decided"))).isFalse();
    }

    private static void dragAndGiveAReason(LiveWindow window) {
        drag(-60);
        window.await("the count with it", () -> ends().count().get().startsWith("Arrel Water: "));
        keep("dragging");
        robot(robot -> robot.mouseRelease(MouseButton.PRIMARY));
        window.awaitWords("Decided: boundary at");
        window.await(
                "the keyboard at the reason",
                () -> scene().getFocusOwner() == field() && field().getText().endsWith(" because "));
        write("two males");
        window.awaitWords("Enter decides");
        type(KeyCode.ENTER);
        window.await("the reason kept", () -> field().getText().isEmpty());
        window.await("the keyboard on the strip", () -> scene().getFocusOwner() == strip());
        keep("dragged");
    }

    private static void undo(LiveWindow window) {
        command(KeyCode.Z);
        window.awaitWords("Undid step");
        pause(500);
        command(KeyCode.Z);
        window.awaitWords("Undid step 2");
        window.await("the map as it was", () -> strip().onScreen(END).isPresent());
    }

    private static void moveByKeys(LiveWindow window) {
        Point2D bar = onWindow(() -> strip().onScreen(B).orElseThrow());
        LiveWindow.click(bar);
        window.awaitWords("Territory B");
        window.awaitWords("boundary here");
        keep("decisions-offered");
        type(KeyCode.K);
        window.await("the upper end held", () -> ends().held().get().isPresent());
        for (int i = 0; i < 8; i++) {
            type(KeyCode.LEFT);
        }
        window.await("the count with it", () -> ends().count().get().startsWith("Arrel Water: "));
        keep("moving-by-keys");
        type(KeyCode.ENTER);
        window.awaitWords("Decided: boundary at");
        window.await("the keyboard at the reason", () -> scene().getFocusOwner() == field());
        type(KeyCode.ESCAPE);
        window.await("the line empty", () -> field().getText().isEmpty());
    }

    /** Presses on the end and moves by some pixels, a few at a time, without letting go. */
    private static void drag(int pixels) {
        Point2D at = onWindow(() -> strip().onScreen(END).orElseThrow());
        robot(robot -> {
            robot.mouseMove(at);
            robot.mousePress(MouseButton.PRIMARY);
        });
        pause(100);
        for (int i = 1; i <= 10; i++) {
            int moved = i;
            robot(robot -> robot.mouseMove(at.getX() + pixels * moved / 10.0, at.getY() - moved));
            pause(40);
        }
    }

    private static void robot(Consumer<Robot> doing) {
        onWindow(() -> {
            doing.accept(new Robot());
            return true;
        });
        pause(80);
    }

    private static StripPane strip() {
        return (StripPane) scene().lookup(".strip");
    }

    private static EndMove ends() {
        return strip().ends();
    }

    private static TextField field() {
        return (TextField) scene().lookup("#notebook-line");
    }
}

package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ouzelbook.ui.window.LiveWindow.keep;
import static org.ouzelbook.ui.window.LiveWindow.onWindow;
import static org.ouzelbook.ui.window.LiveWindow.scene;
import static org.ouzelbook.ui.window.LiveWindow.type;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.ui.strip.SampleRiver;
import org.ouzelbook.ui.strip.Subject;

/** The count by the model in the real window: shown when it is ready, stopped by a button, and begun again by a change. */
@Tag("window")
class ModelWindowTest {
    private static final Subject.OfTerritory B = new Subject.OfTerritory(2026, SampleRiver.ARREL.id(), "B");

    @TempDir
    private Path folder;

    @Test
    @Timeout(value = 6, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void showsWhatTheModelMakesOfTheSeasonWhenItIsReady() {
        Path file = folder.resolve("arrel");
        SampleBook.create(file).close();
        LiveWindow window = LiveWindow.open(Optional.of(file), folder);
        window.awaitWords("Before you go out");
        type(KeyCode.ESCAPE);
        window.await("the shading", ModelWindowTest::isShaded);

        Runnable stopping = LiveWindow.stopWhenever("Counting by the model");
        note(window, "note at Arrel Water 9.0: ringed pair");
        window.awaitWords("Stopped: the strip is shown without the model");
        assertThat(onWindow(ModelWindowTest::isShaded)).isFalse();
        stopping.run();

        note(window, "note at Arrel Water 9.5: quiet");
        window.await("the shading again", ModelWindowTest::isShaded);
        LiveWindow.click(onWindow(() -> strip().onScreen(B).orElseThrow()));
        window.awaitWords("A territory is here with probability");
        keep("shaded");
        window.close();
    }

    private static void note(LiveWindow window, String line) {
        type(KeyCode.N);
        window.await("the notebook", () -> scene().getFocusOwner() == field());
        onWindow(() -> {
            field().setText(line);
            return true;
        });
        window.awaitWords("Enter decides");
        type(KeyCode.ENTER);
        window.await("the line kept", () -> field().getText().isEmpty());
    }

    private static boolean isShaded() {
        return strip().onScreen(B).isPresent()
                && strip().strip().shading(2026).isPresent()
                && strip().strip().drawing().get().orElseThrow().areas().stream()
                        .anyMatch(area -> area.subject() instanceof Subject.OfRoom);
    }

    private static StripPane strip() {
        return (StripPane) scene().lookup(".strip");
    }

    private static TextField field() {
        return (TextField) scene().lookup("#notebook-line");
    }
}

package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.DemoBook;

/** The first start of the real window: a book begun as far as its last step, and then a look at the invented river. */
@Tag("window")
class FirstStartWindowTest {
    @TempDir
    private Path folder;

    @Test
    @Timeout(value = 4, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void leadsFromNothingToAnOpenBook() {
        LiveWindow window = LiveWindow.open(Optional.empty(), folder);
        window.awaitWords("Look around");
        LiveWindow.keep("start");

        LiveWindow.click("Begin a book");
        window.awaitWords("First the river.");
        LiveWindow.onWindow(() -> {
            ((StartPane) LiveWindow.scene().getRoot())
                    .take(List.of(DemoBook.files().resolve("rivers.geojson")));
            return true;
        });
        window.awaitWords("The mouth is at the other end");
        LiveWindow.keep("start-begin");
        LiveWindow.type(KeyCode.ESCAPE);

        window.awaitWords("Look around");
        LiveWindow.click("Look around");
        window.awaitWords("Before you go out");
        LiveWindow.keep("start-cautions");
        LiveWindow.type(KeyCode.ESCAPE);
        window.await("the strip of the demo", () -> LiveWindow.shows("12 territories"));
        LiveWindow.keep("start-demo");
        LiveWindow.type(KeyCode.B);
        window.awaitWords("Opened lately");
        window.close();

        Path book = folder.resolve("ouzelbook-demo").resolve("arrel-water.mv.db");
        try (Book made = Book.open(book)) {
            LocalDate first = made.read(view -> view.visits().get(0).date());
            assertThat(first.getYear()).isEqualTo(2017);
        }
    }
}

package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javafx.scene.input.KeyCode;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.store.Book;

/** The findings in the real window: asked by key, saved, and followed to a record on the strip. */
@Tag("window")
class FindingsWindowTest {
    @TempDir
    private Path folder;

    @Test
    @Timeout(value = 4, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void tellsANumberSavesItAndGoesToItsRecords() throws IOException {
        Path file = folder.resolve("arrel");
        try (Book book = SampleBook.create(file)) {
            assertThat(book.file()).exists();
        }
        LiveWindow window = LiveWindow.open(Optional.of(file), folder);
        window.awaitWords("Before you go out");
        LiveWindow.type(KeyCode.ESCAPE);
        window.await("the strip", () -> !LiveWindow.shows("Before you go out") && LiveWindow.shows("territories"));

        LiveWindow.type(KeyCode.F);
        window.awaitWords("In 2026:");
        LiveWindow.keep("findings");
        Path png = folder.resolve("density.png");
        Path csv = folder.resolve("density.csv");
        LiveWindow.onWindow(() -> {
            FindingsPage page = (FindingsPage)
                    ((BookPane) LiveWindow.scene().getRoot()).page().orElseThrow();
            page.save(png);
            page.save(csv);
            return true;
        });
        window.await("the saved files", () -> Files.exists(png) && Files.exists(csv));
        assertThat(ImageIO.read(png.toFile()).getWidth()).isGreaterThan(1000);
        assertThat(Files.readString(csv)).startsWith("water,season,");

        LiveWindow.type(KeyCode.T);
        window.awaitWords("Territory A, Arrel Water");
        LiveWindow.keep("findings-records");
        LiveWindow.click("Territory A, Arrel Water");
        window.await(
                "the reasons of territory A",
                () -> LiveWindow.shows("Territory A") && LiveWindow.scene().lookup(".strip") != null);
        LiveWindow.keep("findings-on-strip");
        window.close();
    }
}

package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javafx.geometry.Point2D;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.robot.Robot;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.RiverStrip;
import org.ouzelbook.ui.strip.SampleRiver;
import org.ouzelbook.ui.strip.StripDrawing;
import org.ouzelbook.ui.strip.Subject;

/** The strip in the real window: into a place by a double click, out again by key, dark by key, and saved as a picture. */
@Tag("window")
class StripWindowTest {
    @TempDir
    private Path folder;

    @Test
    @Timeout(value = 4, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void goesIntoAPlaceAndOutAgain() throws IOException {
        Path file = folder.resolve("arrel");
        try (Book book = SampleBook.create(file)) {
            assertThat(book.file()).exists();
        }
        LiveWindow window = LiveWindow.open(Optional.of(file), folder);
        window.awaitWords("Before you go out");
        LiveWindow.type(KeyCode.ESCAPE);
        Subject stone = new Subject.OfLandmark(SampleRiver.key("Otter Stone"));
        window.await(
                "the strip",
                () -> !LiveWindow.shows("Before you go out")
                        && strip().onScreen(stone).isPresent());

        Point2D at = LiveWindow.onWindow(() -> strip().onScreen(stone).orElseThrow());
        LiveWindow.onWindow(() -> {
            Robot robot = new Robot();
            robot.mouseMove(at);
            robot.mouseClick(MouseButton.PRIMARY);
            robot.mouseClick(MouseButton.PRIMARY);
            return true;
        });
        window.awaitWords("Year by year");
        LiveWindow.keep("place");

        LiveWindow.type(KeyCode.BACK_SPACE);
        window.awaitWords("Season 2026");
        LiveWindow.type(KeyCode.D);
        LiveWindow.type(KeyCode.Y);
        window.awaitWords("1 season counted");
        LiveWindow.keep("all-seasons-dark");
        assertThat(Files.readString(folder.resolve(".ouzelbook").resolve("look.properties")))
                .contains("dark=true");

        Path png = folder.resolve("strip.png");
        Path svg = folder.resolve("strip.svg");
        LiveWindow.onWindow(() -> {
            StripDrawing legend = RiverStrip.legend(900);
            try {
                PictureFile.write(RiverStrip.sheet(legend), Palette.DARK, png);
                PictureFile.write(RiverStrip.sheet(legend), Palette.DARK, svg);
            } catch (IOException e) {
                throw new IllegalStateException(e);
            }
            return true;
        });
        assertThat(ImageIO.read(png.toFile()).getWidth()).isEqualTo(1800);
        assertThat(Files.readString(svg)).startsWith("<svg");
        window.close();
    }

    private static StripPane strip() {
        return (StripPane) LiveWindow.scene().lookup(".strip");
    }
}

package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import javafx.application.Platform;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.robot.Robot;
import javafx.stage.Stage;
import javafx.stage.Window;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.SightingQuery;
import org.ouzelbook.ui.strip.SampleRiver;
import org.ouzelbook.ui.strip.Subject;

/** The real window under a real display, with the mouse and the keys; it fails where there is no display. */
@Tag("window")
class RiverWindowTest {
    private static final Path PICTURES = Path.of("target", "pictures");
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    @TempDir
    private Path folder;

    private CompletableFuture<Void> window = new CompletableFuture<>();

    /** JavaFX waits for ever where it is told of a display that cannot be opened; the test does not. */
    @Test
    @Timeout(value = 4, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void tellsWhyATerritoryStandsLogsABirdAndUndoesIt() throws IOException {
        boolean needsDisplay = System.getProperty("os.name", "").startsWith("Linux");
        assertThat(needsDisplay && System.getenv("DISPLAY") == null)
                .as("no display to open the window on; run the tests by .ci/with-display")
                .isFalse();
        System.setProperty("user.home", folder.toString());
        System.setProperty("prism.order", "sw");
        Path file = folder.resolve("arrel");
        int before;
        try (Book book = SampleBook.create(file)) {
            before = sightings(book);
        }
        window = CompletableFuture.runAsync(
                () -> RiverWindow.show(Optional.of(file), Optional.empty(), OptionalInt.empty()),
                work -> new Thread(work, "window").start());

        await("the cautions", () -> shows("Before you go out"));
        keep("cautions");
        type(KeyCode.Y);
        type(KeyCode.ESCAPE);
        await("the cautions gone", () -> !shows("Before you go out"));
        Subject territory = new Subject.OfTerritory(2026, SampleRiver.ARREL.id(), "B");
        await("the strip", () -> strip().onScreen(territory).isPresent());

        click(onWindow(() -> strip().onScreen(territory).orElseThrow()));
        await("the reasons of territory B", () -> shows("Territory B"));
        assertThat(onWindow(() -> shows("Why it is not part of its neighbour"))).isTrue();
        keep("season");

        type(KeyCode.N);
        await("the notebook", () -> scene().getFocusOwner().getId() != null);
        write("otter stone 0712 2 song");
        await("the line read back", () -> shows("07:12"));
        keep("notebook");
        type(KeyCode.ENTER);
        await("the line saved", () -> shows("Saved"));

        onWindow(() -> {
            Robot robot = new Robot();
            robot.keyPress(KeyCode.CONTROL);
            robot.keyType(KeyCode.Z);
            robot.keyRelease(KeyCode.CONTROL);
            return true;
        });
        await("the line undone", () -> !shows("Saved"));

        type(KeyCode.ESCAPE);
        type(KeyCode.Y);
        await("all seasons", () -> shows("1 season counted"));
        keep("all-seasons");
        type(KeyCode.L);
        await("the legend", () -> shows("Legend"));
        keep("legend");

        onWindow(() -> {
            stage().orElseThrow().close();
            return true;
        });
        window.join();
        try (Book book = Book.open(file)) {
            assertThat(sightings(book)).isEqualTo(before);
            assertThat(book.history(10)).hasSizeGreaterThanOrEqualTo(3);
        }
    }

    private static int sightings(Book book) {
        return book.read(view -> view.sightings(SightingQuery.ALL)).size();
    }

    private static <T> T onWindow(Supplier<T> look) {
        CompletableFuture<T> seen = new CompletableFuture<>();
        Platform.runLater(() -> {
            try {
                seen.complete(look.get());
            } catch (RuntimeException | AssertionError e) {
                seen.completeExceptionally(e);
            }
        });
        return seen.join();
    }

    private void await(String what, BooleanSupplier sight) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (System.nanoTime() < end) {
            if (window.isCompletedExceptionally()) {
                window.join();
            }
            if (isUp() && onWindow(() -> stage().isPresent() && sight.getAsBoolean())) {
                return;
            }
            try {
                Thread.sleep(50);
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
        throw new AssertionError("After " + PATIENCE.toSeconds() + " s there was still no sign of " + what);
    }

    private static boolean isUp() {
        try {
            Platform.runLater(() -> {});
            return true;
        } catch (IllegalStateException notYet) {
            return false;
        }
    }

    private static Optional<Stage> stage() {
        return Window.getWindows().stream()
                .filter(Stage.class::isInstance)
                .map(Stage.class::cast)
                .findFirst();
    }

    private static Scene scene() {
        return stage().orElseThrow().getScene();
    }

    private static StripPane strip() {
        return (StripPane) scene().lookup(".strip");
    }

    private static boolean shows(String words) {
        Set<Node> labels = scene().getRoot().lookupAll(".label");
        return labels.stream()
                .filter(Label.class::isInstance)
                .anyMatch(
                        label -> label.isVisible() && ((Label) label).getText().contains(words));
    }

    private static void click(Point2D at) {
        onWindow(() -> {
            Robot robot = new Robot();
            robot.mouseMove(at);
            robot.mouseClick(MouseButton.PRIMARY);
            return true;
        });
    }

    private static void type(KeyCode key) {
        onWindow(() -> {
            new Robot().keyType(key);
            return true;
        });
    }

    private static void write(String line) {
        for (char letter : line.toUpperCase(Locale.ROOT).toCharArray()) {
            type(letter == ' ' ? KeyCode.SPACE : KeyCode.getKeyCode(String.valueOf(letter)));
        }
    }

    private static void keep(String name) throws IOException {
        BufferedImage picture = onWindow(() -> {
            WritableImage image = scene().snapshot(null);
            int width = (int) image.getWidth();
            int height = (int) image.getHeight();
            int[] pixels = new int[width * height];
            image.getPixelReader().getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), pixels, 0, width);
            BufferedImage copy = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
            copy.setRGB(0, 0, width, height, pixels, 0, width);
            return copy;
        });
        Files.createDirectories(PICTURES);
        ImageIO.write(
                picture, "png", PICTURES.resolve("window-" + name + ".png").toFile());
    }
}

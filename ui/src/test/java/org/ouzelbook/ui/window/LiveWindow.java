package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.CompletableFuture;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import javafx.application.Platform;
import javafx.beans.property.StringProperty;
import javafx.beans.value.ChangeListener;
import javafx.geometry.Bounds;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Labeled;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.input.MouseButton;
import javafx.scene.robot.Robot;
import javafx.stage.Stage;
import javafx.stage.Window;
import javax.imageio.ImageIO;

/** The real window, with somebody at the mouse and the keys who can read what it says. */
final class LiveWindow {
    private static final Path PICTURES = Path.of("target", "pictures");
    private static final Duration PATIENCE = Duration.ofSeconds(60);

    private final CompletableFuture<Void> window;

    private LiveWindow(CompletableFuture<Void> window) {
        this.window = window;
    }

    /**
     * Opens the window; once in the life of a program.
     *
     * @param book the book to open; the start page if empty
     * @param home where the window remembers what was opened
     */
    static LiveWindow open(Optional<Path> book, Path home) {
        boolean needsDisplay = System.getProperty("os.name", "").startsWith("Linux");
        assertThat(needsDisplay && System.getenv("DISPLAY") == null)
                .as("no display to open the window on; run the tests by .ci/with-display")
                .isFalse();
        System.setProperty("user.home", home.toString());
        System.setProperty("prism.order", "sw");
        return new LiveWindow(CompletableFuture.runAsync(
                () -> RiverWindow.show(book, Optional.empty(), OptionalInt.empty()),
                work -> new Thread(work, "window").start()));
    }

    /** Closes it, and waits until it is closed. */
    void close() {
        onWindow(() -> {
            stage().orElseThrow().close();
            return true;
        });
        window.join();
    }

    static <T> T onWindow(Supplier<T> look) {
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

    /** Waits until something is seen, and fails where it never is. */
    void await(String what, BooleanSupplier sight) {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (System.nanoTime() < end) {
            if (window.isCompletedExceptionally()) {
                window.join();
            }
            if (isUp() && onWindow(() -> stage().isPresent() && sight.getAsBoolean())) {
                return;
            }
            pause(50);
        }
        keep("missing");
        throw new AssertionError("After " + PATIENCE.toSeconds() + " s there was still no sign of " + what);
    }

    static void pause(long milliseconds) {
        try {
            Thread.sleep(milliseconds);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static boolean isUp() {
        try {
            Platform.runLater(() -> {});
            return true;
        } catch (IllegalStateException notYet) {
            return false;
        }
    }

    static Optional<Stage> stage() {
        return Window.getWindows().stream()
                .filter(Stage.class::isInstance)
                .map(Stage.class::cast)
                .findFirst();
    }

    static Scene scene() {
        return stage().orElseThrow().getScene();
    }

    /** Waits until the window says some words. */
    void awaitWords(String words) {
        await("“" + words + "”", () -> shows(words));
    }

    static boolean shows(String words) {
        return labelled(words).isPresent();
    }

    private static Optional<Labeled> labelled(String words) {
        return scene().getRoot().lookupAll("*").stream()
                .filter(Labeled.class::isInstance)
                .map(Labeled.class::cast)
                .filter(LiveWindow::isSeen)
                .filter(label -> label.getText() != null && label.getText().contains(words))
                .findFirst();
    }

    private static boolean isSeen(Node node) {
        for (Node one = node; one != null; one = one.getParent()) {
            if (!one.isVisible()) {
                return false;
            }
        }
        return true;
    }

    /**
     * Presses Stop in the very moment in which the window says that some work begins, however quick the work is.
     *
     * @param work how the words begin by which the window tells of it
     * @return ends this when run
     */
    static Runnable stopWhenever(String work) {
        return onWindow(() -> {
            List<Runnable> ends = new ArrayList<>();
            for (Node node : scene().getRoot().lookupAll(".button")) {
                if (node instanceof Button stop && stop.getText().equals("Stop")) {
                    StringProperty said = ((Label) stop.getParent().lookup(".label")).textProperty();
                    ChangeListener<String> press = (property, before, now) -> {
                        if (now.startsWith(work)) {
                            stop.fire();
                        }
                    };
                    said.addListener(press);
                    ends.add(() -> said.removeListener(press));
                }
            }
            assertThat(ends).as("buttons that stop something").isNotEmpty();
            return () -> onWindow(() -> {
                ends.forEach(Runnable::run);
                return true;
            });
        });
    }

    /** Clicks on something that says these words. */
    static void click(String words) {
        click(onWindow(
                () -> middle(labelled(words).orElseThrow(() -> new AssertionError("Nothing says “" + words + "”")))));
    }

    private static Point2D middle(Node node) {
        Bounds bounds = node.localToScreen(node.getBoundsInLocal());
        return new Point2D(bounds.getCenterX(), bounds.getCenterY());
    }

    static void click(Point2D at) {
        onWindow(() -> {
            Robot robot = new Robot();
            robot.mouseMove(at);
            robot.mouseClick(MouseButton.PRIMARY);
            return true;
        });
        pause(120);
    }

    static void type(KeyCode key) {
        onWindow(() -> {
            new Robot().keyType(key);
            return true;
        });
        pause(60);
    }

    static void command(KeyCode key) {
        onWindow(() -> {
            Robot robot = new Robot();
            robot.keyPress(KeyCode.CONTROL);
            robot.keyType(key);
            robot.keyRelease(KeyCode.CONTROL);
            return true;
        });
    }

    static void write(String line) {
        for (char letter : line.toUpperCase(Locale.ROOT).toCharArray()) {
            type(letter == ' ' ? KeyCode.SPACE : KeyCode.getKeyCode(String.valueOf(letter)));
        }
    }

    /** Keeps a picture of the window under {@code target/pictures}. */
    static void keep(String name) {
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
        try {
            Files.createDirectories(PICTURES);
            ImageIO.write(
                    picture, "png", PICTURES.resolve("window-" + name + ".png").toFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}

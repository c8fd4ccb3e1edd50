package org.ouzelbook.ui.window;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.canvas.Canvas;
import javafx.scene.image.WritableImage;
import javafx.scene.layout.Pane;
import javafx.stage.Stage;
import org.ouzelbook.ui.strip.Frame;
import org.ouzelbook.ui.strip.HitIndex;
import org.ouzelbook.ui.strip.Palette;
import org.ouzelbook.ui.strip.ReadyStrip;
import org.ouzelbook.ui.strip.StripDrawing;

/**
 * Measures how long the strip takes to follow a hand, and how much memory it needs, with 100,000 sightings; writes a page. It
 * needs a display.
 */
final class StripBench {
    private static final double WIDTH = 1040;
    private static final double HEIGHT = 600;
    private static final int FRAMES = 80;
    private static final int WARM_UP = 25;
    private static final double MEGABYTE = 1024 * 1024;

    private final StringBuilder rows = new StringBuilder();
    private final Canvas canvas = new Canvas(WIDTH, HEIGHT);
    private final Stamps stamps = new Stamps(Palette.LIGHT, 1);
    private final WritableImage image = new WritableImage((int) WIDTH, (int) HEIGHT);

    private StripBench() {}

    /**
     * Measures, and writes the page.
     *
     * @param arguments the page to write
     * @throws IOException if it cannot be written
     */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 1) {
            throw new IllegalArgumentException("One argument: the page to write");
        }
        CompletableFuture<String> page = new CompletableFuture<>();
        Platform.startup(() -> {
            try {
                page.complete(new StripBench().measured());
            } catch (RuntimeException e) {
                page.completeExceptionally(e);
            }
        });
        Files.writeString(Path.of(arguments[0]), page.join(), StandardCharsets.UTF_8);
        Platform.exit();
    }

    private String measured() {
        Stage stage = new Stage();
        stage.setScene(new Scene(new Pane(canvas), WIDTH, HEIGHT));
        stage.show();
        BenchRiver spread = BenchRiver.of(20, 100_000);
        BenchRiver crowded = BenchRiver.of(1, 100_000);
        measure("one season of 5,000", spread::season);
        measure("one season of 100,000", crowded::season);
        measure("all 20 seasons, 100,000", spread::seasons);
        measure("one place, %,d in 20 seasons".formatted(spread.atPlace()), spread::place);
        measure("one place, %,d in one season".formatted(crowded.atPlace()), crowded::place);
        stage.close();
        return """
                # How fast the strip is

                Measured by `StripBench` (its command stands in DEVELOPERS.md) on this kind of machine: %s, %d processors, Java %s,
                JavaFX pipeline “%s”, paper of %.0f × %.0f pixels. An invented river of 40 km with 100,000 sightings; %d frames each,
                alternately moved and zoomed.
                *Make ready* happens once when a view is entered. A *frame* is all that happens when the hand moves: laying out, finding
                the places that answer, painting and rendering; 16.7 ms keep up with a screen of 60 frames a second.
                *Processor* is what all threads together worked for a frame, the compiler of the running program included; unlike the
                frame itself it does not grow where other programs keep the machine busy (the load was %.1f at the end).
                *Choose* is a frame in which only something else is pointed out. *Shapes* are those of the fullest frame. *Memory* is what
                the view holds beyond the records.

                | view | make ready, ms | frame, median ms | frame, 95 %% ms | processor for a frame, mean ms | of it laying out, median ms | choose, median ms | shapes | memory, MB |
                |---|--:|--:|--:|--:|--:|--:|--:|--:|
                %s""".formatted(
                        System.getProperty("os.name") + " " + System.getProperty("os.arch"),
                        Runtime.getRuntime().availableProcessors(),
                        System.getProperty("java.version"),
                        System.getProperty("prism.order", "default"),
                        WIDTH,
                        HEIGHT,
                        FRAMES,
                        ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(),
                        rows);
    }

    private void measure(String name, Supplier<ReadyStrip> making) {
        double before = used();
        long start = System.nanoTime();
        ReadyStrip strip = making.get();
        double ready = millis(start);
        List<Double> frames = new ArrayList<>();
        List<Double> layouts = new ArrayList<>();
        List<Double> choices = new ArrayList<>();
        int shapes = 0;
        Frame farthest = strip.farthest(WIDTH, HEIGHT);
        Frame frame = farthest;
        double processor = 0;
        for (int i = 0; i < WARM_UP + FRAMES; i++) {
            if (i == WARM_UP) {
                processor = processorMillis();
            }
            frame = next(strip, frame, farthest, i);
            start = System.nanoTime();
            StripDrawing drawing = strip.drawing(frame);
            HitIndex index = HitIndex.of(drawing.areas());
            double layout = millis(start);
            paint(drawing);
            double whole = millis(start);
            start = System.nanoTime();
            drawing.pointingOut(index.at(WIDTH / 2, HEIGHT / 2).map(area -> area.subject()), List.of());
            double choice = millis(start);
            if (i >= WARM_UP) {
                frames.add(whole);
                layouts.add(layout);
                choices.add(choice);
                shapes = Math.max(shapes, drawing.shapes().size());
            }
        }
        processor = (processorMillis() - processor) / FRAMES;
        double after = used();
        rows.append("| %s | %.0f | %.1f | %.1f | %.1f | %.1f | %.2f | %,d | %.0f |%n"
                .formatted(
                        name,
                        ready,
                        quantile(frames, 0.5),
                        quantile(frames, 0.95),
                        processor,
                        quantile(layouts, 0.5),
                        quantile(choices, 0.5),
                        shapes,
                        Math.max(0, after - before)));
        // The strip must live until the memory was measured.
        if (strip.closest() < 0) {
            throw new IllegalStateException();
        }
    }

    /** Moves three times, then comes a little nearer or goes a little farther, down to a sixteenth of it all and back. */
    private static Frame next(ReadyStrip strip, Frame frame, Frame farthest, int i) {
        if (i % 4 != 3) {
            return frame.moved((frame.to() - frame.from()) / 40, farthest);
        }
        double factor = i / 40 % 2 == 0 ? 1.4 : 1 / 1.4;
        return frame.zoomed(factor, (frame.from() + frame.to()) / 2, farthest, strip.closest());
    }

    private void paint(StripDrawing drawing) {
        CanvasPen pen = new CanvasPen(canvas.getGraphicsContext2D(), Palette.LIGHT, Optional.of(stamps));
        pen.clear();
        pen.draw(drawing.shapes(), 0);
        canvas.snapshot(null, image);
    }

    private static double processorMillis() {
        return ManagementFactory.getOperatingSystemMXBean() instanceof OperatingSystemMXBean machine
                ? machine.getProcessCpuTime() / 1e6
                : 0;
    }

    private static double millis(long start) {
        return (System.nanoTime() - start) / 1e6;
    }

    private static double quantile(List<Double> values, double share) {
        double[] sorted = values.stream().mapToDouble(Double::doubleValue).toArray();
        Arrays.sort(sorted);
        return sorted[(int) Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
    }

    private static double used() {
        Runtime machine = Runtime.getRuntime();
        for (int i = 0; i < 3; i++) {
            System.gc();
        }
        return (machine.totalMemory() - machine.freeMemory()) / MEGABYTE;
    }
}

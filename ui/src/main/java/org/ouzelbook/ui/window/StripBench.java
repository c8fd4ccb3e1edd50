package org.ouzelbook.ui.window;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.IntStream;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.stage.Stage;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.strip.StripView;

/** Measures how long the strip takes to follow a hand, in a real window, with 100,000 sightings; writes a table. It needs a display. */
final class StripBench {
    private static final int FRAMES = 400;
    private static final int WARM_UP = 60;

    /** A screen of 60 frames a second waits so long for one, in milliseconds. */
    private static final double BEAT = 16.7;

    private static final Work NO_WORK = new Work() {
        @Override
        public <T> void start(String what, Function<Progress, T> job, Consumer<T> done, Consumer<Throwable> failed) {}
    };

    private final Book book;
    private final List<Measured> measured = new ArrayList<>();

    private StripBench(Book book) {
        this.book = book;
    }

    private record Measured(String row, double readyMillis, double windowMillis, double paintingMillis, int shapes) {}

    /**
     * Measures, and writes the table.
     *
     * @param arguments the file to write
     * @throws IOException if it cannot be written
     */
    public static void main(String[] arguments) throws IOException {
        if (arguments.length != 1) {
            throw new IllegalArgumentException("One argument: the file to write");
        }
        BenchFrames frames = new BenchFrames();
        frames.start();
        CompletableFuture<Boolean> up = new CompletableFuture<>();
        Platform.startup(() -> up.complete(true));
        up.join();
        Platform.setImplicitExit(false);
        Path folder = Files.createTempDirectory("strip-bench");
        try (Book book = Book.create(folder.resolve("bench"))) {
            StripBench bench = new StripBench(book);
            bench.measureAll();
            Files.writeString(
                    Path.of(arguments[0]),
                    bench.table(frames.stop(folder.resolve("frames.jfr"))),
                    StandardCharsets.UTF_8);
        }
        Platform.exit();
    }

    private void measureAll() {
        BenchRiver spread = BenchRiver.of(20, 100_000);
        BenchRiver crowded = BenchRiver.of(1, 100_000);
        StripView season = new StripView.OneSeason(BenchRiver.LAST_SEASON);
        measure("one season of 5,000", spread, season, 1040, 600);
        measure("one season of 100,000", crowded, season, 1040, 600);
        measure("one season of 100,000", crowded, season, 1600, 850);
        measure("all 20 seasons, 100,000", spread, new StripView.AllSeasons(), 1040, 600);
        measure("one place, %,d in 20 seasons".formatted(spread.atPlace()), spread, spread.place(), 1040, 600);
        measure("one place, %,d in one season".formatted(crowded.atPlace()), crowded, crowded.place(), 1040, 600);
    }

    private void measure(String name, BenchRiver river, StripView view, int width, int height) {
        CompletableFuture<Measured> done = new CompletableFuture<>();
        String row = "%s; %d × %d".formatted(name, width, height);
        int first = measured.size() * (WARM_UP + FRAMES);
        Platform.runLater(() -> {
            BookViewModel model = new BookViewModel(book, NO_WORK, "bench");
            StripPane pane = new StripPane(model.strip(), model.ends(), new Look(Path.of("no look kept")));
            Stage stage = new Stage();
            stage.setScene(new Scene(pane, width, height));
            stage.show();
            long start = System.nanoTime();
            model.strip().show(river.contents());
            model.strip().go(view);
            double ready = (System.nanoTime() - start) / 1e6;
            BenchHand hand = new BenchHand(pane);
            new AnimationTimer() {
                private int frame;
                private int shapes;
                private double window;
                private double painting;

                @Override
                public void handle(long now) {
                    if (frame == WARM_UP) {
                        window = processorMillis("JavaFX Application Thread");
                        painting = processorMillis("QuantumRenderer");
                    }
                    if (frame == WARM_UP + FRAMES) {
                        stop();
                        stage.close();
                        done.complete(new Measured(
                                row,
                                ready,
                                (processorMillis("JavaFX Application Thread") - window) / FRAMES,
                                (processorMillis("QuantumRenderer") - painting) / FRAMES,
                                shapes));
                        return;
                    }
                    BenchFrames.Moved moved = new BenchFrames.Moved();
                    moved.number = first + frame;
                    moved.begin();
                    hand.move(frame);
                    moved.commit();
                    frame++;
                    shapes = Math.max(
                            shapes,
                            model.strip()
                                    .drawing()
                                    .get()
                                    .map(drawing -> drawing.shapes().size())
                                    .orElse(0));
                }
            }.start();
        });
        measured.add(done.join());
    }

    private String table(Map<Integer, Double> millis) {
        StringBuilder table = new StringBuilder("""
                %s %s, %d processors, Java %s, JavaFX pipeline “%s”; load %.1f at the end.

                | view and paper | entering, ms | frame, median ms | 95 %% | 99 %% | longest | over 16.7 ms | processor: window, ms | processor: painting, ms | shapes |
                |---|--:|--:|--:|--:|--:|--:|--:|--:|--:|
                """.formatted(
                        System.getProperty("os.name"),
                        System.getProperty("os.arch"),
                        Runtime.getRuntime().availableProcessors(),
                        System.getProperty("java.version"),
                        System.getProperty("prism.order", "default"),
                        ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage()));
        for (int i = 0; i < measured.size(); i++) {
            int first = i * (WARM_UP + FRAMES) + WARM_UP;
            List<Double> frames = IntStream.range(first, first + FRAMES)
                    .mapToObj(millis::get)
                    .sorted()
                    .toList();
            Measured one = measured.get(i);
            table.append("| %s | %.0f | %.1f | %.1f | %.1f | %.1f | %.1f %% | %.1f | %.1f | %,d |%n"
                    .formatted(
                            one.row(),
                            one.readyMillis(),
                            frames.get(FRAMES / 2),
                            frames.get(FRAMES * 95 / 100),
                            frames.get(FRAMES * 99 / 100),
                            frames.get(FRAMES - 1),
                            100.0 * frames.stream().filter(time -> time > BEAT).count() / FRAMES,
                            one.windowMillis(),
                            one.paintingMillis(),
                            one.shapes()));
        }
        return table.toString();
    }

    private static double processorMillis(String thread) {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        double nanos = 0;
        for (long id : threads.getAllThreadIds()) {
            ThreadInfo known = threads.getThreadInfo(id);
            if (known != null && known.getThreadName().startsWith(thread)) {
                nanos += threads.getThreadCpuTime(id);
            }
        }
        return nanos / 1e6;
    }
}

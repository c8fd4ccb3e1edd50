package org.ouzelbook.stats.simulate.calibration;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * The bench: simulates the books of a grid, counts their territories by rule and by model, and writes how far the counts are from
 * the truth. What was counted is kept in a file, line by line, so that a run may be stopped and goes on where it was.
 */
public final class Calibration {
    private final Path kept;
    private final PrintStream progress;
    private final Map<String, CountedBook> before = new LinkedHashMap<>();

    private Calibration(Path kept, PrintStream progress) throws IOException {
        this.kept = kept;
        this.progress = progress;
        if (Files.exists(kept)) {
            for (String line : Files.readAllLines(kept)) {
                int tab = line.indexOf('\t');
                before.put(line.substring(0, tab), CountedBook.read(line.substring(tab + 1)));
            }
        }
    }

    /**
     * Runs the grid and writes the page.
     *
     * @param arguments the page to write, the file that keeps what was counted, books of each kind, and the seed
     * @throws IOException if a file cannot be read or written
     * @throws InterruptedException if the run is stopped
     * @throws IllegalArgumentException if an argument is missing
     */
    public static void main(String[] arguments) throws IOException, InterruptedException {
        if (arguments.length != 4) {
            throw new IllegalArgumentException(
                    "Name the page, the file that keeps the counts, books of each kind, the seed");
        }
        Path page = Path.of(arguments[0]);
        List<Trial> grid = Trial.grid(Integer.parseInt(arguments[2]), Long.parseLong(arguments[3]));
        Calibration bench = new Calibration(Path.of(arguments[1]), System.err);
        Map<Trial, CountedBook> results = bench.run(grid);
        String command = "java -cp 'ui/target/ouzelbook/lib/*' " + Calibration.class.getName() + " \\\n    "
                + String.join(" ", arguments);
        String version = Optional.ofNullable(Calibration.class.getPackage().getImplementationVersion())
                .orElse("(unpacked)");
        Files.writeString(page, CalibrationPage.of(results, command, version));
    }

    private Map<Trial, CountedBook> run(List<Trial> grid) throws IOException, InterruptedException {
        ExecutorService workers =
                Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());
        try {
            Map<Trial, Future<CountedBook>> running = new LinkedHashMap<>();
            for (Trial trial : grid) {
                running.put(trial, workers.submit(() -> counted(trial)));
            }
            Map<Trial, CountedBook> results = new LinkedHashMap<>();
            for (Map.Entry<Trial, Future<CountedBook>> entry : running.entrySet()) {
                results.put(entry.getKey(), entry.getValue().get());
                progress.print("\r" + results.size() + " of " + grid.size() + " books");
            }
            progress.println();
            return results;
        } catch (ExecutionException e) {
            throw new IllegalStateException("A book could not be counted", e);
        } finally {
            workers.shutdownNow();
        }
    }

    private CountedBook counted(Trial trial) throws IOException {
        CountedBook known = before.get(trial.name());
        if (known != null) {
            return known;
        }
        CountedBook counted = trial.counted();
        synchronized (this) {
            Files.writeString(
                    kept,
                    trial.name() + "\t" + counted.line() + "\n",
                    StandardOpenOption.CREATE,
                    StandardOpenOption.APPEND);
        }
        return counted;
    }
}

package org.ouzelbook.ui.app.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.tracker.exchange.export.Audience;
import org.ouzelbook.ui.cli.CommandRun;

/** An export tells what it does, and whenever it is stopped the folder is as it was. */
class ExportStoppedTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-6.43,57.28],[-6.42,57.25],[-6.40,57.20]]}}
            """;

    @TempDir
    Path folder;

    private Path book;
    private Path out;

    @BeforeEach
    void makeABook() throws IOException {
        book = folder.resolve("arrel.mv.db");
        run("new", book, "--river", Files.writeString(folder.resolve("river.geojson"), RIVER));
        String sightings = IntStream.range(0, 1100)
                .mapToObj(i -> String.format(
                        "2026-%02d-%02d,%d.%02d,dipper,%d", 3 + i % 3, 1 + i % 28, i % 8, i / 11, 1 + i % 2))
                .collect(Collectors.joining("\n", "date,km,species,count\n", "\n"));
        run("import", book, Files.writeString(folder.resolve("birds.csv"), sightings));
        out = Files.writeString(folder.resolve("out.geojson"), "before");
    }

    private static void run(Object... arguments) {
        CommandRun run = CommandRun.of(arguments);
        assertThat(run.exitCode()).as(run.out() + run.err()).isZero();
    }

    private ExportRequest request(Audience audience) {
        return new ExportRequest(
                book, ExportFormat.GEOJSON, audience, Publishing.UNSAID, Optional.empty(), Optional.of(out), true);
    }

    @ParameterizedTest
    @CsvSource({"PUBLIC, READING", "PUBLIC, WRITING", "PUBLIC, LOOKING", "PRIVATE, READING", "PRIVATE, WRITING"})
    void leavesEverythingAsItWasWhereItIsStopped(Audience audience, ExportStep stoppedAt) throws IOException {
        List<Path> before = files();

        assertThatThrownBy(() -> ExportBook.run(request(audience), step -> (done, total) -> step != stoppedAt))
                .isInstanceOf(CancellationException.class);

        assertThat(out).hasContent("before");
        assertThat(files()).isEqualTo(before);
    }

    @Test
    void tellsOneStepAfterAnother() throws IOException {
        List<ExportStep> told = new ArrayList<>();

        ExportBook.run(request(Audience.PUBLIC), step -> (done, total) -> told.add(step));

        assertThat(told.stream().distinct())
                .containsExactly(ExportStep.READING, ExportStep.WRITING, ExportStep.LOOKING);
        assertThat(out).content().startsWith("{\"type\":\"FeatureCollection\"");
    }

    private List<Path> files() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        }
    }
}

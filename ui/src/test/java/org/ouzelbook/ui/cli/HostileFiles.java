package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/** A book and files that are meant to harm it, or look as if they were. */
record HostileFiles(Path folder, Path book) {
    static final String RIVER = """
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-6.40,57.28],[-6.40,57.20]]}}
            """;
    static final String HEADER = "date,km,species,count,note\n";
    static final String ROW = "2026-03-02,3.1,dipper,1,\n";

    /** {@return a book with one sighting, in a folder} */
    static HostileFiles in(Path folder) {
        try {
            HostileFiles made = new HostileFiles(folder, folder.resolve("arrel.mv.db"));
            Path river = Files.writeString(folder.resolve("arrel.geojson"), RIVER);
            assertThat(CommandRun.of("new", made.book, "--river", river).exitCode())
                    .isZero();
            Path good = Files.writeString(folder.resolve("good.csv"), HEADER + "2026-03-01,2.5,dipper,1,\n");
            assertThat(CommandRun.of("import", made.book, good).exitCode()).isZero();
            return made;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Path file(String name, byte[] bytes) {
        try {
            Path file = folder.resolve(name);
            Files.createDirectories(file.getParent());
            return Files.write(file, bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Path file(String name, String text) {
        return file(name, text.getBytes(StandardCharsets.UTF_8));
    }

    Path zip(String name, Map<String, String> files) {
        try {
            Path zip = folder.resolve(name);
            try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(zip))) {
                for (Map.Entry<String, String> file : files.entrySet()) {
                    out.putNextEntry(new ZipEntry(file.getKey()));
                    out.write(file.getValue().getBytes(StandardCharsets.UTF_8));
                }
            }
            return zip;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Imports a file that must be refused: with its name and these words, without a trace of the program, and the book as it was. */
    void refuses(Path file, String... words) {
        String before = sightings();
        CommandRun run = CommandRun.of("import", book, file);
        String told = run.out() + run.err();

        assertThat(run.exitCode()).as(told).isIn(1, 2);
        assertThat(told).contains(String.valueOf(file.getFileName())).contains(words);
        assertThat(told).doesNotContain("Exception", "\tat ", "did not foresee", "NaN km");
        assertThat(sightings()).isEqualTo(before);
    }

    /** Imports a file that is odd but harmless. */
    String takes(Path file) {
        CommandRun run = CommandRun.of("import", book, file);
        assertThat(run.err()).isEmpty();
        assertThat(run.exitCode()).as(run.out()).isZero();
        return run.out();
    }

    String sightings() {
        return CommandRun.of("show", book, "sightings", "--json").out();
    }
}

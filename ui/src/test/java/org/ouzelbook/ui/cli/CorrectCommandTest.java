package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Sighting;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.SightingQuery;

/** A Sunday's notebook read from a file, and its slips put right. */
class CorrectCommandTest {
    private static final String RIVER = """
            {"type":"Feature","properties":{"name":"Arrel Water"},"geometry":{"type":"LineString","coordinates":
              [[-3.40,52.10],[-3.40,52.20]]}}
            """;
    private static final String NOTEBOOK = """
            visit 2026-05-10 2.0-6.0, 0700, HB, looking for dipper kingfisher

            2.4 0712 pair
            = 3.1 song
            5.2 0830 flew up, tb 5.6
            end 0935
            """;

    @TempDir
    Path folder;

    private Path book;

    @BeforeEach
    void logASunday() throws IOException {
        book = folder.resolve("arrel");
        Path river = Files.writeString(folder.resolve("river.geojson"), RIVER);
        Path notebook = Files.writeString(folder.resolve("notebook.txt"), NOTEBOOK);
        assertThat(CommandRun.of("new", book, "--river", river).exitCode()).isZero();
        CommandRun run = CommandRun.of("log", book, "--file", notebook);
        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out()).contains("Not seen: kingfisher, on km 2.00–6.00 only.");
    }

    private List<Sighting> sightings() {
        try (Book open = Book.open(book)) {
            return open.read(view -> view.sightings(SightingQuery.ALL));
        }
    }

    @Test
    void showsARecordAsItsLine() {
        assertThat(CommandRun.of("correct", book, "last").out().strip())
                .isEqualTo("visit 2026-05-10 2.00 to 6.00, 0700-0935, by HB, looking for dipper, kingfisher");
    }

    @Test
    void writesASightingAnewAndUndoesIt() {
        Sighting turned = sightings().get(2);

        CommandRun run = CommandRun.of("correct", book, turned.id(), "5.3 0830 2 flew up, tb 5.6");

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(run.out()).contains("km 5.30").contains("two dippers");
        assertThat(sightings().get(2).id()).isEqualTo(turned.id());
        assertThat(CommandRun.of("correct", book, "last").out()).startsWith("5.3 0830 2 flew up");

        CommandRun.of("undo", book);

        assertThat(sightings().get(2)).isEqualTo(turned);
    }

    @Test
    void rehearsesAndAsksWhereALineIsUnclear() {
        List<Sighting> before = sightings();
        Sighting first = before.get(0);

        assertThat(CommandRun.of("correct", book, first.id(), "2.5 pair", "--dry-run")
                        .out())
                .contains("km 2.50");
        CommandRun unclear = CommandRun.of("correct", book, first.id(), "2.5 blah");

        assertThat(unclear.exitCode()).isEqualTo(1);
        assertThat(unclear.err()).contains("“blah” is not understood").contains("Nothing was stored");
        assertThat(CommandRun.of("correct", book, first.id(), "2.5 pair = 3.0 song")
                        .err())
                .contains("One line corrects one sighting");
        assertThat(sightings()).isEqualTo(before);
    }

    @Test
    void removesASightingButNoVisitThatHasSome() {
        CommandRun refused = CommandRun.of("correct", book, "2026-05-10", "--remove");
        assertThat(refused.exitCode()).isEqualTo(1);
        assertThat(refused.err()).contains("Remove those first");

        assertThat(CommandRun.of("correct", book, sightings().get(0).id(), "--remove")
                        .out())
                .startsWith("Removed: ");
        assertThat(sightings()).hasSize(2);
    }

    @Test
    void saysThatThereIsNoSuchRecord() {
        CommandRun run = CommandRun.of("correct", book, "x9");

        assertThat(run.exitCode()).isNotZero();
        assertThat(run.err()).contains("No sighting or visit is called x9");
    }

    @Test
    void logsSeveralLinesOfOneCommandAndTellsOfAMissingFile() {
        CommandRun run = CommandRun.of("log", book, "--visit", "2026-05-10", "2.6 song", "4.4 0901 juv dep");

        assertThat(run.exitCode()).as(run.err()).isZero();
        assertThat(sightings()).hasSize(5);
        assertThat(CommandRun.of("log", book, "--file", folder.resolve("none.txt"))
                        .err())
                .contains("There is no file");
    }
}

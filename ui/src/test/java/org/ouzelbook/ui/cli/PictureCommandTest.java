package org.ouzelbook.ui.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.strip.SampleRiver;

class PictureCommandTest {
    @TempDir
    private Path folder;

    private Path book;
    private Path file;

    @BeforeEach
    void makeABook() {
        book = folder.resolve("arrel");
        file = folder.resolve("strip.svg");
        try (Book made = Book.create(book)) {
            made.change(Message.of("window.title"), "HB", edit -> {
                var records = SampleRiver.of2026().records();
                records.rivers().rivers().forEach(edit::add);
                records.landmarks().forEach(edit::add);
                records.visits().forEach(edit::add);
                records.sightings().forEach(edit::add);
                return records;
            });
        }
        book = folder.resolve("arrel.mv.db");
    }

    @Test
    void drawsASeasonAPlaceAndAllSeasonsWithTheirLegend() throws IOException {
        assertThat(CommandRun.of("picture", book, file, "--season", "2026").exitCode())
                .isZero();
        assertThat(Files.readString(file)).contains("Otter Stone", "16 Mar", "singing: a ring round it", "Private:");

        assertThat(CommandRun.of("picture", book, file, "--place", "otter stone")
                        .exitCode())
                .isZero();
        assertThat(Files.readString(file)).contains("visits that saw it");

        assertThat(CommandRun.of("picture", book, file).exitCode()).isZero();
        assertThat(Files.readString(file)).contains("territories, likely and range");
    }

    @Test
    void drawsForEverybodyAllSeasonsByWholeKilometresOnly() throws IOException {
        assertThat(CommandRun.of("picture", book, file, "--public").exitCode()).isZero();
        assertThat(Files.readString(file)).startsWith("<svg").doesNotContain("Private:");
        Files.delete(file);

        for (String more : new String[] {"--by-model", "--nests", "--season=2026", "--place=Otter Stone", "--bird=X"}) {
            CommandRun run = CommandRun.of("picture", book, file, "--public", more);
            assertThat(run.exitCode()).as(more).isEqualTo(2);
            assertThat(run.err()).contains("for everybody");
        }
        assertThat(file).doesNotExist();
    }

    @Test
    void saysWhatTheBookDoesNotHold() {
        CommandRun place = CommandRun.of("picture", book, file, "--place", "Nowhere");
        assertThat(place.exitCode()).isEqualTo(2);
        assertThat(place.err()).contains("no landmark “Nowhere”");

        assertThat(CommandRun.of("picture", book, file, "--season", "1999").exitCode())
                .isEqualTo(2);
        assertThat(CommandRun.of("picture", book, file, "--bird", "X").exitCode())
                .isEqualTo(2);
        assertThat(file).doesNotExist();
    }
}

package org.ouzelbook.tracker.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ouzelbook.tracker.store.BookFixture.*;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.concurrent.CancellationException;
import java.util.stream.Stream;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Progress;

class BackupsTest {
    private static final Instant FIRST_DAY = Instant.parse("2026-03-01T12:00:00Z");

    @TempDir
    Path folder;

    private Book open(int day) {
        Clock clock = Clock.fixed(FIRST_DAY.plus(day, ChronoUnit.DAYS), ZoneOffset.UTC);
        return Book.open(folder.resolve("arrel"), Migrations.ALL, clock);
    }

    private List<String> copies() throws IOException {
        try (Stream<Path> files = Files.list(folder.resolve("arrel-backups"))) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private Book restored(Path zip) throws IOException {
        Path place = Files.createTempDirectory(folder, "somewhere");
        try (ZipFile in = new ZipFile(zip.toFile());
                InputStream bytes = in.getInputStream(in.entries().nextElement())) {
            Files.copy(bytes, place.resolve(in.entries().nextElement().getName()));
        }
        return Book.open(place.resolve("arrel"));
    }

    @Test
    void copiesTheBookBeforeTheFirstChangeOfADayAndKeepsTenDays() throws IOException {
        try (Book book = Book.create(folder.resolve("arrel"))) {
            addEverything(book);
        }
        assertThat(folder.resolve("arrel-backups")).doesNotExist();
        Files.createDirectory(folder.resolve("arrel-backups"));
        Files.createFile(folder.resolve("arrel-backups/my own.zip"));

        for (int day = 0; day < 12; day++) {
            try (Book book = open(day)) {
                add(book, sighting("d" + day, 9, java.util.Set.of()));
                add(book, sighting("e" + day, 9, java.util.Set.of()));
            }
        }

        assertThat(copies())
                .hasSize(11)
                .contains("my own.zip", "arrel-2026-03-12.zip", "arrel-2026-03-03.zip")
                .doesNotContain("arrel-2026-03-02.zip");
        try (Book copy = restored(folder.resolve("arrel-backups/arrel-2026-03-12.zip"))) {
            assertThat(copy.read(view -> view.sightings("e10")).size()).isEqualTo(1);
            assertThat(copy.read(view -> view.sightings("d11")).size()).isZero();
            assertThat(copy.check(Progress.NONE)).isEmpty();
        }
    }

    @Test
    void copiesNothingForReadingAndRehearsing() {
        Book.create(folder.resolve("arrel")).close();
        try (Book book = open(0)) {
            addEverything(book);
        }
        try (Book book = open(1)) {
            book.history(1);
            book.rehearse(edit -> {
                edit.remove(SAMPLE);
                return null;
            });
        }

        assertThat(folder.resolve("arrel-backups")).doesNotExist();
    }

    @Test
    void makesAProvenCopyWhereAPersonWantsOne() throws IOException {
        try (Book book = Book.create(folder.resolve("arrel"))) {
            addEverything(book);
            Path zip = book.backup(folder.resolve("mine"), Progress.NONE);

            assertThat(zip).isEqualTo(folder.resolve("mine.zip"));
            try (Book copy = restored(zip)) {
                assertThat(copy.read(view -> view.sightings(SightingQuery.ALL)).size())
                        .isEqualTo(2);
            }
            assertThatThrownBy(() -> book.backup(zip, Progress.NONE))
                    .isInstanceOfSatisfying(
                            BookException.class, e -> assertThat(e.told().key()).isEqualTo("book.backup.exists"));
        }
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .noneMatch(name -> name.endsWith(".part") || name.startsWith("restored"));
        }
    }

    @Test
    void takesNoDamagedBookForAGoodCopy() throws Exception {
        Path zip = folder.resolve("mine.zip");
        try (Book book = Book.create(folder.resolve("arrel"))) {
            addEverything(book);
        }
        BookCheckTest.behindTheBack(folder.resolve("arrel"), "UPDATE nest SET height_m = 18");
        try (Book book = open(0)) {
            assertThatThrownBy(() -> book.backup(zip, Progress.NONE))
                    .isInstanceOfSatisfying(
                            BookException.class, e -> assertThat(e.told().key()).isEqualTo("book.backup.differs"));
        }
        assertThat(zip).doesNotExist();
    }

    @Test
    void leavesNothingBehindWhenAskedToStop() throws IOException {
        try (Book book = Book.create(folder.resolve("arrel"))) {
            add(book, WATER);
            book.change(SOMETHING, "ina", edit -> {
                for (int i = 0; i < 1500; i++) {
                    edit.add(casual(WATER, "c" + i, 8));
                }
                return null;
            });
            assertThatThrownBy(() -> book.backup(folder.resolve("mine"), (done, total) -> false))
                    .isInstanceOf(CancellationException.class);
        }
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrder("arrel.mv.db", "arrel-backups");
        }
    }
}

package org.ouzelbook.tracker.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ouzelbook.tracker.store.BookFixture.WATER;
import static org.ouzelbook.tracker.store.BookFixture.add;

import java.nio.file.Path;
import java.util.Map;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.Sighting;

/** With H2's own settings, every one of fifteen trials of this kind lost changes that had been acknowledged. */
class KilledProgramTest {
    private static final int TRIALS = 5;

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void makeABook() {
        try (Book book = Book.create(folder.resolve("arrel"))) {
            file = book.file();
            add(book, WATER);
        }
    }

    @Test
    void losesNothingThatWasAcknowledgedAndKeepsNothingHalf() throws Exception {
        Random delays = new Random(20261125);
        for (int trial = 0; trial < TRIALS; trial++) {
            int acknowledged;
            try (OtherProgram program = OtherProgram.start(file)) {
                int first = program.acknowledged();
                Thread.sleep(delays.nextInt(250));
                acknowledged = program.kill(first);
            }

            try (Book book = Book.open(file)) {
                Map<Integer, Long> sightings = book.read(view -> view.sightings(SightingQuery.ALL).stream()
                        .collect(Collectors.groupingBy(KilledProgramTest::number, Collectors.counting())));
                assertThat(sightings.keySet()).contains(acknowledged);
                assertThat(sightings).hasSizeBetween(acknowledged, acknowledged + 1);
                assertThat(sightings.values()).containsOnly(3L);
                assertThat(book.check(Progress.NONE)).isEmpty();
            }
        }
    }

    private static int number(Sighting sighting) {
        return Integer.parseInt(sighting.label());
    }

    @Test
    void saysThatAnotherProgramHasTheBookOpen() throws Exception {
        try (OtherProgram program = OtherProgram.start(file)) {
            program.acknowledged();

            assertThatThrownBy(() -> Book.open(file).close())
                    .isInstanceOfSatisfying(
                            BookException.class, e -> assertThat(e.told().key()).isEqualTo("book.inUse"));
            program.kill(0);
        }
    }
}

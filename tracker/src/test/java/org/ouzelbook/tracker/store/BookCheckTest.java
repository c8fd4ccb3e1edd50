package org.ouzelbook.tracker.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.ouzelbook.tracker.store.BookFixture.*;

import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;

class BookCheckTest {
    @TempDir
    Path folder;

    private Path path;

    @BeforeEach
    void makeABook() {
        path = folder.resolve("arrel");
        try (Book book = Book.create(path)) {
            addEverything(book);
        }
    }

    static void behindTheBack(Path path, String... statements) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:h2:file:" + path, "book", "");
                Statement statement = connection.createStatement()) {
            statement.execute("SET REFERENTIAL_INTEGRITY FALSE");
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    private List<Message> check() {
        try (Book book = Book.open(path)) {
            return book.check(Progress.NONE);
        }
    }

    @Test
    void findsNothingInASoundBook() {
        assertThat(check()).isEmpty();
    }

    /** H2 keeps no checksum of its pages: a flipped byte opens, and is read as if it had been written. */
    @Test
    void findsAFlippedByte() throws Exception {
        Path file = folder.resolve("arrel.mv.db");
        byte[] bytes = Files.readAllBytes(file);
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        int flipped = 0;
        try (RandomAccessFile out = new RandomAccessFile(file.toFile(), "rw")) {
            for (int at = text.indexOf("second arch"); at >= 0; at = text.indexOf("second arch", at + 1)) {
                out.seek(at + 1);
                out.write('a');
                flipped++;
            }
        }
        assertThat(flipped).isPositive();

        assertThat(check()).contains(Message.of("book.check.changed", Message.of("book.entry.nest", "N1")));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            UPDATE sighting SET individuals = 7 WHERE label = 's1'        | book.check.changed
            UPDATE visit SET source_row = 12                              | book.check.sum
            UPDATE simultaneous SET step = 9                              | book.check.sum
            UPDATE visit SET looked_for = ARRAY['Cinclus cinclus']        | book.check.changed
            UPDATE nest SET species = 'Nobody knows'                      | book.check.nonsense
            DELETE FROM kick_sample                                       | book.check.count
            DELETE FROM row_change WHERE nr = 3                           | book.check.count
            UPDATE step SET made_by = 'somebody else'                     | book.check.sum
            """)
    void findsWhatWasChangedBehindItsBack(String sql, String key) throws SQLException {
        behindTheBack(path, sql);

        assertThat(check()).extracting(Message::key).containsExactly(key);
    }

    @Test
    void findsRecordsThatContradictEachOther() {
        try (Book book = Book.open(path)) {
            add(book, sighting("far", 12.0, Set.of()), sighting("off the map", 40, Set.of()));
        }

        assertThat(check())
                .extracting(Message::key)
                .containsExactlyInAnyOrder("book.check.offVisit", "book.check.offVisit", "book.check.beyond");
    }
}

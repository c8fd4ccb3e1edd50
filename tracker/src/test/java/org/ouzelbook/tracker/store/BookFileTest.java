package org.ouzelbook.tracker.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.ouzelbook.tracker.store.BookFixture.addEverything;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What H2 2.4.240 takes for a database, and a book must not take for a book. */
class BookFileTest {
    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void makeABook() {
        file = folder.resolve("arrel.mv.db");
        try (Book book = Book.create(folder.resolve("arrel"))) {
            assertThat(book.file()).isEqualTo(file);
            addEverything(book);
        }
    }

    private static void refuses(Runnable work, String key) {
        assertThatThrownBy(work::run)
                .isInstanceOfSatisfying(
                        BookException.class, e -> assertThat(e.told().key()).isEqualTo(key));
    }

    private void refusesAndLeavesAlone(String key) throws IOException {
        byte[] before = Files.readAllBytes(file);
        refuses(() -> Book.open(file).close(), key);
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void opensByEitherName() {
        Book.open(folder.resolve("arrel")).close();
        Book.open(file).close();
    }

    @Test
    void refusesAPathThatWouldRunSql() {
        Path path = folder.resolve("arrel;INIT=CREATE TABLE mischief(x INT)");

        refuses(() -> Book.create(path).close(), "book.semicolon");
        refuses(() -> Book.open(path).close(), "book.semicolon");
    }

    @Test
    void refusesToMakeABookWhereSomethingIs() throws IOException {
        Path empty = Files.createFile(folder.resolve("empty.mv.db"));

        refuses(() -> Book.create(file).close(), "book.exists");
        refuses(() -> Book.create(empty).close(), "book.exists");
        refuses(() -> Book.create(folder).close(), "book.isFolder");
        refuses(() -> Book.create(folder.resolve("nowhere/arrel")).close(), "book.folder.missing");
    }

    @Test
    void makesNoBookWhenAskedToOpenOneThatIsNotThere() {
        refuses(() -> Book.open(folder.resolve("other")).close(), "book.missing");
        assertThat(folder.resolve("other.mv.db")).doesNotExist();
    }

    @Test
    void refusesAnEmptyFile() throws IOException {
        Files.write(file, new byte[0]);

        refusesAndLeavesAlone("book.empty");
    }

    @Test
    void refusesAFileCutDownToItsHeaders() throws IOException {
        cutTo(8192);

        refusesAndLeavesAlone("book.cutOff");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.2, 0.5, 0.8, 0.95, 0.99})
    void neverOpensACutOffFileAsIfNothingWereMissing(double share) throws IOException {
        cutTo((long) (Files.size(file) * share));

        refuses(() -> Book.open(file).close(), "book.cutOff");
    }

    private void cutTo(long length) throws IOException {
        try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
            bytes.setLength(length);
        }
    }

    @Test
    void refusesATextFile() throws IOException {
        Files.writeString(file, "date,place\n2026-03-16,Otter Stone\n".repeat(1000));

        refusesAndLeavesAlone("book.foreign");
    }

    @Test
    void refusesAFileWhoseHeadersAreGone() throws IOException {
        try (RandomAccessFile bytes = new RandomAccessFile(file.toFile(), "rw")) {
            bytes.write(new byte[8192]);
        }

        refusesAndLeavesAlone("book.foreign");
    }

    @Test
    void refusesAnotherDatabase() throws SQLException {
        Path other = folder.resolve("other");
        try (Connection connection = DriverManager.getConnection("jdbc:h2:file:" + other, "book", "")) {
            connection.createStatement().execute("CREATE TABLE accounts(id INT)");
        }

        refuses(() -> Book.open(other).close(), "book.foreign");
    }

    @Test
    void refusesABookOfANewerProgram() throws SQLException {
        try (Connection connection =
                DriverManager.getConnection("jdbc:h2:file:" + folder.resolve("arrel"), "book", "")) {
            connection.createStatement().execute("UPDATE book SET schema_version = 1000");
        }

        refuses(() -> Book.open(file).close(), "book.newer");
    }

    @Test
    void refusesABookThatThisProgramHasOpen() {
        try (Book book = Book.open(file)) {
            refuses(() -> Book.open(book.file()).close(), "book.inUse");
        }
        Book.open(file).close();
    }
}

package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.tracker.store.SightingQuery;

/** A file with problems is dropped on the real window, asked about, taken in and undone. */
@Tag("window")
class ImportWindowTest {
    @TempDir
    private Path folder;

    @Test
    @Timeout(value = 4, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
    void asksBeforeItWritesAndUndoesInOneStep() throws IOException {
        Path file = folder.resolve("arrel");
        int before;
        try (Book book = SampleBook.create(file)) {
            before = sightings(book);
        }
        Path notes = Files.write(
                folder.resolve("notes.csv"),
                List.of(
                        "date,river,km,species,count,note",
                        "03/04/2026,Arrel Water,7.1,dipper,2,",
                        "05/04/2026,Arrel Water,8.4,dipper,1,",
                        "05/04/2026,Arrel Water,9.9,dipprr,1,hard to read",
                        "31.06.2026,Arrel Water,9.9,dipper,1,by the weir"));
        LiveWindow window = LiveWindow.open(Optional.of(file), folder);
        window.awaitWords("Before you go out");
        LiveWindow.type(KeyCode.ESCAPE);
        window.await("the strip", () -> !LiveWindow.shows("Before you go out") && LiveWindow.shows("territories"));

        LiveWindow.type(KeyCode.I);
        window.awaitWords("Drop tables");
        LiveWindow.keep("import-invites");
        LiveWindow.onWindow(() -> {
            ((BookPane) LiveWindow.scene().getRoot()).take(List.of(notes));
            return true;
        });
        window.awaitWords("Does the day or the month stand first?");
        LiveWindow.keep("import-asks");
        LiveWindow.click("day before month");
        window.awaitWords("Add 2 rows");
        assertThat(LiveWindow.onWindow(() -> LiveWindow.shows("31.06.2026"))).isTrue();
        LiveWindow.click("31.06.2026");
        window.awaitWords("by the weir");
        LiveWindow.keep("import-problems");

        LiveWindow.click("Add 2 rows");
        window.awaitWords("Undo this import");
        LiveWindow.keep("import-done");
        LiveWindow.click("Undo this import");
        window.await("the invitation again", () -> LiveWindow.shows("Drop tables"));
        LiveWindow.type(KeyCode.ESCAPE);
        window.await("the strip again", () -> LiveWindow.scene().lookup(".strip") != null);
        window.close();

        try (Book book = Book.open(file)) {
            assertThat(sightings(book)).isEqualTo(before);
            assertThat(book.history(10)).hasSizeGreaterThanOrEqualTo(3);
        }
        assertThat(Files.readString(folder.resolve("notes-rejected.csv")))
                .contains("dipprr")
                .contains("31.06.2026");
    }

    private static int sightings(Book book) {
        return book.read(view -> view.sightings(SightingQuery.ALL)).size();
    }
}

package org.ouzelbook.ui.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecentBooksTest {
    @TempDir
    private Path folder;

    private Path book(String name) throws IOException {
        return Files.createFile(folder.resolve(name)).toAbsolutePath();
    }

    @Test
    void remembersTheNewestFirstAndEachOnce() throws IOException {
        RecentBooks recent = new RecentBooks(folder.resolve("memory").resolve("recent.txt"));
        Path arrel = book("arrel.mv.db");
        Path sorn = book("sörn – upper.mv.db");

        assertThat(recent.isFirstTime(arrel)).isTrue();
        recent.opened(arrel);
        recent.opened(sorn);
        recent.opened(arrel);

        assertThat(recent.list()).containsExactly(arrel, sorn);
        assertThat(recent.isFirstTime(arrel)).isFalse();
    }

    @Test
    void forgetsBooksThatAreGone() throws IOException {
        RecentBooks recent = new RecentBooks(folder.resolve("recent.txt"));
        Path arrel = book("arrel.mv.db");
        recent.opened(arrel);
        Files.delete(arrel);

        assertThat(recent.list()).isEmpty();
    }

    @Test
    void doesWithoutAMemoryThatCannotBeWritten() throws IOException {
        Path file = book("a-file");
        RecentBooks recent = new RecentBooks(file.resolve("recent.txt"));

        recent.opened(file);

        assertThat(recent.list()).isEmpty();
    }
}

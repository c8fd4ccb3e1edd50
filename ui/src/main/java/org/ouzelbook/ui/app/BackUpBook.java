package org.ouzelbook.ui.app;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.store.Book;

/** Makes a copy of a book and proves it. */
public final class BackUpBook {
    private BackUpBook() {}

    /**
     * What was made.
     *
     * @param book the full name of the book's file
     * @param copy the full name of the zip file that holds the copy
     * @param bytes its length, in bytes
     */
    public record Answer(String book, String copy, long bytes) {
        /** {@return its length, in megabytes} */
        public double megabytes() {
            return bytes / 1e6;
        }
    }

    /**
     * {@return what was made}
     *
     * @param path the book
     * @param zip the zip file to make, with or without its ending
     * @param progress hears how far the proof is
     */
    public static Answer backUp(Path path, Path zip, Progress progress) {
        try (Book book = Book.open(path)) {
            Path copy = book.backup(zip, progress);
            return new Answer(book.file().toString(), copy.toString(), Files.size(copy));
        } catch (IOException e) {
            throw new UncheckedIOException(zip.toString(), e);
        }
    }
}

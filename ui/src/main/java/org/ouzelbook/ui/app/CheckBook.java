package org.ouzelbook.ui.app;

import java.nio.file.Path;
import java.util.List;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.store.Book;

/** Looks whether a book is sound. */
public final class CheckBook {
    private CheckBook() {}

    /**
     * What was found.
     *
     * @param book the full name of the book's file
     * @param sound whether nothing was found
     * @param found damage, and records that contradict each other
     */
    public record Answer(String book, boolean sound, List<Message> found) {
        /** Copies the list. */
        public Answer {
            found = List.copyOf(found);
        }
    }

    /**
     * {@return what was found}
     *
     * @param path the book
     * @param progress hears how far it is
     */
    public static Answer check(Path path, Progress progress) {
        try (Book book = Book.open(path)) {
            List<Message> found = book.check(progress);
            return new Answer(book.file().toString(), found.isEmpty(), found);
        }
    }
}

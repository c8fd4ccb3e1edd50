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
     * @param seals sealed seasons whose answer is another today, and why; no fault of the book
     */
    public record Answer(String book, boolean sound, List<Message> found, List<Message> seals) {
        /** Copies the lists. */
        public Answer {
            found = List.copyOf(found);
            seals = List.copyOf(seals);
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
            List<Message> seals = found.isEmpty()
                    ? SealSeason.all(book).stream()
                            .flatMap(seal -> SealSeason.warnings(seal).stream())
                            .toList()
                    : List.of();
            return new Answer(book.file().toString(), found.isEmpty(), found, seals);
        }
    }
}

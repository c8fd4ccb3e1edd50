package org.ouzelbook.tracker.store;

import static org.ouzelbook.tracker.store.BookFixture.addEverything;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeEachCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/** For each test a book with everything in it, and as many others that start from it as are wanted; all are closed afterwards. */
final class VolunteerBooks implements BeforeEachCallback, AfterEachCallback {
    private final List<Book> open = new ArrayList<>();
    private Path folder = Path.of("");

    @Override
    public void beforeEach(ExtensionContext test) throws IOException {
        folder = Files.createTempDirectory("books");
        addEverything(empty());
    }

    @Override
    public void afterEach(ExtensionContext test) throws IOException {
        open.forEach(Book::close);
        open.clear();
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }

    /** {@return the book from which the others start} */
    Book start() {
        return open.get(0);
    }

    /** {@return a new book with nothing in it} */
    Book empty() {
        Book book = Book.create(folder.resolve("book" + open.size()));
        open.add(book);
        return book;
    }

    /** {@return a new book that starts from the first one} */
    Book started() {
        Book book = Volunteers.startedFrom(folder.resolve("book" + open.size()), Volunteers.bundle(start(), "Ina"));
        open.add(book);
        return book;
    }
}

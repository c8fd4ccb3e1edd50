package org.ouzelbook.ui.window;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The books opened lately, newest first, remembered in a small text file of the person at the keyboard. */
final class RecentBooks {
    private static final int MOST = 6;

    private final Path memory;

    /**
     * @param memory the file that remembers; it need not exist
     */
    RecentBooks(Path memory) {
        this.memory = memory;
    }

    /** {@return the memory of whoever runs the program} */
    static RecentBooks ofUser() {
        return new RecentBooks(Path.of(System.getProperty("user.home", "."), ".ouzelbook", "recent-books.txt"));
    }

    /** {@return the books that are still there, newest first} */
    List<Path> list() {
        List<Path> books = new ArrayList<>();
        try {
            if (Files.exists(memory)) {
                for (String line : Files.readAllLines(memory, StandardCharsets.UTF_8)) {
                    Path book = Path.of(line);
                    if (!line.isBlank() && Files.isRegularFile(book)) {
                        books.add(book);
                    }
                }
            }
        } catch (IOException | InvalidPathException e) {
            return List.of();
        }
        return List.copyOf(books);
    }

    /** {@return whether no book was ever opened here} */
    boolean isFirstTime(Path book) {
        return !list().contains(book.toAbsolutePath());
    }

    /**
     * Puts a book at the top. A memory that cannot be written costs a convenience, not a record, so it is let be.
     *
     * @param book a book that was opened
     */
    void opened(Path book) {
        List<Path> books = new ArrayList<>(list());
        books.remove(book.toAbsolutePath());
        books.add(0, book.toAbsolutePath());
        try {
            Files.createDirectories(memory.toAbsolutePath().getParent());
            Files.write(memory, books.stream().limit(MOST).map(Path::toString).toList(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            books.clear();
        }
    }
}

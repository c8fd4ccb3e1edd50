package org.ouzelbook.ui.app.leak;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.WrongRequest;

/** Looks through files that are there, whoever made them. */
public final class CheckLeaks {
    private CheckLeaks() {}

    /**
     * What was found.
     *
     * @param book the full name of the book's file
     * @param files the files that were looked through
     * @param clean whether nothing was found
     * @param leaks what was found
     */
    public record Answer(String book, List<String> files, boolean clean, List<Leak> leaks) {
        /** Copies the lists. */
        public Answer {
            files = List.copyOf(files);
            leaks = List.copyOf(leaks);
        }
    }

    /**
     * {@return what files tell of a book that they must not}
     *
     * @param path the book
     * @param files the files, each of which anybody may have
     * @param peopleAgreed whether the people in it agreed to be named
     * @throws IOException if one cannot be read
     * @throws WrongRequest if one cannot be taken apart, so that nobody can say what is in it
     */
    public static Answer check(Path path, List<Path> files, boolean peopleAgreed) throws IOException {
        Map<String, byte[]> contents = new LinkedHashMap<>();
        for (Path file : files) {
            contents.put(file.toString(), Files.readAllBytes(file));
        }
        try (Book book = Book.open(path)) {
            LeakCheck check = book.read(view -> LeakCheck.of(view, peopleAgreed));
            List<Leak> leaks = check.in(contents);
            return new Answer(book.file().toString(), List.copyOf(contents.keySet()), leaks.isEmpty(), leaks);
        } catch (FileParts.Broken e) {
            throw new WrongRequest(Message.of("leak.wrong.broken", e.file()));
        }
    }
}

package org.ouzelbook.ui.app.leak;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
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
     * @param progress hears how far the look has come
     * @throws java.util.concurrent.CancellationException if it is stopped
     * @throws IOException if one cannot be read
     * @throws WrongRequest if one cannot be taken apart, so that nobody can say what is in it
     */
    public static Answer check(Path path, List<Path> files, boolean peopleAgreed, Progress progress)
            throws IOException {
        Set<Path> once = new LinkedHashSet<>(files);
        for (Path file : once) {
            Files.newInputStream(file).close();
        }
        try (Book book = Book.open(path)) {
            LeakCheck check = book.read(view -> LeakCheck.of(view, peopleAgreed));
            List<Leak> leaks = check.in(once, progress);
            return new Answer(
                    book.file().toString(), once.stream().map(Path::toString).toList(), leaks.isEmpty(), leaks);
        } catch (FileParts.Broken e) {
            throw new WrongRequest(Message.of("leak.wrong.broken", e.file()));
        }
    }
}

package org.ouzelbook.ui.app.export;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.exchange.bundle.BundleFile;
import org.ouzelbook.tracker.store.Book;
import org.ouzelbook.ui.app.Texts;
import org.ouzelbook.ui.app.WrongRequest;
import org.ouzelbook.ui.app.leak.PrivateFile;

/** Writes all of a book into one file, for {@code merge} into another person's book. */
public final class ExportBundle {
    private static final int LONGEST_NAME = 200;

    private ExportBundle() {}

    /**
     * What was written.
     *
     * @param file the bundle
     * @param form {@code bundle}
     * @param audience {@code private}, always
     * @param from whose book it is
     * @param contents how many records of each kind it holds
     */
    public record Answer(String file, String form, String audience, String from, Map<String, Long> contents) {}

    /**
     * Exports.
     *
     * @param path the book
     * @param from whose book it is, as the others will read it
     * @param out where to; empty for a name made of the book's, which may be written again
     * @param replace whether a file that is there may be written over
     * @param progress hears how many thousand bytes were written
     * @return what was written
     * @throws java.util.concurrent.CancellationException if it is stopped; nothing was written
     * @throws IOException if the file cannot be written, or is there already and may not be replaced
     * @throws WrongRequest if there is no name, or a very long one
     */
    public static Answer run(Path path, String from, Optional<Path> out, boolean replace, Progress progress)
            throws IOException {
        if (from.isBlank() || from.length() > LONGEST_NAME) {
            throw new WrongRequest(Message.of("bundle.wrong.name", LONGEST_NAME));
        }
        String stem = String.valueOf(path.getFileName()).replaceFirst("(\\.mv)?\\.db$", "");
        Path file = out.orElse(Path.of(stem + "-private-bundle.zip"));
        if (out.isPresent() && !replace && Files.exists(file)) {
            throw new FileAlreadyExistsException(file.toString());
        }
        Map<String, Long> lines = new LinkedHashMap<>();
        try (Book book = Book.open(path)) {
            PrivateFile.write(
                    file, stream -> lines.putAll(write(book, from.strip(), new ToldStream(stream, progress))));
        }
        return new Answer(file.toAbsolutePath().toString(), "bundle", "private", from.strip(), contents(lines));
    }

    private static Map<String, Long> write(Book book, String from, OutputStream out) throws IOException {
        try {
            return book.read(view -> {
                try {
                    return BundleFile.write(view, from, Texts.of("bundle.notice", from), out);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private static Map<String, Long> contents(Map<String, Long> lines) {
        Map<String, Long> contents = new LinkedHashMap<>(lines);
        contents.values().removeIf(count -> count == 0);
        return contents;
    }
}

package org.ouzelbook.ui.app;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.exchange.ImportAnswers;
import org.ouzelbook.tracker.river.RiverAnswers;
import org.ouzelbook.tracker.store.Book;

/** Makes the book of the demo river from its field files, the way anybody makes a book. */
public final class DemoBook {
    private static final String FILES = "demo-territories";
    private static final String RIVERS = "rivers.geojson";
    private static final String BOOK = "arrel-water.mv.db";
    private static final String WHO = "demo";

    /** The demo's records end in this year, whatever the date of the machine is. */
    private static final LocalDate END = LocalDate.of(2026, 12, 31);

    private DemoBook() {}

    /**
     * The book of the demo.
     *
     * @param book its file
     * @param imported what the import did; empty if the book was there already and was kept
     */
    public record Answer(Path book, Optional<ImportReport> imported) {}

    /**
     * {@return the demo's book, made unless it is there already}
     *
     * @param folder where; made if it is not there
     * @param progress hears how far it is
     * @throws WrongRequest if the folder is a file, or the demo's files did not come with the program
     */
    public static Answer make(Path folder, Progress progress) {
        if (Files.exists(folder) && !Files.isDirectory(folder)) {
            throw new WrongRequest(Message.of("app.demo.noFolder", folder.toString()));
        }
        Path book = folder.resolve(BOOK);
        Path files = files();
        if (!Files.exists(book)) {
            createFolder(folder);
            NewBook.make(book, List.of(files.resolve(RIVERS)), RiverAnswers.NONE, WHO);
        }
        if (hasVisits(book)) {
            return new Answer(book, Optional.empty());
        }
        ImportRequest request = new ImportRequest(
                book,
                List.of(files.resolve("field-files")),
                ImportAnswers.none(END),
                ImportRequest.Mode.ALL_OR_NOTHING,
                Optional.empty(),
                folder,
                WHO);
        return new Answer(book, Optional.of(ImportFiles.run(request, progress)));
    }

    private static void createFolder(Path folder) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Whether the files are in: an import goes in as a whole, so a demo that was stopped half-way has none. */
    private static boolean hasVisits(Path book) {
        try (Book made = Book.open(book)) {
            return made.read(view -> !view.visits().isEmpty());
        }
    }

    /** {@return the folder with the demo's files, which stands somewhere above the program's code} */
    public static Path files() {
        try {
            Path code = Path.of(DemoBook.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
            for (Path folder = code; folder != null; folder = folder.getParent()) {
                if (Files.exists(folder.resolve(FILES).resolve(RIVERS))) {
                    return folder.resolve(FILES);
                }
            }
        } catch (URISyntaxException e) {
            throw new IllegalStateException("The program's own place is no path", e);
        }
        throw new WrongRequest(Message.of("app.demo.noFiles"));
    }
}

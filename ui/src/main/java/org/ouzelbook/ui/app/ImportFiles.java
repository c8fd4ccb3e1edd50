package org.ouzelbook.ui.app;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.exchange.ImportResult;
import org.ouzelbook.tracker.exchange.TableImport;
import org.ouzelbook.tracker.exchange.file.FileSources;
import org.ouzelbook.tracker.exchange.file.UnreadableFile;
import org.ouzelbook.tracker.store.Book;

/** Takes tables into a book: all of them in one step, or nothing. */
public final class ImportFiles {
    private final ImportRequest request;

    private ImportFiles(ImportRequest request) {
        this.request = request;
    }

    /**
     * Imports, or rehearses it.
     *
     * @param request what, and how
     * @param progress hears how far it is, and may stop
     * @return what was done, or would be
     * @throws WrongRequest if a file is not there, a zip must be refused, or the book has no such river
     * @throws org.ouzelbook.tracker.store.BookException if the book cannot be opened
     * @throws org.ouzelbook.tracker.exchange.ImportStopped if it was stopped; the book is as it was
     */
    public static ImportReport run(ImportRequest request, Progress progress) {
        try (Book book = Book.open(request.book())) {
            return into(book, request, progress);
        }
    }

    /**
     * Imports into a book that is open, or rehearses it.
     *
     * @param book the book that the request names
     * @param request what, and how
     * @param progress hears how far it is, and may stop
     * @return what was done, or would be
     * @throws WrongRequest if a file is not there, a zip must be refused, or the book has no such river
     * @throws org.ouzelbook.tracker.exchange.ImportStopped if it was stopped; the book is as it was
     */
    public static ImportReport into(Book book, ImportRequest request, Progress progress) {
        return new ImportFiles(request).run(book, progress);
    }

    private ImportReport run(Book book, Progress progress) {
        FileSources sources = sources();
        checkRiver(book);
        TableImport tables = TableImport.of(sources.files(), request.answers(), progress);
        List<Message> skipped = Stream.concat(sources.skipped().stream(), tables.skipped().stream())
                .toList();
        return switch (request.mode()) {
            case REHEARSE -> report(book.rehearse(edit -> tables.into(edit, progress)), false, skipped, List.of());
            case ALL_OR_NOTHING -> allOrNothing(book, tables, skipped, progress);
            case WHAT_IS_READY ->
                book.change(what(), request.who(), edit -> {
                    ImportResult result = tables.into(edit, progress);
                    List<String> rejected = writeRejected(tables);
                    return report(result, result.hasAdded(), skipped, rejected);
                });
        };
    }

    private FileSources sources() {
        try {
            return FileSources.of(request.files());
        } catch (UnreadableFile e) {
            throw new WrongRequest(e.why());
        }
    }

    private void checkRiver(Book book) {
        request.answers()
                .river()
                .ifPresent(name -> book.read(view -> {
                    if (view.river(name).isEmpty()) {
                        throw new WrongRequest(Message.of(
                                "import.wrong.river",
                                name,
                                view.rivers().stream().map(River::name).toList()));
                    }
                    return name;
                }));
    }

    /** Leaves the change half-way, so that the book undoes it, where the files are not clean. */
    private ImportReport allOrNothing(Book book, TableImport tables, List<Message> skipped, Progress progress) {
        try {
            return book.change(what(), request.who(), edit -> {
                ImportResult result = tables.into(edit, progress);
                if (!result.isClean()) {
                    throw new NotClean(result);
                }
                return report(result, result.hasAdded(), skipped, List.of());
            });
        } catch (NotClean e) {
            return report(e.result, false, skipped, List.of());
        }
    }

    private static final class NotClean extends RuntimeException {
        private static final long serialVersionUID = 1;
        private final transient ImportResult result;

        private NotClean(ImportResult result) {
            super("Not everything is ready", null, false, false);
            this.result = result;
        }
    }

    private ImportReport report(ImportResult result, boolean imported, List<Message> skipped, List<String> rejected) {
        return ImportReport.of(result, request.mode(), imported, skipped, rejected);
    }

    private Message what() {
        return Message.of(
                "history.import",
                request.files().stream()
                        .map(file -> String.valueOf(file.getFileName()))
                        .toList());
    }

    private List<String> writeRejected(TableImport tables) {
        Set<Path> taken = new HashSet<>();
        try {
            return tables.writeLeftOut(fileName -> rejectedFile(fileName, taken)).stream()
                    .map(Path::toString)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The wanted file for the first table with such rows, and a free name like it for each other one. */
    private Path rejectedFile(String fileName, Set<Path> taken) {
        String stem = fileName.replaceFirst("\\.[^.]*$", "");
        Path first = request.rejectedTo().orElse(request.workingFolder().resolve(stem + "-rejected.csv"));
        if (request.rejectedTo().isPresent() && !taken.isEmpty()) {
            String wanted = String.valueOf(first.getFileName()).replaceFirst("\\.[^.]*$", "");
            first = first.resolveSibling(wanted + "-" + stem + ".csv");
        } else if (request.rejectedTo().isPresent() && Files.exists(first)) {
            throw new WrongRequest(Message.of("import.wrong.rejectedExists", first.toString()));
        }
        Path free = first;
        for (int i = 2; Files.exists(free) || taken.contains(free); i++) {
            free = first.resolveSibling(
                    String.valueOf(first.getFileName()).replaceFirst("\\.csv$", "") + "-" + i + ".csv");
        }
        taken.add(free);
        return free;
    }
}

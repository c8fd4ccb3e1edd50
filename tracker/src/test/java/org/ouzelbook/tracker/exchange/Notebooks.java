package org.ouzelbook.tracker.exchange;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.ouzelbook.tracker.domain.Chainage;
import org.ouzelbook.tracker.domain.GeoPoint;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;
import org.ouzelbook.tracker.domain.River;
import org.ouzelbook.tracker.domain.RiverLine;
import org.ouzelbook.tracker.exchange.file.FileSources;
import org.ouzelbook.tracker.store.Book;

/** A book with the invented Arrel Water, about 18 km long, and files to import into it. */
final class Notebooks implements AutoCloseable {
    static final LocalDate TODAY = LocalDate.of(2026, 11, 25);

    private final Path folder;
    private final List<Path> files = new ArrayList<>();
    final Book book;
    ImportAnswers answers = ImportAnswers.none(TODAY);

    Notebooks(Path folder, String... moreRivers) {
        this.folder = folder;
        this.book = Book.create(folder.resolve("arrel"));
        addRiver("Arrel Water", -3.4);
        for (String name : moreRivers) {
            addRiver(name, -3.0);
        }
    }

    private void addRiver(String name, double longitude) {
        River river = new River(UUID.randomUUID(), name, Optional.empty());
        List<GeoPoint> points = new ArrayList<>();
        for (int i = 0; i <= 180; i++) {
            points.add(new GeoPoint(57 + i * 0.1 / 111.4, longitude + 0.002 * Math.sin(i / 9.0)));
        }
        RiverLine line = new RiverLine(river.id(), 1, Chainage.ofKm(0), points, "drawn by hand");
        book.change(Message.of("history.import", name), "A. Brook", edit -> {
            edit.add(river);
            edit.add(line);
            return name;
        });
    }

    Notebooks file(String name, String text) {
        return file(name, text, StandardCharsets.UTF_8);
    }

    Notebooks file(String name, String text, Charset charset) {
        try {
            Path file = folder.resolve(name);
            Files.write(file, text.getBytes(charset));
            files.remove(file);
            files.add(file);
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    TableImport tables() {
        try {
            return TableImport.of(FileSources.of(files).files(), answers, Progress.NONE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Imports what is ready. */
    ImportResult add() {
        TableImport tables = tables();
        return book.change(Message.of("history.import", "test"), "A. Brook", edit -> tables.into(edit, Progress.NONE));
    }

    /** The keys of what was found, with the rows. */
    static List<String> keys(ImportResult result, Finding finding) {
        return result.findings().reasons(finding).stream()
                .flatMap(reason -> reason.first().stream())
                .map(problem -> problem.row() + " " + problem.message().key())
                .toList();
    }

    @Override
    public void close() {
        book.close();
    }
}

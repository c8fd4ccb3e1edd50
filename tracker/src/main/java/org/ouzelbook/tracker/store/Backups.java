package org.ouzelbook.tracker.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CancellationException;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.ouzelbook.tracker.domain.Message;
import org.ouzelbook.tracker.domain.Progress;

/**
 * Copies of a book as zip files that hold the book's file, each tried out before it counts. The automatic ones stand in a
 * folder beside the book, one a day on which something was changed, as the book was before the first change of that day.
 */
final class Backups {
    private static final int KEPT = 10;

    private final Path folder;
    private final String name;

    Backups(Path file) {
        String fileName = String.valueOf(file.getFileName());
        name = fileName.substring(0, fileName.length() - BookFile.ENDING.length());
        folder = file.resolveSibling(name + "-backups");
    }

    /** Makes the copy of this day, unless there is one, and lets the oldest of more than ten go. */
    void daily(Database database, LocalDate day) {
        Path zip = folder.resolve(name + "-" + day + ".zip");
        if (Files.exists(zip)) {
            return;
        }
        write(database, zip);
        Pattern dated = Pattern.compile(Pattern.quote(name) + "-\\d{4}-\\d{2}-\\d{2}\\.zip");
        try (Stream<Path> files = Files.list(folder)) {
            List<Path> old = files.filter(copy ->
                            dated.matcher(String.valueOf(copy.getFileName())).matches())
                    .sorted(Comparator.reverseOrder())
                    .skip(KEPT)
                    .toList();
            for (Path copy : old) {
                Files.delete(copy);
            }
        } catch (IOException e) {
            throw failed(zip, e);
        }
    }

    /** Makes the copy that is kept before the tables of an older book are changed. */
    void beforeVersion(Database database, int version) {
        Path zip = folder.resolve(name + "-before-version-" + version + ".zip");
        if (!Files.exists(zip)) {
            write(database, zip);
        }
    }

    private void write(Database database, Path zip) {
        try {
            Files.createDirectories(folder);
            Path unproven = zip.resolveSibling(zip.getFileName() + ".part");
            database.backup(unproven);
            tryOut(unproven, restored -> compare(ContentSums.stored(database), ContentSums.stored(restored), zip));
            Files.move(unproven, zip, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw failed(zip, e);
        }
    }

    /**
     * Makes a copy where a person wants one, and proves it by counting and summing every row of it.
     *
     * @param given the zip file, with or without the ending
     * @return the zip file
     */
    Path to(Path given, Database database, Progress progress) {
        Path absolute = given.toAbsolutePath().normalize();
        Path zip = absolute.toString().endsWith(".zip")
                ? absolute
                : absolute.resolveSibling(absolute.getFileName() + ".zip");
        if (Files.exists(zip)) {
            throw BookException.of("book.backup.exists", zip.toString());
        }
        Path place = zip.getParent();
        if (place == null || !Files.isDirectory(place)) {
            throw BookException.of("book.folder.missing", zip.toString(), String.valueOf(place));
        }
        Path unproven = zip.resolveSibling(zip.getFileName() + ".part");
        try {
            database.backup(unproven);
            tryOut(
                    unproven,
                    restored -> compare(ContentSums.stored(database), ContentSums.counted(restored, progress), zip));
            Files.move(unproven, zip);
            return zip;
        } catch (IOException e) {
            throw failed(zip, e);
        } catch (CancellationException e) {
            delete(unproven);
            throw e;
        }
    }

    private static void compare(Map<String, ContentSums.Sum> book, Map<String, ContentSums.Sum> copy, Path zip) {
        if (!book.equals(copy)) {
            throw BookException.of("book.backup.differs", zip.toString());
        }
    }

    /** Something to see in a restored copy. */
    @FunctionalInterface
    private interface Trial {
        void of(Database restored);
    }

    private static void tryOut(Path zip, Trial trial) throws IOException {
        Path place = Files.createTempDirectory(zip.toAbsolutePath().getParent(), "restored");
        Path copy = place.resolve("copy" + BookFile.ENDING);
        try {
            try (ZipInputStream in = new ZipInputStream(Files.newInputStream(zip))) {
                extract(in, copy);
            }
            BookFile.checkExisting(copy);
            try (Database restored = BookFile.connect(copy, true)) {
                trial.of(restored);
            }
        } finally {
            Files.deleteIfExists(copy);
            Files.deleteIfExists(place);
        }
    }

    private static void extract(ZipInputStream in, Path copy) throws IOException {
        for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
            if (entry.getName().endsWith(BookFile.ENDING)) {
                Files.copy(in, copy);
            }
        }
    }

    private static void delete(Path unproven) {
        try {
            Files.deleteIfExists(unproven);
        } catch (IOException e) {
            throw failed(unproven, e);
        }
    }

    private static BookException failed(Path zip, IOException cause) {
        return new BookException(Message.of("book.backup.failed", zip.toString()), cause);
    }
}

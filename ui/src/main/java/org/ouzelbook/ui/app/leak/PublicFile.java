package org.ouzelbook.ui.app.leak;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;

/** Writes a file for everybody, unless it tells what must stay private. */
public final class PublicFile {
    private static final String UNCHECKED = ".unchecked-";

    private PublicFile() {}

    /** Writes a file. */
    @FunctionalInterface
    public interface Writer {
        /**
         * Writes it.
         *
         * @param file where to; its name ends as that of the file that is wanted
         * @throws IOException if it cannot be written
         */
        void write(Path file) throws IOException;
    }

    /**
     * Writes a file, looks through it, and lets it stand only if nothing is found.
     *
     * @param check knows the secrets
     * @param file where to; one that is there is written over only if nothing is found
     * @param writer writes it
     * @return what was found; if anything, nothing was left of what was written
     * @throws IOException if it cannot be written or read again
     */
    public static List<Leak> write(LeakCheck check, Path file, Writer writer) throws IOException {
        Path unchecked = file.resolveSibling(UNCHECKED + file.getFileName());
        try {
            writer.write(unchecked);
            List<Leak> leaks = check.in(String.valueOf(file.getFileName()), Files.readAllBytes(unchecked));
            if (leaks.isEmpty()) {
                Files.move(unchecked, file, StandardCopyOption.REPLACE_EXISTING);
            }
            return leaks;
        } finally {
            Files.deleteIfExists(unchecked);
        }
    }
}

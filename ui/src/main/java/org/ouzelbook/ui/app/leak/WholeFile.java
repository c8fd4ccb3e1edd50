package org.ouzelbook.ui.app.leak;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes a file whole or not at all: an older one of its name stands until the new one is ready, and nothing half stays behind. */
final class WholeFile {
    private WholeFile() {}

    static void write(Path file, PrivateFile.Content content) throws IOException {
        Path unfinished = file.resolveSibling(file.getFileName() + ".part");
        // a person who is tired of waiting ends the program while it writes
        unfinished.toFile().deleteOnExit();
        try {
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(unfinished))) {
                content.write(out);
            }
            Files.move(unfinished, file, StandardCopyOption.REPLACE_EXISTING);
        } finally {
            Files.deleteIfExists(unfinished);
        }
    }
}

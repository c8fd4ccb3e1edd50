package org.ouzelbook.ui.app.leak;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * Writes a file for everybody, unless it tells what must stay private. This and {@link PrivateFile} are the only ways out of the
 * program, so that whoever adds an output says for whom it is.
 */
public final class PublicFile {
    private PublicFile() {}

    /**
     * Looks through a file as a stranger would read it, and writes it only if nothing is found.
     *
     * @param check knows the secrets
     * @param file where to; one that is there is written over only if nothing is found
     * @param content what is to stand in it
     * @return what was found; if anything, nothing was written
     * @throws IOException if it cannot be written
     */
    public static List<Leak> write(LeakCheck check, Path file, byte[] content) throws IOException {
        List<Leak> leaks = check.in(String.valueOf(file.getFileName()), content);
        if (leaks.isEmpty()) {
            WholeFile.write(file, out -> out.write(content));
        }
        return leaks;
    }
}

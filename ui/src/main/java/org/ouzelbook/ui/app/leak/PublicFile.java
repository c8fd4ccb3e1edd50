package org.ouzelbook.ui.app.leak;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import org.ouzelbook.tracker.domain.Progress;

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
        return write(check, file, out -> out.write(content), () -> Progress.NONE);
    }

    /**
     * Looks through a file as a stranger would read it, and writes it only if nothing is found. Until then a large one lies in the
     * system’s place for passing files, without a name.
     *
     * @param check knows the secrets
     * @param file where to; one that is there is written over only if nothing is found
     * @param content writes what is to stand in it
     * @param looking is asked when the look begins for what hears how far it has come
     * @return what was found; if anything, nothing was written
     * @throws IOException if it cannot be written
     * @throws java.util.concurrent.CancellationException if it is stopped; nothing was written
     */
    public static List<Leak> write(LeakCheck check, Path file, PrivateFile.Content content, Supplier<Progress> looking)
            throws IOException {
        try (LongBytes made = new LongBytes()) {
            OutputStream out = new BufferedOutputStream(made) {
                @Override
                public void close() throws IOException {
                    flush();
                }
            };
            content.write(out);
            out.flush();
            List<Leak> leaks = check.in(String.valueOf(file.getFileName()), made, looking.get());
            if (leaks.isEmpty()) {
                WholeFile.write(file, kept -> {
                    try (InputStream in = made.open()) {
                        in.transferTo(kept);
                    }
                });
            }
            return leaks;
        }
    }
}

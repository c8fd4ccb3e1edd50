package org.ouzelbook.ui.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.ouzelbook.ui.app.leak.Leak;
import org.ouzelbook.ui.app.leak.LeakCheck;
import org.ouzelbook.ui.app.leak.PublicFile;

/** Writes a page for everybody. On paper the letters of a drawing are shapes, so the page is looked through before it is printed, too. */
public final class PublicPaper {
    private PublicPaper() {}

    /**
     * Writes a page, unless it tells what must stay private.
     *
     * @param check knows the secrets
     * @param file where to; one that is there is written over only if nothing is found
     * @param paper the page
     * @return what was found; if anything, nothing was written
     * @throws IOException if it cannot be written
     */
    public static List<Leak> write(LeakCheck check, Path file, Paper paper) throws IOException {
        if (Medium.of(file) == Medium.PAPER) {
            byte[] page = paper.page(Medium.PAPER).getBytes(StandardCharsets.UTF_8);
            List<Leak> leaks = check.in(String.valueOf(file.getFileName()), page);
            if (!leaks.isEmpty()) {
                return leaks;
            }
        }
        return PublicFile.write(check, file, paper.content(file));
    }
}

package org.ouzelbook.ui.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import org.ouzelbook.tracker.domain.Progress;
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
        return write(check, file, paper, () -> Progress.NONE);
    }

    /**
     * Writes a page, unless it tells what must stay private.
     *
     * @param check knows the secrets
     * @param file where to; one that is there is written over only if nothing is found
     * @param paper the page
     * @param looking is asked when a look begins for what hears how far it has come
     * @return what was found; if anything, nothing was written
     * @throws IOException if it cannot be written
     * @throws java.util.concurrent.CancellationException if it is stopped; nothing was written
     */
    public static List<Leak> write(LeakCheck check, Path file, Paper paper, Supplier<Progress> looking)
            throws IOException {
        Medium medium = paper.medium(file);
        String page = paper.page(medium);
        byte[] text = page.getBytes(StandardCharsets.UTF_8);
        if (medium == Medium.SCREEN) {
            return PublicFile.write(check, file, out -> out.write(text), looking);
        }
        List<Leak> leaks = check.in(String.valueOf(file.getFileName()), text, looking.get());
        if (!leaks.isEmpty()) {
            return leaks;
        }
        byte[] printed = Pdf.of(page);
        return PublicFile.write(check, file, out -> out.write(printed), looking);
    }
}

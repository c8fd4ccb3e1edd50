package org.ouzelbook.ui.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** Something that is read on a screen or on paper, made from one source. */
public interface Paper {
    /**
     * {@return the page as HTML that needs nothing else, and that is well-formed XML where it is made for paper}
     *
     * @param medium what it is made for
     */
    String page(Medium medium);

    /**
     * {@return what a file of it is made for: paper where the file's name ends in {@code .pdf}, else the screen}
     *
     * @param file the file
     */
    default Medium medium(Path file) {
        return Medium.of(file);
    }

    /**
     * {@return what a file of it holds: a PDF where it is made for paper, else HTML. The same contents give the same bytes}
     *
     * @param file the file that it is for
     * @throws IOException if it cannot be printed
     */
    default byte[] content(Path file) throws IOException {
        Medium medium = medium(file);
        String page = page(medium);
        return medium == Medium.PAPER ? Pdf.of(page) : page.getBytes(StandardCharsets.UTF_8);
    }
}

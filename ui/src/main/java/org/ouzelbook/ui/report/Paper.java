package org.ouzelbook.ui.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
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
     * Writes it to a file, as PDF where the file's name ends in {@code .pdf}, else as HTML. The same contents give the same bytes.
     *
     * @param file the file; written over if it is there
     * @throws IOException if it cannot be written
     */
    default void write(Path file) throws IOException {
        Medium medium = Medium.of(file);
        String page = page(medium);
        Files.write(file, medium == Medium.PAPER ? Pdf.of(page) : page.getBytes(StandardCharsets.UTF_8));
    }
}

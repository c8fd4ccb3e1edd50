package org.ouzelbook.ui.report;

import java.nio.file.Path;
import java.util.Locale;

/** What a page is made for. */
public enum Medium {
    /** A browser: HTML that answers to the mouse, the finger and the keys, and prints as well. */
    SCREEN,
    /** Paper: a PDF of A4 pages. */
    PAPER;

    /**
     * {@return the medium that a file's ending asks for: paper for {@code .pdf}, the screen for any other}
     *
     * @param file a file to be written
     */
    public static Medium of(Path file) {
        return file.toString().toLowerCase(Locale.ROOT).endsWith(".pdf") ? PAPER : SCREEN;
    }
}
